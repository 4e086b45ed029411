import fc from 'fast-check'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { SPECIES_IDS } from '#shared/data/species.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import type { RingWood } from '#shared/movement/year.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { mm } from '#shared/units/length.ts'
import { CONSTRUCTIONS } from '#shared/wood/construction.ts'
import { between, likelyInput } from './inputs.ts'

export const MAPLE = { construction: 'flat-sawn', species: 'maple-sugar' } as const satisfies RingWood

/** An invented house: from heating in winter to a damp summer. */
export const HOUSE: SeasonalFitInput['climate'] = {
  kind: 'air',
  temperature: { min: 18, max: 24 },
  relativeHumidity: { min: 30, max: 65 },
}

/** Fourteen marbles between two rings of flat-sawn sugar maple, made on a day of 50 %. */
export const MARBLES: SeasonalFitInput = {
  design: { units: 'mm', balls: { count: 14, diameter: mm(14), material: 'glass' }, bore: mm(10), ballGap: mm(0.7) },
  woods: { outerRing: MAPLE, innerRing: MAPLE },
  climate: HOUSE,
  today: { kind: 'air', air: { temperature: 20, relativeHumidity: 50 } },
}

const moving = SPECIES_IDS.filter((id) => MOVEMENT[id] !== undefined)
const ringWood: fc.Arbitrary<RingWood> = fc
  .record({ construction: fc.constantFrom(...CONSTRUCTIONS), species: fc.constantFrom(...moving) })
  .map(({ construction, species }) =>
    construction === 'cross-laminated-ply' ? { construction } : { construction, species },
  )
const humidities = fc
  .tuple(between(0, 90), between(0, 90))
  .map(([one, other]) => ({ min: Math.min(one, other), max: Math.max(one, other) }))
/** A year in any air, of likely bearings of any wood. */
export const anySeason: fc.Arbitrary<SeasonalFitInput> = fc
  .record({
    design: likelyInput,
    outer: ringWood,
    inner: ringWood,
    balls: fc.constantFrom(...moving),
    humidities,
    today: between(20, 80),
  })
  .map(({ design, outer, inner, balls, humidities: relativeHumidity, today }) => ({
    design,
    woods: { outerRing: outer, innerRing: inner, balls },
    climate: { kind: 'air', temperature: { min: 15, max: 25 }, relativeHumidity },
    today: { kind: 'air', air: { temperature: 20, relativeHumidity: today } },
  }))

/** The same of every arrangement, each with its woods. */
export const anyArrangedSeason: fc.Arbitrary<SeasonalFitInput> = fc
  .record({ season: anySeason, arrangement: fc.constantFrom(...ARRANGEMENT_NAMES) })
  .map(({ season, arrangement }) => {
    const { design, woods } = season
    if (arrangement === 'radial') return season
    const { units, balls, bore } = design
    const { outerRing = MAPLE, innerRing = MAPLE } = woods
    const kept = woods.balls === undefined ? {} : { balls: woods.balls }
    const own = {
      roller: { outerRing, innerRing },
      caged: { outerRing, innerRing, cage: innerRing },
      thrust: { plates: outerRing },
    }[arrangement]
    return { ...season, design: { units, balls, bore, arrangement }, woods: { ...kept, ...own } }
  })
