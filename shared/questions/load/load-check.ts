import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedQuestion } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type AnyLoadCheckInput, CHECKS, type LoadCheck } from '#shared/questions/load/arrangements/all.ts'
import { seated } from '#shared/questions/load/arrangements/rings.ts'
import { fail, type Result } from '#shared/result.ts'
import { type LoadCheckInput, resolveLoad } from './input.ts'
import type { LoadRefusal } from './refusal.ts'

const OWN_NAMES = [...new Set(Object.values(CHECKS).flatMap(({ own }) => own))]

export type { AnyLoadCheckInput, LoadCheck, LoadSpeedReason } from '#shared/questions/load/arrangements/all.ts'

/** The name of the load that a design carries. */
export const loadNameOf = (design: { readonly arrangement?: ArrangementName }): 'radialLoad' | 'axialLoad' =>
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

/**
 * The radial load from which on some ball of two rings leaves a deeper dent than is accepted [N]: that of a load check, without
 * the rest of it.
 */
export const dentingLoad = (bearing: RingPair, load: Omit<LoadCheckInput, 'design'>): number =>
  seated(bearing, resolveLoad(load, bearing.resolved.input.balls.material === 'wood')).ruin.load
