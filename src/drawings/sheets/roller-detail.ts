import type { RollerBearing } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { clipped } from '#src/drawings/clip.ts'
import { at, type Point, type Shape } from '#src/drawings/model.ts'
import type { Scale } from '#src/drawings/scales.ts'
import { line, placed } from '#src/drawings/shapes.ts'
import { ROLLER_PLAY } from '#src/words/drawing.ts'
import { fittedText, levelExtension, TEXT_HEIGHT, uprightLine } from './annotations.ts'
import { cheekSections, overallHalf, ringCuts, rollingElement } from './half-section.ts'
import { breakLine, ringSection } from './ring-section.ts'
import { labelRoom, type Room, type SideLabel, sideLabels } from './side-labels.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Shown of a roller from its end, and of the wood behind a track, in roller diameters. */
const ROLLER_SHOWN = 0.8
const BACK_SHOWN = 0.4
/** The dimension line of the diameter stands so far beside the section, labels so much farther. */
const LINE_BESIDE = 4.5
const LABEL_BESIDE = 8.5
/** Room for that line on the left, with its text upright beside it. */
const LEFT_NEEDS = LINE_BESIDE + 2 + TEXT_HEIGHT + 0.5
/** Points that the arrows of length and play touch: so far from a roller's end, in roller diameters or its half length. */
const TIP_FROM_END = 0.4

/** The part of the section that is shown, in the bearing's millimetres, and which of its edges are cuts. */
type Crop = {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly cut: { readonly left: boolean; readonly top: boolean; readonly bottom: boolean }
}

/** Around the end of a roller, or around all of a short one. */
function cropOf(bearing: RollerBearing): Crop {
  const { outerRing: outer, innerRing: inner, resolved } = bearing
  const half = overallHalf(bearing)
  const shown = BACK_SHOWN * resolved.ballDiameter
  const roller = ROLLER_SHOWN * resolved.ballDiameter
  const isLong = bearing.resolved.rollerLength > roller
  return {
    left: isLong ? bearing.resolved.rollerLength / 2 - roller : -half,
    right: half,
    top: outer.grooveBottomDiameter / 2 + Math.min(outer.wall, shown),
    bottom: inner.grooveBottomDiameter / 2 - Math.min(inner.wall, shown),
    cut: { left: isLong, top: outer.wall > shown, bottom: inner.wall > shown },
  }
}

/** The part that the half section marks as enlarged: its middle along the axis, and its reach. */
export function rollerEnd(bearing: RollerBearing): { readonly along: number; readonly reach: number } {
  const { left, right, cut } = cropOf(bearing)
  const halfShown = cut.left ? (right - left) / 2 : bearing.resolved.rollerLength / 2
  return { along: cut.left ? (left + right) / 2 : 0, reach: Math.hypot(bearing.resolved.ballDiameter / 2, halfShown) }
}

/** The labels beside the section and the points of their leaders, in the bearing's millimetres. */
function labelsOf(bearing: RollerBearing, say: SizeText): readonly SideLabel[] {
  const { innerRing, outerRing, cheeks, resolved, pitchRadius, radialInternalClearance, axialPlay } = bearing
  const length = resolved.rollerLength
  const inside = length / 2 - TIP_FROM_END * Math.min(resolved.ballDiameter, length / 2)
  const symbol = DIMENSION_SYMBOLS
  return [
    {
      words: `${symbol['cheeks.thickness']} ${say(cheeks.thickness)}`,
      tip: at((outerRing.width + cheeks.thickness) / 2, outerRing.grooveBottomDiameter / 2),
    },
    { words: `${symbol.rollerLength} ${say(length)}`, tip: at(inside, pitchRadius + resolved.ballDiameter / 4) },
    {
      words: `${symbol.axialPlay} ${say(axialPlay)}, ${ROLLER_PLAY.axial}`,
      tip: at((length + outerRing.width) / 4, pitchRadius - resolved.ballDiameter / 4),
    },
    {
      words: `${symbol.radialInternalClearance} ${say(radialInternalClearance)}, ${ROLLER_PLAY.radial}`,
      tip: at(inside, innerRing.grooveBottomDiameter / 2),
    },
  ]
}

/** How much of a room's width the labels take; half of it at the most. */
function rightRoomOf(bearing: RollerBearing, say: SizeText, room: Room): number {
  return labelRoom(labelsOf(bearing, say), LABEL_BESIDE, room)
}

/** By how much the end of a roller may be enlarged to fit a room with its labels. */
export function mostOfRollerDetail(bearing: RollerBearing, say: SizeText, room: Room): number {
  const { left, right, top, bottom } = cropOf(bearing)
  const beside = LEFT_NEEDS + LABEL_BESIDE + rightRoomOf(bearing, say, room)
  return Math.min((room.width - beside) / (right - left), room.height / (top - bottom))
}

