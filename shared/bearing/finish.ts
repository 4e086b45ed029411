import { type Mm, mm } from '#shared/units/length.ts'
import type { Refusal } from './refusal.ts'

/**
 * Why a finish is too thick: it fills the shallowest groove, or it takes up the thinnest wood from both sides. Where there is no
 * wood at all, that is refused for reasons of its own.
 */
export function finishRefusals(given: Mm, grooveDepths: readonly Mm[], wood: readonly Mm[]): readonly Refusal[] {
  const refusals: Refusal[] = []
  const path = '/finishAllowance'
  const shallowest = mm(Math.min(...grooveDepths))
  if (!(given < shallowest)) refusals.push({ code: 'finish-fills-groove', path, given, below: shallowest })
  const halfOfThinnest = mm(Math.min(...wood) / 2)
  if (halfOfThinnest > 0 && !(given < halfOfThinnest)) {
    refusals.push({ code: 'finish-leaves-no-wood', path, given, below: halfOfThinnest })
  }
  return refusals
}
