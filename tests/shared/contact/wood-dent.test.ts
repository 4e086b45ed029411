import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contactWithin, loadForSemiMinorWithin } from '#shared/contact/contact-within-width.ts'
import { crushedUnder, crushedWidth, edgeSeat, loadForCrush } from '#shared/contact/groove-edge.ts'
import { contactForm, contactUnder } from '#shared/contact/hertz.ts'
import { dentUnder, hardnessPressure, loadForDent } from '#shared/contact/wood-dent.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import { NEWTONS_PER_LBF } from '#shared/data/wood-strength.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'

/** A ball in wood: on a flat, and in grooves to very close ones. */
const surface = fc
  .record({ ball: magnitude(1, 50), ratio: magnitude(1, 1000), modulus: magnitude(100, 3000), width: between(0.1, 1) })
  .map(({ ball, ratio, modulus, width }) => ({
    form: contactForm([1 / ball, 1 / (ball * ratio)]),
    modulus,
    rolling: 1 / ball,
    halfWidth: width * ball,
  }))

describe('the side-hardness test: a ball of 0.444 in goes in to half its diameter under the printed load', () => {
  // Wood Handbook table 5-3b: sugar maple 1450 lbf, black cherry 950 lbf, American basswood 410 lbf.
  test.each([
    ['maple-sugar', 1450],
    ['cherry-black', 950],
    ['basswood-american', 410],
  ] as const)('%s, %i lbf', (id, printed) => {
    const ball = (0.444 * 25.4) / 2
    const wood = contactWood(id)
    const flat = { form: contactForm([1 / ball, 1 / ball]), modulus: 1e9, rolling: 1 / ball, halfWidth: 1e6 }
    const dented = { surface: flat, hardness: hardnessPressure(wood.sideHardness) }
    const load = printed * NEWTONS_PER_LBF
    // The law's mark reaches the ball's own width just there; a hair more, and the ball is past its middle.
    expect(dentUnder(dented, load * (1 - 1e-9))).toBeDefined()
    expect(dentUnder(dented, load * (1 + 1e-9))).toBeUndefined()
  })

  test('that ball covers 1 cm² within a thousandth (ASTM D143), so 1450 lbf are 64.5 MPa', () => {
    expect(hardnessPressure(100)).toBeWithin(0.002, 1)
    expect(hardnessPressure(1450 * NEWTONS_PER_LBF)).toBeWithin(0.1, 64.5)
  })

  // Koczan, Karwat, Kozakiewicz, Journal of Wood Science 67 (2021): F ~ d^(5/2) for balls.
  test('the force goes with the 5/2 power of the mark: dents with its 5/4th, where nothing springs back', () => {
    const flat = { form: contactForm([0.1, 0.1]), modulus: 1e12, rolling: 0.1, halfWidth: 1e6 }
    const dented = { surface: flat, hardness: 60 }
    const [one, two] = [loadForDent(dented, mm(0.1)), loadForDent(dented, mm(0.2))]
    expect(two / one).toBeWithin(1e-3, 2 ** 1.25)
  })
})

test('a dent there and back', () => {
  fc.assert(
    fc.property(surface, magnitude(5, 100), magnitude(1e-5, 0.05), (under, hardness, fraction) => {
      const dented = { surface: under, hardness }
      const depth = mm((2 * fraction) / under.rolling)
      const load = loadForDent(dented, depth)
      const back = dentUnder(dented, load * (1 - 1e-12))
      if (back !== undefined && back < depth * 0.999) {
        // the ball was half sunk in before
        expect(dentUnder(dented, load * (1 + 1e-9))).toBeUndefined()
      } else expect((back ?? Number.NaN) / depth).toBeWithin(1e-6, 1)
    }),
  )
})

