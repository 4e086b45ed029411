import { type Mm, mm } from '#shared/units/length.ts'
import { cutDeviation, SHARP_TOOL } from './tool-error.ts'

/** Twice the scatter of the tool: one cut in forty still goes past (normal distribution). Common practice, no source. */
const SCATTERS_SHORT = 2

/**
 * How far short of its depth a groove is stopped with the sharp tool, to be sanded to fit from there: twice the scatter of
 * a cut of that depth, √(absolute² + (relative depth)²), as fit correction has it; half the depth at the most.
 *
 * @param depth above 0 [mm]
 */
export function grooveStopShort(depth: Mm): Mm {
  const scatter = cutDeviation(SHARP_TOOL, depth)
  return mm(Math.min(SCATTERS_SHORT * scatter, depth / 2))
}
