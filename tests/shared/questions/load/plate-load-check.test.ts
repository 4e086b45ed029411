import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { CONTACT_WOODS } from '#shared/data/contact-woods.ts'
import { ringLoadCheck } from '#shared/questions/load/arrangements/rings.ts'
import { safeOffsets } from '#shared/questions/load/arrangements/safe-offsets.ts'
import {
  type PlateLoadCheck,
  type PlateLoadCheckInput,
  plateLoadCheck,
} from '#shared/questions/load/arrangements/thrust.ts'
import { loadCheck } from '#shared/questions/load/load-check.ts'
import { mm } from '#shared/units/length.ts'
import { between, likelyPlates, magnitude, PLAIN, PLATES } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { reasonsIn } from '#tests/support/refused.ts'

/** Twelve steel balls of 16 mm, all of one size, between plates of sugar maple, under 60 N. */
const EVEN: PlateLoadCheckInput & { readonly design: ThrustInput } = {
  design: { ...PLATES, balls: { ...PLATES.balls, material: 'steel', standardDeviation: mm(0) } },
  axialLoad: 60,
  speed: 200,
}
const UNEVEN: PlateLoadCheckInput = {
  ...EVEN,
  design: { ...PLATES, balls: { ...PLATES.balls, material: 'steel', standardDeviation: mm(0.05) } },
}

function checked(input: PlateLoadCheckInput): PlateLoadCheck {
  const made = plateLoadCheck(input)
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return made.value
}
/** The most loaded ball on its groove. */
function seatOf(input: PlateLoadCheckInput) {
  const [plates] = checked(input).seats
  if (plates === undefined) throw new Error('there must be a seat')
  return plates.seat
}

const codes = ({ warnings }: PlateLoadCheck): readonly string[] => warnings.map(({ facts }) => facts.code)

const extras = fc.record(
  {
    wood: fc.constantFrom(...CONTACT_WOODS),
    ballWood: fc.constantFrom(...CONTACT_WOODS),
    dentFraction: magnitude(0.0001, 0.05),
    offset: magnitude(0.001, 10_000).map(mm),
    load: fc.record({ turnsWithPlate: fc.boolean(), height: magnitude(0.001, 10_000).map(mm) }, { requiredKeys: [] }),
    friction: magnitude(0.01, 2),
    speed: magnitude(0.001, 100_000),
  },
  { requiredKeys: [] },
)

test('likely turntables, any load, place and speed: finite figures or a refusal with a place', () => {
  fc.assert(
    fc.property(likelyPlates, magnitude(1e-3, 1e6), extras, (design, axialLoad, rest) => {
      const made = plateLoadCheck({ design, axialLoad, ...rest })
      if (!made.ok) {
        expect(reasonsIn(made)).not.toEqual([])
        return
      }
      const { bearing, ...figures } = made.value
      for (const [path, figure] of numberLeaves(figures)) expect(Number.isFinite(figure), path).toBe(true)
      const { each } = figures.sharing
      const { most } = figures
      expect(each.length).toBe(bearing.resolved.input.balls.count)
      expect(each.reduce((sum, force) => sum + force, 0) / axialLoad).toBeWithin(1e-9, 1)
      expect(most).toBeGreaterThanOrEqual(Math.max(...each))
    }),
    { numRuns: 400 },
  )
})

describe('a level load', () => {
  test('is shared evenly, and the plates come together by the give of both grooves', () => {
    const { sharing } = checked(EVEN)
    for (const force of sharing.each) expect(force).toBeWithin(1e-9, 5)
    expect(checked(EVEN).most).toBeWithin(1e-9, 5)
    expect(sharing.lean).toBe(0)
    // Hertz: the approach goes with the 2/3 power of the load
    const { approach } = checked({ ...EVEN, axialLoad: 8 * 60 }).sharing
    expect(approach / sharing.approach).toBeWithin(1e-9, 4)
  })

  // Hamrock and Brewe 1983 (from memory): k = 1.0339 (Ry/Rx)^0.6360, to about 3 %. Of a ball on a flat circle Rx is its own
  // radius, and Ry = rw r / (r − rw).
  test.each([0.52, 0.55, 0.6, 0.75])(
    'on a groove of conformity %s the touch is as long and wide as Hamrock and Brewe say',
    (conformity) => {
      const plates = seatOf({ ...EVEN, design: { ...EVEN.design, groove: { conformity } } })
      const radius = conformity * 16
      const ratio = radius / (radius - 8)
      expect((plates.width / (plates.length ?? Number.NaN) / 1.0339) * ratio ** -0.636).toBeWithin(0.035, 1)
      // Hertz: p₀ = 3 F / (2 π a b), 5 N on each ball
      const area = (Math.PI * plates.width * (plates.length ?? Number.NaN)) / 4
      expect(plates.maxPressure).toBeWithin(1e-9, (1.5 * 5) / area)
    },
  )

  test('a plate is pressed more than an outer ring, which curves round the ball, and less than an inner one', () => {
    const plates = seatOf(EVEN)
    // the same groove of balls and wood in rings, under the load that gives its most loaded ball 5 N
    const design = { ...PLAIN, balls: { ...PLAIN.balls, material: 'steel' as const }, radialInternalClearance: mm(0) }
    const rings = ringLoadCheck({ design, radialLoad: (5 * 12) / 4.3645 })
    expect(rings.ok && rings.value.outerRing.maxPressure).toBeLessThan(plates.maxPressure)
    expect(rings.ok && rings.value.innerRing.maxPressure).toBeGreaterThan(plates.maxPressure)
  })
})

