import { FELT_FIT } from '#shared/bearing/plug-reading.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import { inches, type Units } from '#shared/units/length.ts'
import type { ReadingKind } from './reading.ts'

/* The error of a reading that the input states in part or not at all. All common practice, no source; lengths in millimetres. */

/** A hand that reads a rule errs by so much from one reading to the next; what it always errs by is learnt. */
const HAND_AT_THE_RULE = 0.15
const RULE_GRADUATION = 0.5
/** A caliper in a wooden groove, a turned plug felt for fit, a dial indicator. */
const CALIPER: ReadingError = { graduation: 0, standardUncertainty: 0.1 }
const PLUG: ReadingError = { graduation: 0, standardUncertainty: FELT_FIT }
const DIAL: ReadingError = { graduation: 0, standardUncertainty: 0.05 }

/** The usual error of a reading; undefined for a yes-or-no reading, which has none. */
export function usualError(kind: ReadingKind, units: Units): ReadingError | undefined {
  switch (kind) {
    case 'ball-gap':
    case 'last-ball-opening':
    case 'ball-row':
      return {
        graduation: units === 'in' ? inches(1 / 32) : RULE_GRADUATION,
        standardUncertainty: HAND_AT_THE_RULE,
      }
    case 'groove-bottom-diameter':
    case 'groove-depth':
      return CALIPER
    case 'plug':
      return PLUG
    case 'radial-play':
      return DIAL
    case 'last-ball-refused':
    case 'last-ball-in':
    case 'binds':
      return undefined
    default:
      return kind satisfies never
  }
}

/** No hand is surer than this: wood does not hold still to half a hundredth of a millimetre. */
const SUREST_HAND = 0.005
/** Without a stated error of the hand, a reading is about as fine as its graduation allows. */
const HAND_OVER_GRADUATION = 1 / 4

/** The stated error of a reading, completed with the usual one; undefined for a yes-or-no reading. */
export function readingError(
  kind: ReadingKind,
  units: Units,
  { graduation, standardUncertainty }: Partial<ReadingError>,
): ReadingError | undefined {
  const usual = usualError(kind, units)
  if (usual === undefined || (graduation === undefined && standardUncertainty === undefined)) return usual
  const hand = standardUncertainty ?? HAND_OVER_GRADUATION * (graduation ?? 0)
  return { graduation: graduation ?? 0, standardUncertainty: Math.max(hand, SUREST_HAND) }
}
