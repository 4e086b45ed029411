import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { type Scale, scaleUpTo } from '#src/drawings/scales.ts'
import { circle, cross, placed } from '#src/drawings/shapes.ts'
import { levelLine } from './annotations.ts'
import { type PlateCrop, plateSection } from './plates.ts'
import { labelRoom, type Room, type SideLabel, sideLabels } from './side-labels.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Wood shown under a groove and beside it, in ball diameters. */
const UNDER_SHOWN = 0.35
const SIDE_SHOWN = 0.25
/** Labels stand so far beside the section. */
const LABEL_BESIDE = 6
/** Where the arrows touch: the ball below its middle, the arc part of the way to its edge. */
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

/** Where the space between the plates is measured: above the ball. */
function gapLine(bearing: ThrustBearing): number {
  const top = bearing.pitchRadius + bearing.resolved.ballDiameter / 2
  return (top + Math.max(top, cropOf(bearing).high)) / 2
}

const halfOf = (bearing: ThrustBearing): number => bearing.plateGap / 2 + cropOf(bearing).thickness

/** What stands beside the section, and where it points to, in the bearing's millimetres. */
function labelsOf(bearing: ThrustBearing, say: SizeText): readonly SideLabel[] {
  const { plate, plateGap, pitchRadius, resolved } = bearing
  const { groove, ballDiameter } = resolved
  const symbol = DIMENSION_SYMBOLS
  const up = ARC_TIP * grooveHalfWidth(groove)
  const onArc = at(
    plateGap / 2 + groove.depth - groove.radius + Math.sqrt((groove.radius - up) * (groove.radius + up)),
    pitchRadius + up,
  )
  return [
    { words: `${symbol.plateGap} ${say(plateGap)}`, tip: at(plateGap / 2, gapLine(bearing)) },
    { words: `${symbol['plates.grooveRadius']} R${say(plate.grooveRadius)}`, tip: onArc },
    {
      words: `${symbol['plates.grooveDepth']} ${say(plate.grooveDepth)}`,
      tip: at(plateGap / 2 + plate.grooveDepth, pitchRadius),
    },
    { words: `Dw SØ${say(ballDiameter)}`, tip: polar(at(0, pitchRadius), ballDiameter / 2, BALL_TIP) },
  ]
}

function rightRoomOf(bearing: ThrustBearing, say: SizeText, room: Room): number {
  const words = labelsOf(bearing, say).map((label) => label.words)
  return labelRoom(words, LABEL_BESIDE, room)
}

/** The scale at which the grooves' surroundings fit a room with their labels. */
export function plateDetailScale(bearing: ThrustBearing, say: SizeText, room: Room): Scale {
  const { low, high } = cropOf(bearing)
  const beside = LABEL_BESIDE + rightRoomOf(bearing, say, room)
  return scaleUpTo(Math.min((room.width - beside) / (2 * halfOf(bearing)), room.height / (high - low)))
}

/** Both grooves and the ball, enlarged: round the origin, on paper. */
export function plateDetail(bearing: ThrustBearing, say: SizeText, { factor }: Scale, room: Room): readonly Shape[] {
  const { pitchRadius, resolved } = bearing
  const crop = cropOf(bearing)
  const middle = (crop.low + crop.high) / 2
  const shown = [
    ...([-1, 1] as const).flatMap((side) => plateSection(bearing, side, HATCH_SPACING / factor, crop)),
    circle('outline', at(0, pitchRadius), resolved.ballDiameter / 2),
    ...cross('centre', at(0, pitchRadius), resolved.ballDiameter * 0.58),
  ]
  const [rightRoom, gap] = [rightRoomOf(bearing, say, room), (bearing.plateGap / 2) * factor]
  const onPaper = ({ x, y }: Point): Point => at(x * factor, (y - middle) * factor)
  const labels = labelsOf(bearing, say).map(({ words, tip }) => ({ words, tip: onPaper(tip) }))
  const beside = halfOf(bearing) * factor + LABEL_BESIDE
  const between = levelLine((gapLine(bearing) - middle) * factor, -gap, gap)
  const all = [
    ...placed(shown, factor, at(0, -middle * factor)),
    ...between,
    ...sideLabels(labels, beside, rightRoom, room),
  ]
  return placed(all, 1, at(-(LABEL_BESIDE + rightRoom) / 2, 0))
}
