import { type Design, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { mm } from '#shared/units/length.ts'
import { ownCautions } from '#src/words/bearing-caution.ts'
import * as words from '#src/words/job-sheet/finish.ts'
import { gapName, READINGS, SIZES } from '#src/words/job-sheet/sizes.ts'
import {
  type AnyJob,
  arrangementOf,
  gapReadings,
  glassCautions,
  type Operation,
  type Reading,
  type Size,
  sourced,
  unitsOf,
} from './operation.ts'

/* The last operations of any bearing. Common practice, no source, as all of the sheet. */

export function finish(job: AnyJob<Design>): Operation {
  const { finishAllowance: film } = job.design.bearing.resolved
  return {
    ...words.finish(arrangementOf(job), { film, units: unitsOf(job) }),
    id: 'finish',
    part: 'both',
    sizes: film === 0 ? [] : [{ name: SIZES.film, value: film, byCaliper: true }],
    cautions: ['finish'],
    readings: isCaged(job.design) ? [playReading(job)] : measuredAtTheEnd(job).readings,
  }
}

export const grain = (job: AnyJob<Design>): Operation => ({
  ...words.grain(arrangementOf(job), job.design.bearing.resolved.finishAllowance === 0),
  id: 'grain',
  part: 'both',
  sizes: [],
  cautions: ['dust'],
  readings: [],
})

export const wax = (job: AnyJob<Design>): Operation => ({
  ...words.wax(arrangementOf(job)),
  id: 'wax',
  part: 'both',
  sizes: [],
  cautions: ['finish'],
  readings: [],
})

const PLAY_READING = { name: READINGS.play, at: 'inner', kind: 'radial-play', field: '/value' } as const

/** The play before a cage holds its balls is read on three of them. */
export const playReading = ({ design }: AnyJob<Design>): Reading =>
  isCaged(design) ? { ...PLAY_READING, name: READINGS.playOnThree } : PLAY_READING

/** The readings that are repeated at the end. */
function measuredAtTheEnd(job: AnyJob<Design>): {
  readonly sizes: readonly Size[]
  readonly readings: readonly Reading[]
} {
  const { design } = job
  if (isCaged(design)) return { sizes: [playOf(design)], readings: [PLAY_READING] }
  const gap = {
    symbol: DIMENSION_SYMBOLS.ballGap,
    name: gapName(arrangementOf(job)),
    value: design.bearing.ballGap,
    ...sourced('ballGap', design),
  }
  if (isOfPlates(design)) {
    const between = {
      symbol: DIMENSION_SYMBOLS.plateGap,
      name: SIZES.plateGap,
      value: design.bearing.plateGap,
      ...sourced('plateGap', design),
    }
    const height = { symbol: DIMENSION_SYMBOLS.height, name: SIZES.height, value: design.bearing.height }
    return { sizes: [gap, between, height], readings: gapReadings(job) }
  }
  return { sizes: [gap, playOf(design)], readings: [...gapReadings(job), PLAY_READING] }
}

const playOf = (design: DesignOf<RingPair & { readonly resolved: ResolvedBalls }>): Size => ({
  symbol: DIMENSION_SYMBOLS.radialInternalClearance,
  name: SIZES.play,
  value: design.bearing.radialInternalClearance,
  byCaliper: true,
  ...sourced('radialInternalClearance', design),
})

/** @param loose the ring whose halves nothing but glue will hold */
export function runIn(job: AnyJob<Design>, loose?: RingName): Operation {
  const { design } = job
  const { resolved } = design.bearing
  const minGap = isCaged(design) ? mm(0) : design.bearing.resolved.minBallGap
  return {
    ...words.runIn(arrangementOf(job), {
      minGap,
      loose,
      isMounted: job.mounting !== undefined,
      units: unitsOf(job),
    }),
    ...measuredAtTheEnd(job),
    id: 'run-in',
    part: 'both',
    cautions: ['light-use-only', ...ownCautions(resolved.input), ...glassCautions(job)],
  }
}
