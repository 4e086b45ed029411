import { PART_NAMES, type WoodPart } from '#shared/bearing/wood-parts.ts'
import type { Trouble } from '#shared/movement/fit.ts'
import type { Lobes } from '#shared/movement/moving-wood.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import type { WoodState } from '#shared/movement/states.ts'
import { isSegmented } from '#shared/wood/construction.ts'
import type { SeasonalFitInput } from './input.ts'

/** Counts whose miters a saw is set to without a table: 180 degrees over each is whole or a half. Common practice, no source. */
const COUNTS = [4, 5, 6, 8, 9, 10, 12, 15, 18, 20, 24] as const

/** The facts of a state of the year. */
interface StateOfYear {
  readonly state: WoodState
  readonly snapshot: Snapshot
  readonly troubles: readonly Trouble[]
}

export interface SegmentsOfYear {
  /** Fewest pieces, of all segmented parts alike, with which the bearing runs all year on joints that hold. Absent: none of them. */
  readonly leastCount?: number
  /** The hardest pull on each segmented part, and the state in which it comes. */
  readonly worst: readonly { readonly part: WoodPart; readonly name: string; readonly lobes: Lobes }[]
}

/** The effect of a year on parts glued up of segments; undefined if there are none. */
export function segmentsOfYear(
  input: SeasonalFitInput,
  year: readonly StateOfYear[],
  throughYear: (input: SeasonalFitInput) => readonly StateOfYear[],
): SegmentsOfYear | undefined {
  const worst = worstPulls(year)
  if (worst.length === 0) return undefined
  const leastCount = COUNTS.find((count) => {
    const states = throughYear(withCount(input, count))
    const runs =
      states.length > 0 && states.every(({ troubles }) => troubles.every((trouble) => trouble === 'balls-knock'))
    return runs && openJoints(states).length === 0
  })
  return { worst, ...(leastCount === undefined ? {} : { leastCount }) }
}

export const holds = ({ pull, strength }: Lobes): boolean => pull <= strength

/** The segmented parts whose joints open in a year, each in its worst state. */
export const openJoints = (year: readonly Pick<StateOfYear, 'state' | 'snapshot'>[]): SegmentsOfYear['worst'] =>
  worstPulls(year).filter(({ lobes }) => !holds(lobes))

const worstPulls = (year: readonly Pick<StateOfYear, 'state' | 'snapshot'>[]): SegmentsOfYear['worst'] =>
  PART_NAMES.flatMap((part) => {
    const pulls = year.flatMap(({ state: { name }, snapshot }) => {
      const lobes = snapshot.raceways[part]?.segments
      return lobes === undefined ? [] : [{ part, name, lobes }]
    })
    return pulls.toSorted((one, other) => other.lobes.pull - one.lobes.pull).slice(0, 1)
  })

const withCount = (input: SeasonalFitInput, count: number): SeasonalFitInput => ({
  ...input,
  woods: {
    ...input.woods,
    ...Object.fromEntries(
      PART_NAMES.flatMap((part) => {
        const wood = input.woods[part]
        return wood !== undefined && isSegmented(wood) ? [[part, { ...wood, segments: { count } }] as const] : []
      }),
    ),
  },
})