/** The end of a roller between tracks and cheek, enlarged, with what leaves it free: round the origin, on paper. */
export function rollerDetail(
  bearing: RollerBearing,
  say: SizeText,
  { factor }: Pick<Scale, 'factor'>,
  room: Room,
): readonly Shape[] {
  const crop = cropOf(bearing)
  const middle = at((crop.left + crop.right) / 2, (crop.top + crop.bottom) / 2)
  const onPaper = ({ x, y }: Point): Point => at((x - middle.x) * factor, (y - middle.y) * factor)
  const half = ((crop.right - crop.left) / 2) * factor
  const rightRoom = rightRoomOf(bearing, say, room)
  const shown = [...clipped(section(bearing, HATCH_SPACING / factor), windowOf(crop)), ...breaks(bearing, crop)]
  const labels = labelsOf(bearing, say).map(({ words, tip }) => ({ words, tip: onPaper(tip) }))
  const all = [
    ...placed(shown, factor, at(-middle.x * factor, -middle.y * factor)),
    ...diameter(bearing, say, onPaper, { half, room }),
    ...sideLabels(labels, half + LABEL_BESIDE, rightRoom, room),
  ]
  return placed(all, 1, at((LEFT_NEEDS - LABEL_BESIDE - rightRoom) / 2, 0))
}

function section(bearing: RollerBearing, hatchSpacing: number): readonly Shape[] {
  const half = overallHalf(bearing)
  return [
    ...ringCuts(bearing).flatMap((cut) => ringSection(cut, hatchSpacing)),
    ...cheekSections(bearing, hatchSpacing),
    ...rollingElement(bearing),
    line('centre', at(-half, bearing.pitchRadius), at(half, bearing.pitchRadius)),
  ]
}

/** Open where the edge is the bearing's own: no rounding cuts an outline off. */
const windowOf = ({ left, top, bottom, cut }: Crop) => ({
  left: cut.left ? left : Number.NEGATIVE_INFINITY,
  right: Number.POSITIVE_INFINITY,
  bottom: cut.bottom ? bottom : Number.NEGATIVE_INFINITY,
  top: cut.top ? top : Number.POSITIVE_INFINITY,
})

/** Break lines where rings, cheeks and roller continue past the view. */
function breaks(bearing: RollerBearing, { left, right, top, bottom, cut }: Crop): readonly Shape[] {
  const { outerRing: outer, innerRing: inner, cheeks, pitchRadius, resolved } = bearing
  const [side, end] = [outer.width / 2, inner.width / 2]
  const level = (from: number, to: number, y: number): Shape => breakLine(at(from, y), at(to, y))
  const upright = (from: number, to: number): Shape => breakLine(at(left, from), at(left, to))
  const [outerFrom, innerFrom] = cut.left ? [left, left] : [-side, -end]
  const cheekBreaks = (y: number): readonly Shape[] => [
    level(side, right, y),
    ...(cut.left ? [] : [level(left, -side, y)]),
  ]
  const ballRadius = resolved.ballDiameter / 2
  return [
    ...(cut.top ? [level(outerFrom, side, top), ...cheekBreaks(top)] : []),
    ...(cut.bottom ? [level(innerFrom, end, bottom)] : []),
    ...(cut.bottom && cheeks !== undefined && cheeks.holeDiameter / 2 < bottom ? cheekBreaks(bottom) : []),
    ...(cut.left
      ? [
          upright(outer.grooveBottomDiameter / 2, top),
          upright(pitchRadius - ballRadius, pitchRadius + ballRadius),
          upright(bottom, inner.grooveBottomDiameter / 2),
        ]
      : []),
  ]
}

type OnPaper = (point: Point) => Point

/** On the left, how thick a roller is. */
function diameter(
  bearing: RollerBearing,
  say: SizeText,
  onPaper: OnPaper,
  { half, room }: { readonly half: number; readonly room: Room },
): readonly Shape[] {
  const { resolved, pitchRadius } = bearing
  const [left, low] = [-bearing.resolved.rollerLength / 2, pitchRadius - resolved.ballDiameter / 2]
  const corner = onPaper(at(left, low))
  const high = onPaper(at(left, low + resolved.ballDiameter)).y
  const x = -half - LINE_BESIDE
  const from = Math.max(corner.x, -half)
  const words = `Dw Ø${say(resolved.ballDiameter)}`
  return [
    levelExtension(corner.y, from, x),
    levelExtension(high, from, x),
    ...uprightLine(x, corner.y, high),
    fittedText(words, at(x - 2, (corner.y + high) / 2), room.height / 2, 'middle', { turned: 90 }),
  ]
}
