import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import {
  type AnyLoadCheckInput,
  CHECKS,
  type LoadCheck,
  type LoadName,
} from '#shared/questions/load/arrangements/all.ts'
import { seated } from '#shared/questions/load/arrangements/rings.ts'
import { fail, type Result } from '#shared/result.ts'
import { type LoadCheckInput, resolveLoad } from './input.ts'
import { markDepth, workingLoads } from './limits.ts'
import type { LoadRefusal } from './refusal.ts'

const OWN_NAMES = [...new Set(Object.values(CHECKS).flatMap(({ own }) => own))]

export type { AnyLoadCheckInput, LoadCheck, LoadSpeedReason } from '#shared/questions/load/arrangements/all.ts'

/** The name of the load that a design carries. */
export const loadNameOf = (design: { readonly arrangement?: ArrangementName }): LoadName =>
  CHECKS[nameOf(design)].loadName

/** The load check of any arrangement; what only others have is refused by name. */
export function loadCheck(input: AnyLoadCheckInput): Result<LoadCheck, Refused<LoadRefusal>> {
  const arrangement = nameOf(input.design)
  const { own, check } = CHECKS[arrangement]
  const foreign = OWN_NAMES.filter((name) => input[name] !== undefined && !own.includes(name))
  if (foreign.length > 0)
    return fail(refusedQuestion(foreign.map((name) => ({ code: 'not-of-arrangement', path: `/${name}`, arrangement }))))
  return check(input)
}

/** The loads of a bearing [N] that a search asks for. */
export interface Carried {
  /** Turned slowly by hand, no ball leaves a mark. */
  readonly working: number
  /** Some dent reaches the accepted depth. */
  readonly ruin: number
}
export const NONE_CARRIED: Carried = { working: 0, ruin: 0 }

export const carriedBy = ({ workingLoad, ruin }: Pick<LoadCheck, 'workingLoad' | 'ruin'>): Carried => ({
  working: workingLoad.loads.slowHand.load,
  ruin: ruin.load,
})

/** The radial loads of two rings: those of a load check, without the rest of it. */
export function carriedLoad(bearing: RingPair, load: Omit<LoadCheckInput, 'design'>): Carried {
  const resolved = resolveLoad(load, bearing.resolved.input.balls.material === 'wood')
  const { carrying, ruin } = seated(bearing, resolved)
  const { slowHand } = workingLoads(carrying, markDepth(bearing.resolved.ballDiameter, resolved.dentFraction))
  return { working: slowHand.load, ruin: ruin.load }
}
