import type { ReadingError } from '#shared/statistics/likelihood.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { ReadingKind, ToolError, ToolName } from './input.ts'

/* What a maker need not say about hands, rules and tools. All common practice, no source. */

/** A rule is read to its graduation by a hand that errs by a tenth of a millimetre or so. */
const HAND_AT_THE_RULE = mm(0.15)
const rule = (units: Units): ReadingError => ({
  graduation: units === 'in' ? inches(1 / 32) : mm(0.5),
  standardUncertainty: HAND_AT_THE_RULE,
})

/** A caliper in a wooden groove, and a turned plug felt for fit. */
const CALIPER: ReadingError = { graduation: 0, standardUncertainty: 0.1 }
const PLUG: ReadingError = { graduation: 0, standardUncertainty: 0.05 }
const DIAL: ReadingError = { graduation: 0, standardUncertainty: 0.05 }

/** The error of a reading of which nothing was said. */
export function usualError(kind: ReadingKind, units: Units): ReadingError {
  switch (kind) {
    case 'ball-gap':
    case 'last-ball-opening':
    case 'ball-row':
      return rule(units)
    case 'groove-bottom-diameter':
    case 'groove-depth':
      return CALIPER
    case 'plug':
      return PLUG
    case 'radial-play':
    case 'last-ball-refused':
    case 'binds':
      return DIAL
    default:
      return kind satisfies never
  }
}

/** No hand is surer than this, whatever is said: wood does not hold still to half a hundredth of a millimetre. */
const SUREST_HAND = mm(0.005)
/** Who gives a graduation and no error of the hand reads about as finely as the graduation allows. */
const HAND_OVER_GRADUATION = 1 / 4

/** The error of a reading of which something, all or nothing was said. */
export function readingError(kind: ReadingKind, units: Units, said: Partial<ReadingError>): ReadingError {
  const { graduation, standardUncertainty } = said
  if (graduation === undefined && standardUncertainty === undefined) return usualError(kind, units)
  const hand = standardUncertainty ?? HAND_OVER_GRADUATION * (graduation ?? 0)
  return { graduation: graduation ?? 0, standardUncertainty: Math.max(hand, SUREST_HAND) }
}

export const SHARP_TOOL: ToolError = { absolute: mm(0.2), relative: 0.1 }
export const ABRASIVE: ToolError = { absolute: mm(0.05), relative: 0.05 }

/** Radial depth beyond which nobody sands: the groove loses its shape before. */
export const MOST_AT_ONCE: Readonly<Record<ToolName, Mm>> = {
  'sharp-tool': mm(Number.POSITIVE_INFINITY),
  abrasive: mm(0.5),
}

export const OVERSHOOT_RISK = 0.05

/** The groove is called in band when that is at least so certain. */
export const CONFIDENCE = 0.95

/** A further reading is worth taking while it has this chance to make clear what to do: five of them on average at most. */
export const WORTH_READING_AGAIN = 0.2

/** How far the mean of a bought lot may lie from its nominal diameter, over the scatter of single balls. */
export const LOT_MEAN_OVER_SCATTER = 1

/** A caliper on single balls, for a lot whose balls were all measured. */
export const BALL_CALIPER = mm(0.02)
