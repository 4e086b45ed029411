import type { Bearing } from '#shared/bearing/bearing.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import * as defaults from './defaults.ts'
import type { FitCorrectionInput } from './input.ts'
import type { FitRefusal } from './refusal.ts'

/** The band that is aimed for, with nothing left open. */
export interface SettledTarget {
  readonly aim: Mm
  readonly min: Mm
  readonly max: Mm
  readonly overshootRisk: number
  readonly finishAllowance: Mm
}

/** What the maker said, and for the rest what the design says. */
export function settledTarget({ ring, target }: FitCorrectionInput, { settled }: Bearing): SettledTarget {
  const ofDesign =
    ring === 'outer'
      ? { aim: settled.ballGap, min: settled.minBallGap, max: settled.maxBallGap }
      : playBand(settled.radialInternalClearance)
  const min = target.min ?? ofDesign.min
  const max = target.max ?? ofDesign.max
  return {
    min,
    max,
    aim: target.aim ?? mm(Math.min(Math.max(ofDesign.aim, min), max)),
    overshootRisk: target.overshootRisk ?? defaults.OVERSHOOT_RISK,
    finishAllowance: target.finishAllowance ?? settled.finishAllowance,
  }
}

/** A play from half to twice the design's still runs well: common practice, no source. */
const playBand = (aim: Mm) => ({ aim, min: mm(aim / 2), max: mm(2 * aim) })

export function bandRefusals({ aim, min, max }: SettledTarget): readonly FitRefusal[] {
  if (!(min < max)) return [{ code: 'target-band-empty', path: '/target', min, max }]
  return aim >= min && aim <= max ? [] : [{ code: 'aim-outside-band', path: '/target', aim, min, max }]
}
