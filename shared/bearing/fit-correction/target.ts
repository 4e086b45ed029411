import type { GapInput, SettledBallRing, SettledRings } from '#shared/bearing/resolve.ts'
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

/** The aim and the band that a design has. */
export type OfDesign = Pick<SettledTarget, 'aim' | 'min' | 'max' | 'finishAllowance'>

export const gapBandOf = ({ ballGap, minBallGap, maxBallGap, finishAllowance }: SettledBallRing): OfDesign => ({
  aim: ballGap,
  min: minBallGap,
  max: maxBallGap,
  finishAllowance,
})

/** A play from half to twice the design's still runs well: common practice, no source. */
export const playBandOf = ({ radialInternalClearance: aim, finishAllowance }: SettledRings): OfDesign => ({
  aim,
  min: mm(aim / 2),
  max: mm(2 * aim),
  finishAllowance,
})

/** What the maker said, and for the rest what the design says. */
export function settledTarget({ target }: FitCorrectionInput, ofDesign: OfDesign): SettledTarget {
  const min = target.min ?? ofDesign.min
  const max = target.max ?? ofDesign.max
  return {
    min,
    max,
    aim: target.aim ?? mm(Math.min(Math.max(ofDesign.aim, min), max)),
    overshootRisk: target.overshootRisk ?? defaults.OVERSHOOT_RISK,
    finishAllowance: target.finishAllowance ?? ofDesign.finishAllowance,
  }
}

/** The band of a gap, as a design says it. */
export const bandOf = ({ aim, min, max }: SettledTarget): GapInput => ({
  ballGap: aim,
  minBallGap: min,
  maxBallGap: max,
})

export function bandRefusals({ aim, min, max }: SettledTarget): readonly FitRefusal[] {
  if (!(min < max)) return [{ code: 'target-band-empty', path: '/target', min, max }]
  return aim >= min && aim <= max ? [] : [{ code: 'aim-outside-band', path: '/target', aim, min, max }]
}
