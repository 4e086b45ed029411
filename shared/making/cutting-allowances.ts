import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { cutDeviation, SHARP_TOOL } from './tool-error.ts'

/** Screws evenly round a circle, in the middle of the wood that they go into. */
export interface ScrewCircle {
  readonly count: number
  readonly circleDiameter: Mm
  readonly shankDiameter: Mm
}

/** What is left on beside a line while sawing, for the lathe to take, radially: common practice, no source. */
export const sawAllowance = (units: Units): Mm => (units === 'in' ? inches(1 / 8) : mm(3))

/** A hole that a saw blade enters by: common practice, no source. */
export const entryHoleDiameter = (units: Units): Mm => (units === 'in' ? inches(3 / 8) : mm(10))

/** A No. 4 wood screw: basic diameter 0.060 + 4 × 0.013 in (ASME B18.6.1), head at most 0.225 in. */
const SHANK = mm(2.845)
const HEAD = mm(5.715)

/** One for each so much of the screw circle, three at least: common practice, no source. */
const CIRCLE_PER_SCREW = 60
const FEWEST_SCREWS = 3
const MOST_SCREWS = 12

/**
 * Where the screws of a split inner ring go, by the bearing's own figures.
 *
 * @returns undefined where the ring is of one piece, or the wood between bore and groove has no room for the heads with a
 *   shank's thickness on both sides
 */
export function splitScrewsOf({ resolved, innerRing }: RingPair): ScrewCircle | undefined {
  if (resolved.split !== 'inner-ring' || !(innerRing.wall >= HEAD + 2 * SHANK)) return undefined
  return screwsRound(mm((innerRing.boreDiameter + innerRing.grooveBottomDiameter) / 2))
}

/**
 * Where the screws go that hold each cheek to the outer ring.
 *
 * @returns undefined where there are no cheeks, or the wood behind the track has no room for a shank with its own thickness
 *   on both sides (the heads have the cheek's face)
 */
export function cheekScrewsOf({
  cheeks,
  outerRing,
}: Pick<RingPair, 'outerRing'> & { readonly cheeks?: object }): ScrewCircle | undefined {
  if (cheeks === undefined || !(outerRing.wall >= 3 * SHANK)) return undefined
  return screwsRound(mm((outerRing.grooveBottomDiameter + outerRing.outsideDiameter) / 2))
}

function screwsRound(circleDiameter: Mm): ScrewCircle {
  const wished = Math.ceil((Math.PI * circleDiameter) / CIRCLE_PER_SCREW)
  return {
    count: Math.min(MOST_SCREWS, Math.max(FEWEST_SCREWS, wished)),
    circleDiameter,
    shankDiameter: SHANK,
  }
}

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
