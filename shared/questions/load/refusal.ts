import type { Refusal } from '#shared/bearing/refusal.ts'
import type { Mm } from '#shared/units/length.ts'

/** Why a load has no answer, beside what speaks against the design. */
export type LoadRefusal =
  | Refusal
  | { readonly code: 'load-tips-plate'; readonly path: string; readonly given: Mm; readonly below: Mm }
