import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { RadialBearing } from '#shared/bearing/arrangements.ts'
import type { BALL_MATERIALS } from '#shared/bearing/fields.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import type { Ellipse } from '#shared/geometry/ellipse.ts'
import { ballGap, gapPerPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import type { RingWood } from '#shared/movement/year.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import type { SeasonalFit as AnySeason, FitAtState } from '#shared/questions/season/seasonal-fit.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { mm } from '#shared/units/length.ts'
import { equilibriumMoisture } from '#shared/wood/equilibrium-moisture.ts'
import { reasonsIn } from '#tests/support/refused.ts'
import { anySeason, HOUSE, MAPLE, MARBLES } from '#tests/support/seasons.ts'

/** A state of rings: with gap, play and the raceways of both. */
interface RingState extends FitAtState {
  readonly fit: Required<FitAtState['fit']>
  readonly shape: { readonly outerBottom: Ellipse; readonly ball: FitAtState['snapshot']['ball'] }
}
type SeasonalFit = Omit<AnySeason, 'today' | 'states' | 'bearing'> & {
  readonly bearing: RadialBearing
  readonly today: RingState
  readonly states: readonly RingState[]
}

function ringState(at: FitAtState): RingState {
  const { fit, snapshot } = at
  const { ballGap: gap, ballGapOfLargest, play, rooms } = fit
  const { outerRing: outerBottom } = snapshot.raceways
  if (gap === undefined || ballGapOfLargest === undefined || play === undefined || outerBottom === undefined)
    throw new Error('no rings')
  return { ...at, fit: { ballGap: gap, ballGapOfLargest, play, rooms }, shape: { outerBottom, ball: snapshot.ball } }
}

function fitted(input: SeasonalFitInput): SeasonalFit {
  const result = seasonalFit(input)
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.error)}`)
  const { today, states, bearing } = result.value
  if (!('landGap' in bearing) || 'cage' in bearing || 'cheeks' in bearing) throw new Error('not radial')
  return { ...result.value, bearing: bearing as RadialBearing, today: ringState(today), states: states.map(ringState) }
}

const withWoods = (wood: RingWood): SeasonalFitInput => ({ ...MARBLES, woods: { outerRing: wood, innerRing: wood } })

test('on the day that it is made it is what it was designed to be', () => {
  const { today, bearing } = fitted(MARBLES)
  expect(today.fit.ballGap.least).toBeWithin(1e-9, 0.7)
  expect(today.fit.ballGap.most).toBeWithin(1e-9, 0.7)
  expect(today.fit.play.worst).toBeWithin(1e-9, bearing.radialInternalClearance)
  expect(today.troubles).toEqual([])
})

test('from 20 C and 65 % of humidity the wood comes to 12.0 % (Wood Handbook, Table 4-2)', () => {
  const air = { temperature: 20, relativeHumidity: 65 }
  expect(fitted({ ...MARBLES, today: { kind: 'air', air } }).today.state.moistureContent).toBeWithin(0.07, 12)
})

describe('flat-sawn sugar maple from 6 to 11 %', () => {
  const climate = { kind: 'moisture', moistureContent: { min: 6, max: 11 } } as const
  const today = { kind: 'moisture', moistureContent: 10 } as const
  const { states, bearing } = fitted({ ...MARBLES, climate, today })
  const radius = bearing.outerRing.grooveBottomDiameter / 2

  test.each([
    [0, -4],
    [1, 1],
  ])('state %s: %s %% of moisture move the groove by 0.00353 across and next to nothing along', (i, change) => {
    // Wood Handbook, Table 13-5: 0.00353 per %, of the size at 10 %; along the grain 0.1 to 0.2 % over 30 %.
    const bottom = states[i]?.shape.outerBottom
    expect(bottom?.across).toBeWithin(1e-9, radius * (1 + 0.00353 * change))
    expect(Math.abs((bottom?.along ?? Number.NaN) / radius - 1)).toBeLessThanOrEqual((0.002 / 30) * Math.abs(change))
  })

  test('dry: the gap closes by about as much as the mean radius shrinks, 2 pi times', () => {
    // A ring of nearly round shape is as long as the mean of its half axes makes it.
    const { along = Number.NaN, across = Number.NaN } = states[0]?.shape.outerBottom ?? {}
    const round = ballGap(mm((along + across) / 2 - 7), mm(14), 14)
    expect(states[0]?.fit.ballGap.least).toBeWithin(0.02, round)
    const slope = gapPerPitchRadius(bearing.pitchRadius, mm(14), 14)
    expect(round - 0.7).toBeWithin(0.05, slope * ((along + across) / 2 - radius))
  })

  test('and the inner ring is stiff twice a turn: it turns in some places and not in others', () => {
    const { play } = states[0]?.fit ?? { play: { worst: Number.NaN, best: Number.NaN } }
    expect(play.best - play.worst).toBeGreaterThan(0.4)
  })
})

test('quarter-sawn moves by the radial coefficient', () => {
  const climate = { kind: 'moisture', moistureContent: { min: 9, max: 11 } } as const
  const today = { kind: 'moisture', moistureContent: 10 } as const
  const wood: RingWood = { construction: 'quarter-sawn', species: 'maple-sugar' }
  const { states, bearing } = fitted({ ...withWoods(wood), climate, today })
  const radius = bearing.outerRing.grooveBottomDiameter / 2
  expect(states[1]?.shape.outerBottom.across).toBeWithin(1e-9, radius * 1.00165)
})

test('a segmented ring stays round, and its groove moves by about its wall, not by its radius, and the other way', () => {
  const { states, bearing, today } = fitted(withWoods({ construction: 'segmented', species: 'maple-sugar' }))
  const damp = states[1]
  const change = (damp?.state.moistureContent ?? Number.NaN) - today.state.moistureContent
  const moved = (damp?.shape.outerBottom.across ?? Number.NaN) - today.shape.outerBottom.across
  expect(damp?.shape.outerBottom.along).toBe(damp?.shape.outerBottom.across)
  const wall = bearing.outerRing.wall * 0.00353 * change
  expect(moved).toBeLessThan(0)
  expect(-moved).toBeGreaterThan(0.25 * wall)
  expect(-moved).toBeLessThan(wall)
})

test('ply stays round and grows by 0.02 % per % of moisture', () => {
  const { states, today } = fitted(withWoods({ construction: 'cross-laminated-ply' }))
  const change = (states[1]?.state.moistureContent ?? Number.NaN) - today.state.moistureContent
  const { along = Number.NaN, across = Number.NaN } = states[1]?.shape.outerBottom ?? {}
  expect(along).toBe(across)
  expect(along / today.shape.outerBottom.along - 1).toBeWithin(1e-6, 0.0002 * change)
})

describe('balls', () => {
  const of = (material: (typeof BALL_MATERIALS)[number], balls?: SpeciesId) =>
    fitted({
      ...MARBLES,
      design: { ...MARBLES.design, balls: { ...MARBLES.design.balls, material } },
      woods: { ...MARBLES.woods, ...(balls === undefined ? {} : { balls }) },
    })

  test.each(['glass', 'steel'] as const)('of %s keep their size', (material) => {
    for (const { shape } of of(material).states)
      expect(shape.ball).toMatchObject({ least: 14, mean: 14, most: 14, turned: 0 })
  })

  test('of wood move three ways: hardly, more, most', () => {
    const { today, states } = of('wood', 'beech-american')
    const { ball } = states[1]?.shape ?? today.shape
    const change = (states[1]?.state.moistureContent ?? Number.NaN) - today.state.moistureContent
    // Wood Handbook, Table 13-5, American beech: 0.00190 and 0.00431, of the size at 10 %.
    expect(ball.most / 14 - 1).toBeWithin(2e-4, 0.00431 * change)
    expect(3 * ball.mean - ball.most - ball.least).toBeWithin(2e-4 * 14, 14 * (1 + 0.0019 * change))
    expect(ball.least / 14 - 1).toBeLessThan(0.0002 * change)
  })

  test('of acrylic grow by 0.2 % from dry to 60 %, and by as much less between', () => {
    const { states } = of('acrylic')
    // from 50 % to 65 %: 0.1667 % and 0.225 % over the dry size
    expect(states[1]?.shape.ball.mean).toBeWithin(1e-9, (14 * 1.00225) / (1 + 0.002 * (50 / 60)))
  })

  test('wooden balls that swell with their ring nearly keep its gap; glass ones do not', () => {
    const [wooden, glass] = [of('wood', 'maple-sugar'), of('glass')]
    const spread = ({ states }: SeasonalFit) =>
      (states[1]?.fit.ballGap.least ?? Number.NaN) - (states[0]?.fit.ballGap.least ?? Number.NaN)
    expect(Math.abs(spread(wooden))).toBeLessThan(spread(glass) / 3)
  })
})

describe('the band in which it runs', () => {
  const { band } = fitted(MARBLES)

  test.each(['low', 'high'] as const)('%s: a little inside it runs, a little beyond not', (end) => {
    const humidity = band?.[end].relativeHumidity ?? Number.NaN
    const inward = end === 'low' ? 1 : -1
    const at = (relativeHumidity: number) => {
      const range = { min: relativeHumidity, max: relativeHumidity }
      const { states } = fitted({
        ...MARBLES,
        climate: { kind: 'air', temperature: { min: 20, max: 20 }, relativeHumidity: range },
      })
      return (states[0]?.troubles ?? []).filter((trouble) => trouble !== 'balls-knock')
    }
    expect(at(humidity + inward * 0.01)).toEqual([])
    expect(at(humidity - inward * 0.01)).toEqual(band?.[end].stoppedBy)
  })

  test('its ends are where the wood comes to the moisture that they say', () => {
    for (const end of [band?.low, band?.high]) {
      const air = {
        temperature: band?.temperature ?? Number.NaN,
        relativeHumidity: end?.relativeHumidity ?? Number.NaN,
      }
      expect(equilibriumMoisture(air)).toBeWithin(1e-9, end?.moistureContent ?? Number.NaN)
    }
  })

  test('ply runs however dry or damp it is', () => {
    const ply = fitted(withWoods({ construction: 'cross-laminated-ply' }))
    expect(ply.band).toMatchObject({
      low: { relativeHumidity: 0, stoppedBy: [] },
      high: { relativeHumidity: 100, stoppedBy: [] },
    })
  })

  test('a bearing that does not run today has none', () => {
    const design = {
      ...MARBLES.design,
      outerRing: { engagement: 0.48 },
      innerRing: { engagement: 0.53 },
      radialInternalClearance: mm(0.5),
    }
    const { band: none, today } = fitted({ ...MARBLES, design })
    expect(today.troubles).toEqual(['lands-rub'])
    expect(none).toBeUndefined()
  })
})

test('whatever the bearing, the wood and the weather: an answer in finite numbers, or reasons', () => {
  fc.assert(
    fc.property(anySeason, (input) => {
      const result = seasonalFit(input)
      if (!result.ok) {
        expect(reasonsIn(result)).not.toEqual([])
        return
      }
      for (const { fit } of [result.value.today, ...result.value.states].map(ringState)) {
        const figures = [
          fit.ballGap.least,
          fit.ballGap.most,
          fit.ballGapOfLargest,
          fit.play.worst,
          fit.play.best,
          fit.rooms.leastLandGap ?? Number.NaN,
        ]
        expect(figures.every(Number.isFinite)).toBe(true)
        expect(fit.ballGap.least).toBeLessThanOrEqual(fit.ballGap.most + 1e-9)
        expect(fit.play.worst).toBeLessThanOrEqual(fit.play.best + 1e-9)
      }
      const { goesTogether, runsAllYear, knocks, runs } = result.value.chances
      for (const chance of [goesTogether, runsAllYear, knocks, ...runs]) {
        expect(chance).toBeGreaterThanOrEqual(0)
        expect(chance).toBeLessThanOrEqual(1)
      }
      for (const chance of [goesTogether, ...runs]) expect(chance).toBeGreaterThanOrEqual(runsAllYear)
    }),
    { numRuns: 60 },
  )
})

describe('what cannot be said', () => {
  const reasons = (input: SeasonalFitInput) => reasonsIn(seasonalFit(input))

  test.each<readonly [string, Partial<SeasonalFitInput>, readonly string[]]>([
    [
      'wooden balls of no wood',
      { design: { ...MARBLES.design, balls: { count: 14, diameter: mm(14) } } },
      ['balls-without-wood /woods/balls'],
    ],
    [
      'a wood that was left out',
      { woods: { outerRing: { construction: 'flat-sawn', species: 'khaya' }, innerRing: MAPLE } },
      ['movement-unknown /woods/outerRing/species'],
    ],
    [
      'a range the wrong way round',
      { climate: { ...HOUSE, relativeHumidity: { min: 60, max: 30 } } as SeasonalFitInput['climate'] },
      ['range-reversed /climate/relativeHumidity'],
    ],
    [
      'a temperature hotter than the table',
      { today: { kind: 'air', air: { temperature: 90, relativeHumidity: 30 } } },
      ['temperature-outside /climate/today/temperature'],
    ],
    [
      'wetter than fibre saturation',
      { today: { kind: 'moisture', moistureContent: 31 } },
      ['above-fibre-saturation /climate/today'],
    ],
    [
      'wetter than teak holds',
      {
        woods: { outerRing: { construction: 'flat-sawn', species: 'teak' }, innerRing: MAPLE },
        climate: { kind: 'moisture', moistureContent: { min: 6, max: 23 } },
      },
      ['above-fibre-saturation /climate/moistureContent/max'],
    ],
    ['no such bearing', { design: { ...MARBLES.design, bore: mm(60) } }, ['bore-meets-groove /design/bore']],
  ])('%s', (_what, change, expected) => {
    expect(reasons({ ...MARBLES, ...change })).toEqual(expected)
  })

  test('all at once', () => {
    const input: SeasonalFitInput = {
      ...MARBLES,
      design: { ...MARBLES.design, bore: mm(60) },
      woods: { outerRing: { construction: 'segmented', species: 'limba' }, innerRing: MAPLE },
      today: { kind: 'air', air: { temperature: -31, relativeHumidity: 50 } },
    }
    expect(reasons(input)).toEqual([
      'bore-meets-groove /design/bore',
      'movement-unknown /woods/outerRing/species',
      'temperature-outside /climate/today/temperature',
    ])
  })
})
