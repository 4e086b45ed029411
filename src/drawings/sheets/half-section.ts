import type { Bearing } from '#shared/bearing/bearing.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { mm } from '#shared/units/length.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { circle, line } from '#src/drawings/shapes.ts'
import { type RingCut, ringSection } from './ring-section.ts'

/** Both rings as cut along the axis. */
export function ringCuts(bearing: Bearing): readonly [outer: RingCut, inner: RingCut] {
  const { outerRing: outer, innerRing: inner, settled, assembly } = bearing
  const halfWidth = mm(settled.width / 2)
  return [
    {
      outward: 1,
      landRadius: mm(outer.landDiameter / 2),
      backRadius: mm(outer.outsideDiameter / 2),
      halfWidth,
      groove: settled.outerGroove,
      split: assembly.split === 'outer-ring',
    },
    {
      outward: -1,
      landRadius: mm(inner.landDiameter / 2),
      backRadius: mm(inner.boreDiameter / 2),
      halfWidth,
      groove: settled.innerGroove,
      split: assembly.split === 'inner-ring',
    },
  ]
}

/**
 * The bearing from the side, its upper half cut open, full size, the middle of its axis at the origin. Balls are not
 * hatched (ISO 128-3: rolling elements are not cut).
 */
export function halfSection(bearing: Bearing, hatchSpacing: number, overhang: number): readonly Shape[] {
  const { pitchRadius, settled, outerRing } = bearing
  const half = settled.width / 2
  const ballRadius = settled.ballDiameter / 2
  const outside = outerRing.outsideDiameter / 2
  return [
    ...ringCuts(bearing).flatMap((cut) => ringSection(cut, hatchSpacing)),
    circle('outline', at(0, pitchRadius), ballRadius),
    ...edgesBehindTheBall(bearing),
    line('outline', at(-half, -outside), at(-half, outside)),
    line('outline', at(half, -outside), at(half, outside)),
    line('outline', at(-half, -outside), at(half, -outside)),
    line('centre', at(-half - overhang, 0), at(half + overhang, 0)),
    line('centre', at(-ballRadius * 1.2, pitchRadius), at(ballRadius * 1.2, pitchRadius)),
    line('centre', at(0, pitchRadius - ballRadius * 1.2), at(0, pitchRadius + ballRadius * 1.2)),
  ]
}

/** The edges of the outer groove on the far side, where neither the ball nor the inner ring hides them. */
function edgesBehindTheBall({ outerRing, innerRing, pitchRadius, settled }: Bearing): readonly Shape[] {
  const wide = grooveHalfWidth(settled.outerGroove)
  if (!(wide < settled.width / 2)) return []
  const ballRadius = settled.ballDiameter / 2
  const hidden = wide < ballRadius ? Math.sqrt((ballRadius - wide) * (ballRadius + wide)) : 0
  const parts = [
    [innerRing.landDiameter / 2, pitchRadius - hidden],
    [pitchRadius + hidden, outerRing.landDiameter / 2],
  ] as const
  return parts.flatMap(([from, to]) =>
    to > from ? [-wide, wide].map((x) => line('outline', at(x, from), at(x, to))) : [],
  )
}
