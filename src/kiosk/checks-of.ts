import { CHECK_LABELS } from '#src/words/job-sheet/labels.ts'
import { type Json, part, textOf } from './json.ts'

/** How an operation of the job sheet is checked, and what may go wrong in it: each paragraph after its label. */
export function checksOf(operation: Json): readonly (readonly [label: string, words: string])[] {
  const mistake = part(operation['mistake'])
  return [
    [CHECK_LABELS.check, textOf(operation['check'])],
    [CHECK_LABELS.mistake, textOf(mistake['looksLike'])],
    [CHECK_LABELS.cost, textOf(mistake['costs'])],
    [CHECK_LABELS.remedy, textOf(mistake['remedy'])],
  ]
}
