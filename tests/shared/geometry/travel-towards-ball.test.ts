import { expect, test } from 'vitest'
import { travelTowardsBall } from '#shared/geometry/travel-towards-ball.ts'

/** Where a round ring can stand among balls whose centres are on a circle, searched on a grid: no formula of the code is used. */
function travelByTrials(balls: number, circle: number, clearance: number): number {
  const touch = circle - clearance / 2
  const centres = Array.from({ length: balls }, (_, ball) => {
    const angle = (2 * Math.PI * ball) / balls
    return { x: circle * Math.cos(angle), y: circle * Math.sin(angle) }
  })
  const isFree = (x: number, y: number): boolean =>
    centres.every((centre) => Math.hypot(centre.x - x, centre.y - y) >= touch)
  const step = clearance / 200
  let least = 0
  let most = 0
  for (let i = -300; i <= 300; i++)
    for (let j = -300; j <= 300; j++)
      if (isFree(i * step, j * step)) {
        least = Math.min(least, i * step)
        most = Math.max(most, i * step)
      }
  return (most - least) / clearance
}

test.each([3, 4, 5, 7, 8, 9])('%d balls: the travel is that of a search among coordinates', (balls) => {
  // The grid is 1/200 of the clearance, and the circle is large: what the derivation leaves out is smaller still.
  expect(travelTowardsBall(balls)).toBeWithin(0.015, travelByTrials(balls, 1000, 0.5))
})

test('three balls let a ring of ordinary size travel 1.5 times its clearance, nearly', () => {
  expect(travelTowardsBall(3)).toBeWithin(1e-12, 1.5)
  expect(travelTowardsBall(3)).toBeWithin(0.04, travelByTrials(3, 22, 0.6))
})

test('many balls leave nothing but the clearance', () => {
  expect(travelTowardsBall(101)).toBeWithin(0.001, 1)
  expect(() => travelTowardsBall(2)).toThrow(RangeError)
})
