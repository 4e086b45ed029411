import { type Json, part } from '#src/kiosk/json.ts'

/** The limits within which a maker looks for another bearing of the same kind, in the units of the job. */
interface Limits {
  readonly sizes: readonly number[]
  readonly counts: readonly number[]
  readonly outside: number
}

/** Values of a bearing that every bearing of a search can have too. */
const ALIKE = [
  'ballGap',
  'minBallGap',
  'maxBallGap',
  'radialInternalClearance',
  'finishAllowance',
  'width',
  'split',
  'shopDenominator',
]

/** Depths, of which a search tries every one of a list. */
const LISTED = {
  outerEngagements: ['outerRing', 'engagement'],
  innerEngagements: ['innerRing', 'engagement'],
  engagements: ['plates', 'engagement'],
  cutterDiameters: ['groove', 'cutterDiameter'],
} as const

/** So many are shown. Of those that have none of the wanted numbers there may be more before them. */
const SHOWN = 5
const MOST_RANKED = 50

/**
 * The question which sizes and numbers of balls do best in a bearing that is like one in all else that a search knows. It does not
 * know the year: with the usual play hardly any bearing runs all year, and the play that a year needs is chosen for each bearing
 * as soon as it is there.
 *
 * @param request the bearing as the service takes it
 */
export function searchFor(request: object, { sizes, counts, outside }: Limits): object {
  const bearing = part(request)
  const { material, standardDeviation } = part(bearing['balls'])
  const listed = Object.entries(LISTED).flatMap(([list, [group, name]]) => {
    const value = part(bearing[group])[name]
    return value === undefined ? [] : [[list, [value]]]
  })
  const { units, arrangement, bore } = bearing
  return {
    units,
    arrangement,
    balls: sizes.map((diameter) => ({ diameter, material, standardDeviation })),
    bore: { min: bore, max: bore },
    ...(counts.length > 0 && { counts: { min: Math.min(...counts), max: Math.max(...counts) } }),
    outsideDiameter: { max: outside },
    ...Object.fromEntries(ALIKE.flatMap((name) => (name in bearing ? [[name, bearing[name]]] : []))),
    ...Object.fromEntries(listed),
    limit: counts.length > 0 ? MOST_RANKED : SHOWN,
  }
}

/** A pair of size and number, with the score of the best bearing that has it. */
export interface Pair {
  readonly count: number
  readonly diameter: number
  readonly score: number
}

/** The best pairs of an answer, of the wanted numbers alone where there are such. */
export const bestPairs = (ranked: readonly Json[], counts: readonly number[]): readonly Pair[] =>
  ranked
    .map(({ design, score }) => {
      const { count, diameter } = part(part(design)['balls'])
      return { count: Number(count), diameter: Number(diameter), score: Number(score) }
    })
    .filter(({ count }) => counts.length === 0 || counts.includes(count))
    .slice(0, SHOWN)
