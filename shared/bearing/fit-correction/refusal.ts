import { readingReach } from '#shared/statistics/likelihood.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { GrooveUnderWay } from './groove-under-way.ts'
import type { FitCorrectionInput, Reading, ReadingKind } from './input.ts'
import type { GrooveModel } from './model.ts'

/** Why there is nothing to say about a fit: facts only. */
export type FitRefusal =
  | {
      readonly code: 'reading-impossible'
      readonly path: string
      readonly kind: ReadingKind
      readonly given: Mm
      /** What it could be at the least and at the most, whatever the groove. */
      readonly least: Mm
      readonly most: Mm
    }
  | {
      readonly code: 'reading-of-other-ring'
      readonly path: string
      readonly kind: ReadingKind
      readonly ring: FitCorrectionInput['ring']
    }
  | { readonly code: 'balls-too-uneven'; readonly path: string; readonly given: Mm; readonly most: Mm }
  | { readonly code: 'no-gap-in-cage'; readonly path: string }
  | { readonly code: 'readings-contradict'; readonly path: string }
  | { readonly code: 'target-band-empty'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'target-out-of-reach'; readonly path: string; readonly min: Mm; readonly max: Mm }
  | { readonly code: 'aim-outside-band'; readonly path: string; readonly aim: Mm; readonly min: Mm; readonly max: Mm }

/** Beyond this share of their diameter a lot is no lot of one size, and its closure means nothing. */
const MOST_SCATTER = 0.1
/** No ball may stand between two that meet over it: the exact closure's own limit on the largest over the smallest. */
const MOST_UNEVEN = 1.5

/** Balls so uneven that no groove can be told from them: the scatter that was given, or the balls that were measured. */
export function unevenBalls({ settled, x, tightest }: GrooveUnderWay): readonly FitRefusal[] {
  const { count, diameters, standardDeviation } = settled.input.balls
  if (diameters === undefined) {
    const most = mm(MOST_SCATTER * settled.ballDiameter)
    if (standardDeviation === undefined || standardDeviation <= most) return []
    return [{ code: 'balls-too-uneven', path: '/design/balls/standardDeviation', given: standardDeviation, most }]
  }
  const smallest = Math.min(...diameters)
  const largest = mm(Math.max(...diameters))
  const isTight = diameters.length === count && x < tightest(diameters)
  if (largest <= MOST_UNEVEN * smallest && !isTight) return []
  return [
    {
      code: 'balls-too-uneven',
      path: '/design/balls/diameters',
      given: mm(largest - smallest),
      most: mm(smallest / 2),
    },
  ]
}

/** The readings, of now and of before, that no groove of this bearing could give, each by its path. */
export function impossibleReadings(input: FitCorrectionInput, model: GrooveModel): readonly FitRefusal[] {
  const judged = (readings: readonly Reading[], at: string): readonly FitRefusal[] =>
    readings.flatMap((reading, index) => judge(reading, `${at}/${index}`, input.ring, model))
  return [
    ...judged(input.readings, '/readings'),
    ...input.earlier.flatMap(({ readings }, index) => judged(readings, `/earlier/${index}/readings`)),
  ]
}

function judge(
  reading: Reading,
  path: string,
  ring: FitCorrectionInput['ring'],
  model: GrooveModel,
): readonly FitRefusal[] {
  const { kind } = reading
  if (!model.kinds.includes(kind)) return [{ code: 'reading-of-other-ring', path, kind, ring }]
  const truth = model.truth(reading)
  if (truth === undefined || !('error' in reading)) return []
  const given = 'value' in reading ? reading.value : reading.diameter
  const { least, most } = possible(truth, model)
  const reach = readingReach(reading.error)
  const tooSmall = given + reach < least && !(kind === 'plug' && reading.result === 'enters')
  const tooLarge = given - reach > most && !(kind === 'plug' && reading.result === 'refuses')
  return tooSmall || tooLarge
    ? [{ code: 'reading-impossible', path, kind, given, least: mm(least), most: mm(most) }]
    : []
}

/** Balls that are so far off their nominal size, in deviations of their mean or of it outright, are other balls. */
const MOST_DEVIATIONS = 8
const MOST_OFF = 0.1

/** A figure that grows with x and does or does not move with y has its ends at the corners of what is known beforehand. */
function possible(truth: (x: number, y: number) => number, model: GrooveModel): { least: number; most: number } {
  const { x, y } = model.prior
  const off = Math.max(MOST_DEVIATIONS * y.standardDeviation, MOST_OFF * y.mean)
  const corners = [x.from, x.to].flatMap((atX) => [y.mean - off, y.mean + off].map((atY) => truth(atX, atY)))
  const most = Math.max(...corners)
  // Nothing below 0 is read off a rule.
  return {
    least: Math.max(0, Math.min(...corners)),
    most: truth === model.figure ? Math.min(most, model.mostFigure) : most,
  }
}
