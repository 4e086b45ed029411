import { type Mm, mm } from '#shared/units/length.ts'
import type { Blank } from './blanks.ts'
import type { ResolvedMaking } from './defaults.ts'

/** Whether the inner ring comes out of what is sawn from the outer one. */
export interface Nesting {
  readonly nests: boolean
  /** Diameter of the core once the saw has taken its kerf. 0 where nothing is sawn out. */
  readonly core: Mm
  /** By how much the core is too small, in diameter: below 0 so much is to spare. */
  readonly shortBy: Mm
  /** Turning allowance, on both rings alike, up to which it does. Absent where not even none will do. */
  readonly largestAllowance?: Mm
  /** Space between the finished lands at which it would, with these allowances. */
  readonly landGapNeeded: Mm
  /** Thickness that the outer blank must have for it: the core of a ring in halves must be resawn. */
  readonly thicknessNeeded: Mm
}

/**
 * The core of the outer blank is its rough hole less a kerf all round; the inner blank must not be wider. As both circles
 * lie a turning allowance from the lands as they are turned, that is so where these are at least two allowances and a kerf
 * apart.
 *
 * @param landGap between the finished lands, rings concentric [mm]
 */
export function nestingOf(
  outer: Blank,
  inner: Blank,
  landGap: Mm,
  { allowances: { sawKerf, turning } }: ResolvedMaking,
): Nesting {
  const core = outer.roughHole === undefined ? 0 : Math.max(0, outer.roughHole - 2 * sawKerf)
  const gap = (outer.cutHole - inner.cutCircle) / 2
  const largest = (gap - sawKerf) / 2
  const thicknessNeeded = inner.pieces * inner.thickness + (inner.pieces - 1) * sawKerf
  return {
    nests: inner.roughCircle <= core && outer.pieces * outer.thickness >= thicknessNeeded,
    core: mm(core),
    shortBy: mm(inner.roughCircle - core),
    ...(largest >= 0 ? { largestAllowance: mm(largest) } : {}),
    landGapNeeded: mm(Math.max(0, 2 * turning + sawKerf - (gap - landGap))),
    thicknessNeeded: mm(thicknessNeeded),
  }
}
