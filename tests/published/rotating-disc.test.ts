// J. E. Shigley, C. R. Mischke, Mechanical Engineering Design, 5th edition, as engineersedge.com quotes it: the largest tension of a
// ring that turns, at its hole, (3 + v)/4 rho w^2 (ro^2 + (1 - v)/(3 + v) ri^2). Tolerance: what a double can hold.
import { expect, test } from 'vitest'
import { contactWood } from '#shared/data/contact-woods.ts'
import { ownPull } from '#shared/questions/load/speeds.ts'

test.each([
  [0, 100],
  [12, 62],
  [71.5, 100],
])('a disc of sugar maple with a hole of %s mm, %s mm across, at 300 turns a minute', (hole, outside) => {
  const { density, poissonsRatio: ratio } = contactWood('maple-sugar')
  const turn = (300 * 2 * Math.PI) / 60
  const [inner, outer] = [hole / 2000, outside / 2000]
  const pascals =
    ((3 + ratio) / 4) * density * turn * turn * (outer * outer + ((1 - ratio) / (3 + ratio)) * inner * inner)
  expect((ownPull(contactWood('maple-sugar'), hole, outside) * 300 * 300) / (pascals / 1e6)).toBeWithin(1e-12, 1)
})
