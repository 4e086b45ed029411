import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import type { Scale } from '#src/drawings/scales.ts'
import { circle, line, placed } from '#src/drawings/shapes.ts'
import { grooveWide } from '#src/words/drawing.ts'
import { fittedText, levelLine, TEXT_HEIGHT, uprightExtension } from './annotations.ts'
import { type PlateCrop, plateSection } from './plates.ts'
import { labelRoom, type Room, type SideLabel, sideLabels } from './side-labels.ts'
import type { Deviations } from './size-columns.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Wood shown under a groove and beside it, in ball diameters. */
const UNDER_SHOWN = 0.35
const SIDE_SHOWN = 0.25
/** Labels stand so far beside the section. */
const LABEL_BESIDE = 6
/** Points that the arrows touch: the ball below its middle, the arc part of the way to its edge. */
const BALL_TIP = -60
const ARC_TIP = 0.6

function cropOf({ plate, pitchRadius, resolved }: ThrustBearing): PlateCrop {
  const beside = Math.max(plate.grooveWidth, resolved.ballDiameter) / 2 + SIDE_SHOWN * resolved.ballDiameter
  return {
    low: Math.max(plate.boreDiameter / 2, pitchRadius - beside),
    high: Math.min(plate.outsideDiameter / 2, pitchRadius + beside),
    thickness: Math.min(plate.thickness, plate.grooveDepth + UNDER_SHOWN * resolved.ballDiameter),
  }
}

const halfOf = (bearing: ThrustBearing): number => bearing.plateGap / 2 + cropOf(bearing).thickness

/** The labels beside the section and the points of their leaders, in the bearing's millimetres: the arc above, the ball below. */
function labelsOf(bearing: ThrustBearing, deviations: Deviations, say: SizeText): readonly SideLabel[] {
  const { plate, plateGap, pitchRadius, resolved } = bearing
  const { groove, ballDiameter } = resolved
  const symbol = DIMENSION_SYMBOLS
  const up = ARC_TIP * grooveHalfWidth(groove)
  const onArc = at(
    plateGap / 2 + groove.depth - groove.radius + Math.sqrt((groove.radius - up) * (groove.radius + up)),
    pitchRadius + up,
  )
  const radius = `${symbol['plates.grooveRadius']} R${say(plate.grooveRadius)}${deviations['plates.grooveRadius'] ?? ''}`
  return [
    { words: radius, below: grooveWide(`${symbol['plates.grooveWidth']} ${say(plate.grooveWidth)}`), tip: onArc },
    { words: `Dw SØ${say(ballDiameter)}`, tip: polar(at(0, pitchRadius), ballDiameter / 2, BALL_TIP) },
  ]
}

/** Above and below the section: a dimension line and its text. */
const LINE_BESIDE = 6
/** A text wider than its extension lines are apart stands past their ends. */
const CLEAR_OF_LINES = 2
const LINES_NEED = 2 * (LINE_BESIDE + TEXT_HEIGHT + CLEAR_OF_LINES)

/** By how much the grooves' surroundings may be enlarged to fit a room with their labels. */
export function mostOfPlateDetail(bearing: ThrustBearing, deviations: Deviations, say: SizeText, room: Room): number {
  const { low, high } = cropOf(bearing)
  const beside = LABEL_BESIDE + labelRoom(labelsOf(bearing, deviations, say), LABEL_BESIDE, room)
  return Math.min((room.width - beside) / (2 * halfOf(bearing)), (room.height - LINES_NEED) / (high - low))
}

/** Both grooves and the ball, enlarged: round the origin, on paper. */
export function plateDetail(
  bearing: ThrustBearing,
  deviations: Deviations,
  say: SizeText,
  { factor }: Pick<Scale, 'factor'>,
  room: Room,
): readonly Shape[] {
  const { pitchRadius, resolved } = bearing
  const crop = cropOf(bearing)
  const middle = (crop.low + crop.high) / 2
  const shown = [
    ...([-1, 1] as const).flatMap((side) => plateSection(bearing, side, HATCH_SPACING / factor, crop)),
    circle('outline', at(0, pitchRadius), resolved.ballDiameter / 2),
    ...centreLines(bearing, crop, PAST_VIEW / factor),
  ]
  const labels = labelsOf(bearing, deviations, say)
  const rightRoom = labelRoom(labels, LABEL_BESIDE, room)
  const onPaper = ({ x, y }: Point): Point => at(x * factor, (y - middle) * factor)
  const beside = halfOf(bearing) * factor + LABEL_BESIDE
  const all = [
    ...placed(shown, factor, at(0, -middle * factor)),
    ...alongAxis(bearing, say, factor),
    ...sideLabels(
      labels.map((label) => ({ ...label, tip: onPaper(label.tip) })),
      beside,
      rightRoom,
      room,
    ),
  ]
  return placed(all, 1, at(-(LABEL_BESIDE + rightRoom) / 2, 0))
}

/** Centre lines of the ball run past it, and past a view that ends sooner only so far, on paper: above it a text stands. */
const PAST_BALL = 0.58
const PAST_VIEW = 3

function centreLines(
  { pitchRadius, resolved }: ThrustBearing,
  { low, high }: PlateCrop,
  past: number,
): readonly Shape[] {
  const reach = PAST_BALL * resolved.ballDiameter
  const [from, to] = [Math.max(pitchRadius - reach, low - past), Math.min(pitchRadius + reach, high + past)]
  return [line('centre', at(-reach, pitchRadius), at(reach, pitchRadius)), line('centre', at(0, from), at(0, to))]
}

/** The space between the plates above the section, the depth of a groove below it. The space follows from other sizes. */
function alongAxis(bearing: ThrustBearing, say: SizeText, factor: number): readonly Shape[] {
  const { plate, plateGap, pitchRadius } = bearing
  const { low, high } = cropOf(bearing)
  const half = ((high - low) / 2) * factor
  const face = (plateGap / 2) * factor
  const bottom = face + plate.grooveDepth * factor
  const [above, below] = [half + LINE_BESIDE, -half - LINE_BESIDE]
  const room = 2 * halfOf(bearing) * factor
  return [
    uprightExtension(-face, half, above),
    uprightExtension(face, half, above),
    ...levelLine(above, -face, face),
    fittedText(`(${DIMENSION_SYMBOLS.plateGap} ${say(plateGap)})`, at(0, above + CLEAR_OF_LINES), room, 'middle'),
    uprightExtension(face, -half, below),
    uprightExtension(bottom, (pitchRadius - (low + high) / 2) * factor, below),
    ...levelLine(below, face, bottom),
    fittedText(
      `${DIMENSION_SYMBOLS['plates.grooveDepth']} ${say(plate.grooveDepth)}`,
      at((face + bottom) / 2, below - CLEAR_OF_LINES - TEXT_HEIGHT),
      room,
      'middle',
    ),
  ]
}