describe('what the limits mean', () => {
  test('at the load of the dent the dent is just so deep, wherever the load stands, and its warning is gone', () => {
    fc.assert(
      fc.property(likelyPlates, magnitude(1, 1e5), extras, (design, axialLoad, rest) => {
        const made = plateLoadCheck({ design, axialLoad, ...rest })
        if (!made.ok || !codes(made.value).includes('dents-deeper')) return
        const { ruin } = made.value
        const at = { design, ...rest, axialLoad: ruin.load }
        const there = checked(at)
        expect((seatOf(at).dent ?? Number.NaN) / ruin.depth).toBeWithin(1e-6, 1)
        expect(codes(there)).not.toContain('dents-deeper')
      }),
    )
  })

  test('at the first mark the dent is a thousandth of a ball; the working load is less, by how the turntable is used', () => {
    const { firstMark, workingLoad } = checked(EVEN)
    expect(firstMark.load / firstMark.ballLoad).toBeWithin(1e-9, 12)
    expect((seatOf({ ...EVEN, axialLoad: firstMark.load }).dent ?? Number.NaN) / 0.016).toBeWithin(1e-6, 1)
    const { still, slowHand, steadyCrank } = workingLoad.loads
    expect([steadyCrank.load, still.load, slowHand.load, firstMark.load]).toEqual(
      [steadyCrank.load, still.load, slowHand.load, firstMark.load].toSorted((one, other) => one - other),
    )
    expect(codes(checked({ ...EVEN, axialLoad: 0.99 * steadyCrank.load }))).not.toContain('above-working-load')
    expect(codes(checked({ ...EVEN, axialLoad: 1.01 * steadyCrank.load }))).toContain('above-working-load')
  })

  test('at each speed limit its own reason is met', () => {
    const fast = checked({ ...EVEN, speed: 90_000 })
    expect(codes(fast)).toContain('too-fast')
    const [lowest] = fast.speedLimits
    expect(codes(checked({ ...EVEN, speed: lowest?.speed ?? Number.NaN }))).not.toContain('too-fast')
    const speedOf = (reason: string) => fast.speedLimits.find((limit) => limit.reason === reason)?.speed ?? Number.NaN
    const dented = checked({ ...EVEN, speed: speedOf('balls-dent-groove') })
    expect((dented.spun?.dent ?? Number.NaN) / dented.ruin.depth).toBeWithin(1e-6, 1)
  })

  test('balls climb out where the push on a flank leans as the flank does at its edge', () => {
    const { speedLimits, spin, bearing } = checked(EVEN)
    const speed = speedLimits.find(({ reason }) => reason === 'balls-climb-out')?.speed ?? Number.NaN
    const { grooveWidth, grooveRadius } = bearing.plate
    const push = (spin.ballForce * speed * speed) / 2
    // the flank's slope at the edge: sin β = w / r
    expect(Math.sin(Math.atan(push / 5))).toBeWithin(1e-5, grooveWidth / 2 / grooveRadius)
    // m ω² R of a steel ball of 16 mm (2.14 cm³ at 7.8 g/cm³), the ball set at half a turn a minute
    const mass = (Math.PI / 6) * 16 ** 3 * 7.8e-6
    expect(spin.ballForce / (mass * (Math.PI / 60) ** 2 * (bearing.pitchRadius / 1000))).toBeWithin(0.02, 1)
  })

  test('a groove that is a half circle is taken as steep as 85 degrees at its edge', () => {
    const round = mm(8 * (1 - 5e-10))
    const half = checked({
      ...EVEN,
      design: { ...EVEN.design, plates: { grooveDepth: round, thickness: mm(16) }, groove: { grooveRadius: round } },
    })
    expect((half.turntable.edgeAngle * 180) / Math.PI).toBeWithin(1e-9, 85)
  })
})

