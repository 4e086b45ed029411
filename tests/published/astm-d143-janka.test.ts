// ASTM D143, side hardness: a ball of 0.444 in pressed in to half its diameter covers about 100 mm² (a page that quotes it;
// standard not seen). Tolerance: half the last printed digit of the diameter, as area.
import { expect, test } from 'vitest'
import { hardnessPressure } from '#shared/contact/wood-dent.ts'

test('the Janka ball covers 100 mm²: a hardness of 6450 N, that of sugar maple, is 64.5 MPa', () => {
  const slack = (Math.PI / 2) * 11.28 * 0.0005 * 25.4
  expect(6450 / hardnessPressure(6450)).toBeWithin(slack, 100)
})
