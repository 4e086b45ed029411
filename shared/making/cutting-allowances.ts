import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
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

/** What the last pass takes off a track, radially: common practice, no source. */
const LAST_PASS: Readonly<Record<Units, Mm>> = { in: inches(1 / 16), mm: mm(1.5) }

/** The same of a track, by its last pass: a fourth of what runs on it at the most. */
export const trackStopShort = (diameter: Mm, units: Units): Mm =>
  grooveStopShort(mm(Math.min(LAST_PASS[units], diameter / 4)))

/**
 * The depth of a plate's first groove, cut to see whether its circle is right: the whole groove swallows one so shallow,
 * even where it is cut on a somewhat larger circle. The words of the job sheet say a third. Common practice, no source.
 *
 * @param depth of the whole groove [mm]
 */
export const trialDepth = (depth: Mm): Mm => mm((1 / 3) * depth)