describe('a load beside the axis', () => {
  test('slides off where friction no longer holds it: ω² e = μ g', () => {
    const beside = checked({ ...EVEN, offset: mm(10) })
    const speed = beside.speedLimits.find(({ reason }) => reason === 'load-slides-off')?.speed ?? Number.NaN
    const turn = (speed * Math.PI) / 30
    expect(turn * turn * 10).toBeWithin(1e-6, 0.3 * 9806.65)
    const rough = checked({ ...EVEN, offset: mm(10), friction: 1.2 })
    expect(rough.speedLimits.find(({ reason }) => reason === 'load-slides-off')?.speed).toBeWithin(1e-6, 2 * speed)
  })

  test.each([
    { load: { height: mm(0) }, reason: 'plate-pushed-aside' },
    { load: { height: mm(200) }, reason: 'plate-tips' },
    { load: { turnsWithPlate: false }, reason: 'balls-climb-out' },
  ])('$load: $reason, and a load that is held still neither slides nor pulls', ({ load, reason }) => {
    const reasons = checked({ ...EVEN, offset: mm(10), load }).speedLimits.map((limit) => limit.reason)
    expect(reasons).toContain(reason)
    expect(reasons.includes('load-slides-off')).toBe(load.turnsWithPlate !== false)
  })

  test('a load turning at 1000 turns a minute 15 mm out is warned of, and the warning names what to do', () => {
    const fast = checked({ ...EVEN, offset: mm(15), speed: 1000 })
    const warning = fast.warnings.find(({ facts }) => facts.code === 'too-fast')
    expect(warning).toMatchObject({ severity: 'risk', path: '/speed', suggestion: { kind: 'speed' } })
    expect(warning?.suggestion?.value).toBeLessThanOrEqual(120)
  })

  test('how far out is safe at each speed: at rest to where it tips, less the faster, and consistent with the limit', () => {
    const tall = { ...EVEN, offset: mm(10), load: { height: mm(150) } }
    const check = checked(tall)
    const curve = safeOffsets({ check, fastest: 300 })
    expect(curve[0]?.offset).toBeWithin(1e-4, check.tipsBeyond)
    for (const [index, { offset, speed }] of curve.entries()) {
      const slower = curve[index - 1]
      if (slower === undefined) continue
      expect(offset).toBeLessThanOrEqual(slower.offset + 0.01)
      const there = checked({ ...tall, offset: mm(0.97 * offset) }).speedLimits.filter(({ reason }) =>
        ['load-slides-off', 'plate-tips', 'plate-pushed-aside', 'balls-climb-out'].includes(reason),
      )
      expect(there[0]?.speed).toBeGreaterThan(speed)
    }
  })

  test('loads the balls on its side more, and lowers the limits as much', () => {
    const [middle, beside] = [checked(EVEN), checked({ ...EVEN, offset: mm(10) })]
    const times = beside.most / middle.most
    expect(times).toBeGreaterThan(1)
    expect(middle.ruin.load / beside.ruin.load).toBeWithin(1e-9, times)
    expect(beside.sharing.lean).toBeGreaterThan(0)
  })

  test('on the line between two balls it would tip the plate', () => {
    const { pitchRadius } = checked(EVEN).bearing
    const line = pitchRadius * Math.cos(Math.PI / 12)
    expect(plateLoadCheck({ ...EVEN, offset: mm(0.999 * line) }).ok).toBe(true)
    const refused = plateLoadCheck({ ...EVEN, offset: mm(line) })
    expect(reasonsIn(refused)).toEqual(['load-tips-plate /offset'])
  })
})

