import { mm } from '#shared/units/length.ts'
import type { SourceId } from './sources.ts'

/** How far a size without a tolerance of its own may be off, either way [mm]. */
export const GENERAL_TOLERANCES = {
  class: 'coarse (c)',
  source: 'iso-2768-1' satisfies SourceId,
  rows: [
    { upTo: mm(6), plusMinus: mm(0.3) },
    { upTo: mm(30), plusMinus: mm(0.5) },
    { upTo: mm(120), plusMinus: mm(0.8) },
    { upTo: mm(400), plusMinus: mm(1.2) },
    { upTo: mm(1000), plusMinus: mm(2) },
    { upTo: mm(2000), plusMinus: mm(3) },
    { upTo: mm(4000), plusMinus: mm(4) },
  ],
} as const
