import type { CagedBearing, RollerBearing } from '#shared/bearing/arrangements.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { grooveHalfWidth, isPlain, PLAIN_TRACK } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Point, type Shape } from '#src/drawings/model.ts'
import { box, circle, line, placed } from '#src/drawings/shapes.ts'
import { hatched } from './hatching.ts'
import { breakLine, type RingCut, ringSection } from './ring-section.ts'

/** Two rings as they are drawn, with what else there is of a bearing beside the balls. */
export interface DrawnRings extends RingPair {
  readonly cheeks?: RollerBearing['cheeks']
  readonly cage?: CagedBearing['cage']
}

/** Both rings as cut along the axis. */
export function ringCuts(bearing: DrawnRings): readonly [outer: RingCut, inner: RingCut] {
  const { outerRing: outer, innerRing: inner, resolved } = bearing
  return [
    {
      outward: 1,
      landRadius: mm(outer.landDiameter / 2),
      backRadius: mm(outer.outsideDiameter / 2),
      halfWidth: mm(outer.width / 2),
      groove: resolved.outerGroove,
      split: resolved.split === 'outer-ring',
    },
    {
      outward: -1,
      landRadius: mm(inner.landDiameter / 2),
      backRadius: mm(inner.boreDiameter / 2),
      halfWidth: mm(inner.width / 2),
      groove: resolved.innerGroove,
      split: resolved.split === 'inner-ring',
    },
  ]
}

/** Half of the whole, cheeks and all, along the axis. */
export const overallHalf = ({ outerRing, cheeks }: DrawnRings): Mm => mm(outerRing.width / 2 + (cheeks?.thickness ?? 0))

/** The cheeks that keep rollers in, cut along the axis. */
export function cheekSections({ outerRing, cheeks }: DrawnRings, hatchSpacing: number): readonly Shape[] {
  if (cheeks === undefined) return []
  const cut: RingCut = {
    outward: 1,
    landRadius: mm(cheeks.holeDiameter / 2),
    backRadius: mm(cheeks.outsideDiameter / 2),
    halfWidth: mm(cheeks.thickness / 2),
    groove: PLAIN_TRACK,
    split: false,
  }
  const aside = (outerRing.width + cheeks.thickness) / 2
  return [-aside, aside].flatMap((x) => placed(ringSection(cut, hatchSpacing), 1, at(x, 0)))
}

/** Beside the finest hatching of the rings, which it lies between. */
const CAGE_HATCH = 0.6

/** The cage where a pocket is cut through its middle: the wood on both sides of it, as far from the middle as is shown. */
export function cageSections(
  { cage }: DrawnRings,
  hatchSpacing: number,
  shown = Number.POSITIVE_INFINITY,
): readonly Shape[] {
  if (cage === undefined) return []
  const [near, far] = [cage.pocketDiameter / 2, Math.min(cage.width / 2, shown)]
  if (!(far > near)) return []
  const [low, high] = [cage.boreDiameter / 2, cage.outsideDiameter / 2]
  const edge = far < cage.width / 2 ? breakLine : (from: Point, to: Point): Shape => line('outline', from, to)
  return ([-1, 1] as const).flatMap((side) => [
    {
      role: 'outline',
      kind: 'polyline',
      points: [at(side * far, low), at(side * near, low), at(side * near, high), at(side * far, high)],
    },
    edge(at(side * far, low), at(side * far, high)),
    ...hatched(
      { left: Math.min(side * near, side * far), right: Math.max(side * near, side * far), low, high },
      1,
      CAGE_HATCH * hatchSpacing,
    ),
  ])
}

/** A ball or a roller, which is not cut. */
export function rollingElement({ pitchRadius, resolved }: DrawnRings): readonly Shape[] {
  const { ballDiameter, input } = resolved
  const { length } = input.balls
  if (length === undefined) return [circle('outline', at(0, pitchRadius), ballDiameter / 2)]
  return [box('outline', -length / 2, pitchRadius - ballDiameter / 2, length / 2, pitchRadius + ballDiameter / 2)]
}

/**
 * The bearing from the side, its upper half cut open, full size, the middle of its axis at the origin. Balls are not
 * hatched (ISO 128-3: rolling elements are not cut).
 */
export function halfSection(bearing: DrawnRings, hatchSpacing: number, overhang: number): readonly Shape[] {
  const { pitchRadius, resolved, outerRing } = bearing
  const half = overallHalf(bearing)
  const ballRadius = resolved.ballDiameter / 2
  const elementHalf = (resolved.input.balls.length ?? resolved.ballDiameter) / 2
  const outside = outerRing.outsideDiameter / 2
  return [
    ...ringCuts(bearing).flatMap((cut) => ringSection(cut, hatchSpacing)),
    ...cheekSections(bearing, hatchSpacing),
    ...cageSections(bearing, hatchSpacing),
    ...rollingElement(bearing),
    ...edgesBehindTheBall(bearing),
    line('outline', at(-half, -outside), at(-half, outside)),
    line('outline', at(half, -outside), at(half, outside)),
    line('outline', at(-half, -outside), at(half, -outside)),
    ...seams(bearing),
    line('centre', at(-half - overhang, 0), at(half + overhang, 0)),
    line('centre', at(-elementHalf * 1.2, pitchRadius), at(elementHalf * 1.2, pitchRadius)),
    line('centre', at(0, pitchRadius - ballRadius * 1.2), at(0, pitchRadius + ballRadius * 1.2)),
  ]
}

/**
 * Where the cheeks lie against the ring: on the half that is not cut, and behind the cut half, where their holes show it. There
 * the inner ring ends too, which is narrower than the space between them.
 */
function seams({ outerRing, innerRing, cheeks }: DrawnRings): readonly Shape[] {
  if (cheeks === undefined) return []
  return ([-1, 1] as const).flatMap((side) => {
    const [seam, end] = [(side * outerRing.width) / 2, (side * innerRing.width) / 2]
    return [
      line('outline', at(seam, -outerRing.outsideDiameter / 2), at(seam, cheeks.holeDiameter / 2)),
      line('outline', at(end, 0), at(end, innerRing.boreDiameter / 2)),
    ]
  })
}

/** The edges of the outer groove on the far side, where neither the ball nor the inner ring hides them; a cage would. */
function edgesBehindTheBall({ outerRing, innerRing, pitchRadius, resolved, cage }: DrawnRings): readonly Shape[] {
  const wide = grooveHalfWidth(resolved.outerGroove)
  if (cage !== undefined || isPlain(resolved.outerGroove) || !(wide < resolved.width / 2)) return []
  const ballRadius = resolved.ballDiameter / 2
  const hidden = wide < ballRadius ? Math.sqrt((ballRadius - wide) * (ballRadius + wide)) : 0
  const parts = [
    [innerRing.landDiameter / 2, pitchRadius - hidden],
    [pitchRadius + hidden, outerRing.landDiameter / 2],
  ] as const
  return parts.flatMap(([from, to]) =>
    to > from ? [-wide, wide].map((x) => line('outline', at(x, from), at(x, to))) : [],
  )
}