describe('uneven balls', () => {
  test('at first three carry: of an even number one may carry half the load, the other half right across from it', () => {
    const { uneven, workingLoad, warnings } = checked(UNEVEN)
    expect(uneven?.tallest.ballLoad).toBeWithin(1e-9, 30)
    expect(workingLoad.loads.still.load / checked(EVEN).workingLoad.loads.still.load).toBeWithin(1e-9, 2 / 12)
    expect(warnings.map(({ facts }) => facts.code)).toContain('three-carry')
  })

  test('the first mark and the load that ruins it are of the same lot: a few carry at the mark, not all at the end', () => {
    const [even, { firstMark, ruin, workingLoad }] = [checked(EVEN), checked(UNEVEN)]
    expect((firstMark.load / even.firstMark.load) * 12).toBeWithin(2, 4)
    expect(firstMark.load / workingLoad.loads.slowHand.load).toBeLessThan(4)
    // dents this deep bring others to carry, but not all of them
    expect(ruin.load).toBeGreaterThan(2 * ruin.ballLoad)
    expect(ruin.load).toBeLessThan(even.ruin.load)
  })

  test('the heavier the load, the more it is shared: from three of them to all', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), magnitude(0.001, 0.3), between(0, 0.9), (count, deviation, part) => {
        const balls = { ...UNEVEN.design.balls, count, standardDeviation: mm(deviation) }
        const design = { ...UNEVEN.design, bore: mm(1), balls }
        const made = plateLoadCheck({ design, axialLoad: 1 })
        if (!made.ok) return
        const offset = mm(part * made.value.tipsBeyond)
        const shareUnder = (axialLoad: number) =>
          Number(((checked({ design, offset, axialLoad }).uneven?.tallest.ballLoad ?? 0) / axialLoad).toPrecision(12))
        const shares = [0.01, 1, 10, 100, 1000, 10_000, 100_000].map(shareUnder)
        expect(shares).toEqual(shares.toSorted((one, other) => other - one))
        const equal = { ...design, balls: { ...balls, standardDeviation: mm(0) } }
        const all = checked({ design: equal, offset, axialLoad: 1 }).most
        expect(shares.at(-1)).toBeGreaterThanOrEqual(all * (1 - 1e-9))
        expect(shares[0]).toBeLessThanOrEqual(1)
      }),
      { numRuns: 40 },
    )
  })

  test('balls of nearly one size share a load as equal ones do', () => {
    const nearly = { ...UNEVEN.design, balls: { ...UNEVEN.design.balls, standardDeviation: mm(1e-6) } }
    expect(checked({ ...UNEVEN, design: nearly }).uneven?.tallest.ballLoad).toBeWithin(0.01, 5)
    expect(checked({ ...UNEVEN, design: nearly }).ruin.load / checked(EVEN).ruin.load).toBeWithin(1e-3, 1)
  })

  test('beside the axis it carries as one end of a beam does, (1 + e/R)/2; of three as a leg of a stool, (1 + 2 e/R)/3', () => {
    const at = (count: number, part: number) => {
      const design = { ...UNEVEN.design, bore: mm(2), balls: { ...UNEVEN.design.balls, count } }
      const { bearing } = checked({ ...UNEVEN, design })
      const offset = mm(part * bearing.pitchRadius)
      return checked({ ...UNEVEN, design, offset }).uneven?.tallest.ballLoad ?? Number.NaN
    }
    expect(at(12, 0.25)).toBeWithin(1e-9, 37.5)
    expect(at(12, 0.9)).toBeWithin(1e-9, 57)
    expect(at(3, 0)).toBeWithin(1e-9, 20)
    expect(at(3, 0.25)).toBeWithin(1e-9, 30)
  })

  test('the less they differ, the earlier all carry; of one size nothing is said', () => {
    const from = (deviation: number) =>
      checked({
        ...EVEN,
        design: { ...EVEN.design, balls: { ...EVEN.design.balls, standardDeviation: mm(deviation) } },
      }).uneven?.allCarryFrom ?? Number.NaN
    // Hertz again: with the 3/2 power of what is pressed together
    expect(from(0.04) / from(0.01)).toBeWithin(1e-9, 8)
    expect(checked(EVEN)).not.toHaveProperty('uneven')
    expect(codes(checked(EVEN))).not.toContain('three-carry')
    expect(codes(checked({ ...UNEVEN, axialLoad: 1.01 * from(0.05) }))).not.toContain('three-carry')
  })
})

describe('on edges', () => {
  const tight = { ...EVEN, design: { ...EVEN.design, groove: { conformity: 0.45 } } }

  test('the wood gives under any load, and the ball rolls on a smaller circle', () => {
    const { firstMark, warnings, ratios, bearing } = checked(tight)
    expect(firstMark.load).toBeLessThan(checked(EVEN).firstMark.load / 20)
    expect(warnings.map(({ facts }) => facts.code)).toContain('edges-crush')
    expect(warnings.map(({ path }) => path)).toContain('/design/groove/conformity')
    const rollingRadius = Math.sqrt(64 - (bearing.plate.grooveWidth / 2) ** 2)
    expect(ratios.ballSpin).toBeWithin(1e-9, bearing.pitchRadius / (2 * rollingRadius))
  })
})

test('what only the other has is refused by name, all at once', () => {
  const { design } = EVEN
  expect(reasonsIn(loadCheck({ design, axialLoad: 1, radialLoad: 1, turning: 'inner-ring' }))).toEqual([
    'not-of-arrangement /radialLoad',
    'not-of-arrangement /turning',
  ])
  expect(reasonsIn(loadCheck({ design: PLAIN, axialLoad: 1, radialLoad: 1, offset: mm(0) }))).toEqual([
    'not-of-arrangement /axialLoad',
    'not-of-arrangement /offset',
  ])
})
