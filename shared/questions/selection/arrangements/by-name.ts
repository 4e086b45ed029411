import type { BearingByArrangement, DesignInput } from '#shared/bearing/arrangements.ts'
import { nameOf } from '#shared/bearing/arrangements.ts'
import type { SelectionOf } from '#shared/questions/selection/ball-place.ts'
import { inRings } from './ring.ts'
import { BETWEEN_PLATES } from './thrust.ts'

/** The arrangements that this question serves: a new one is its file, and its line here. */
const SELECTIONS = {
  radial: inRings('grooveBottomDiameter', 'innerGrooveBottomDiameter'),
  thrust: BETWEEN_PLATES,
  roller: inRings('trackDiameter', 'innerTrackDiameter'),
} as const satisfies { readonly [Name in keyof BearingByArrangement]?: SelectionOf<BearingByArrangement[Name]> }

type Served = keyof typeof SELECTIONS
export type SelectionBearing = BearingByArrangement[Served]
export const SERVED = Object.keys(SELECTIONS) as readonly Served[]

/**
 * The name of an arrangement that is served.
 *
 * @throws RangeError for any other: the question is refused before
 */
export function servedName(design: Pick<DesignInput, 'arrangement'>): Served {
  const name = SERVED.find((each) => each === nameOf(design))
  if (name === undefined) throw new RangeError(`arrangement must be one of ${SERVED.join(', ')}, got ${nameOf(design)}`)
  return name
}

/** The part of this question that differs by arrangement. */
export const arrangementOf = (design: DesignInput): SelectionOf<SelectionBearing> =>
  SELECTIONS[servedName(design)] as SelectionOf<SelectionBearing>