test('a light load leaves no dent; more load, more dent', () => {
  fc.assert(
    fc.property(surface, magnitude(5, 100), magnitude(1e-9, 1e4), between(1, 5), (under, hardness, load, times) => {
      const dented = { surface: under, hardness }
      const [less, more] = [dentUnder(dented, load), dentUnder(dented, load * times)]
      expect(more ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(less ?? 0)
      expect(dentUnder(dented, 1e-12)).toBe(0)
    }),
  )
})

describe('an ellipse as long as the groove is wide', () => {
  test('goes over from the free one without a step, and grows on', () => {
    fc.assert(
      fc.property(surface, magnitude(1e-3, 1e5), (under, load) => {
        const [here, there] = [contactWithin(under, load), contactWithin(under, load * (1 + 1e-9))]
        expect(there.maxPressure / here.maxPressure).toBeWithin(1e-7, 1)
        expect(there.approach / here.approach).toBeWithin(1e-7, 1)
        expect(here.semiMajor).toBeLessThanOrEqual(under.halfWidth)
        expect(contactWithin(under, 2 * load).maxPressure).toBeGreaterThan(here.maxPressure)
      }),
    )
  })

  test('is the free one itself where that is just as long', () => {
    fc.assert(
      fc.property(surface, magnitude(1e-3, 1e5), (any, load) => {
        const free = contactUnder(any.form, any.modulus, load)
        const within = contactWithin({ ...any, halfWidth: free.semiMajor * (1 - 1e-9) }, load)
        expect(within.reachesEdges).toBe(true)
        expect(within.semiMinor / free.semiMinor).toBeWithin(1e-7, 1)
        expect(within.maxPressure / free.maxPressure).toBeWithin(1e-7, 1)
        expect(within.approach / free.approach).toBeWithin(1e-7, 1)
      }),
    )
  })

  test('its load by width is the load it is under', () => {
    fc.assert(
      fc.property(surface, magnitude(1e-3, 1e5), (under, load) => {
        const { semiMinor } = contactWithin(under, load)
        if (semiMinor < under.halfWidth) expect(loadForSemiMinorWithin(under, semiMinor) / load).toBeWithin(1e-8, 1)
      }),
    )
  })
})

describe('a ball on two edges', () => {
  const groove = { radius: mm(7), depth: mm(3) }

  test('the flat is what a ball cuts off the corner, by counting points in it', () => {
    // 16 mm ball sunk by 0.2 mm along the load; straight groove (rolling curvature that of the ball alone)
    const edges = edgeSeat(groove, mm(16), 1 / 8, 1)
    const sunk = 0.05
    const halfWidth = Math.sqrt(3 * (2 * 7 - 3))
    const centre = Math.sqrt(64 - halfWidth * halfWidth) - sunk
    // The cut's face seen square to the ball: cells of its surface that lie inside the wood, below land and outside groove.
    let area = 0
    const STEP = 0.002
    for (let along = STEP / 2; along < 2; along += STEP) {
      for (let angle = edges.contactAngle - 0.2; angle < edges.contactAngle + 0.2; angle += STEP / 8) {
        const [aside, down] = [Math.sin(angle) * 8, Math.cos(angle) * 8]
        const shrink = Math.sqrt(64 - along * along) / 8
        const [x, y] = [aside * shrink, down * shrink - centre]
        // land at y = 0, wood below it (y > 0); the groove's arc about y = −(7 − 3)
        if (y > 0 && x * x + (y + 4) * (y + 4) > 49) area += 2 * STEP * STEP
      }
    }
    // hardness 1: the force on one edge is the area, of which two hold the load by their cosine
    expect(loadForCrush(edges, mm(sunk)) / (2 * Math.cos(edges.contactAngle) * area)).toBeWithin(0.08, 1)
  })

  test('there and back, and the flat as wide as it is deep by its two slopes', () => {
    const edges = edgeSeat(groove, mm(16), 1 / 8, 60)
    expect(crushedUnder(edges, loadForCrush(edges, mm(0.3)))).toBeWithin(1e-12, 0.3)
    const wall = Math.asin(Math.sqrt(33) / 7)
    const slopes = 1 / Math.tan(edges.contactAngle) + 1 / Math.tan(wall - edges.contactAngle)
    expect(crushedWidth(edges, mm(0.1))).toBeWithin(1e-12, 0.1 * Math.cos(edges.contactAngle) * slopes)
  })
})
