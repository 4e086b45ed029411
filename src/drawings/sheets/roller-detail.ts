import type { Bearing } from '#shared/bearing/bearing.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { mm } from '#shared/units/length.ts'
import { at, type Point, type Shape } from '#src/drawings/model.ts'
import { type Scale, scaleUpTo } from '#src/drawings/scales.ts'
import { line, placed } from '#src/drawings/shapes.ts'
import { textWidth } from '#src/drawings/text-width.ts'
import { fittedText, leader, levelExtension, levelLine, stacked, TEXT_HEIGHT, uprightLine } from './annotations.ts'
import { cropped, labelBeside, type Room } from './groove-detail.ts'
import { cheekSections, overallHalf, ringCuts, rollingElement } from './half-section.ts'
import { ringSection } from './ring-section.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Wood shown behind a track, in roller diameters. */
const BACK_SHOWN = 0.5
/** The dimension line of the diameter stands so far beside the section, labels so much farther. */
const LINE_BESIDE = 4.5
const LABEL_BESIDE = 8.5
/** What that line takes on the left, its text upright beside it. */
const LEFT_NEEDS = LINE_BESIDE + 2 + TEXT_HEIGHT + 0.5
const LABELS_APART = 2 * TEXT_HEIGHT
/** Where the arrow of the play touches, in half lengths of the roller. */
const PLAY_TIP = 0.6

type Crop = { readonly half: number; readonly top: number; readonly bottom: number }

/** Around a roller, cheeks and all: how far the enlarged view reaches, in the bearing's millimetres. */
function cropOf(bearing: Bearing): Crop {
  const { outerRing: outer, innerRing: inner, settled } = bearing
  const shown = BACK_SHOWN * settled.ballDiameter
  return {
    half: overallHalf(bearing),
    top: outer.grooveBottomDiameter / 2 + Math.min(outer.wall, shown),
    bottom: inner.grooveBottomDiameter / 2 - Math.min(inner.wall, shown),
  }
}

/** What stands beside the section, and where it points to, in the bearing's millimetres. */
function labelsOf(bearing: Bearing, say: SizeText): readonly { readonly words: string; readonly tip: Point }[] {
  const {
    innerRing: inner,
    outerRing: outer,
    cheeks,
    settled,
    pitchRadius,
    radialInternalClearance,
    axialPlay,
  } = bearing
  const half = (settled.input.balls.length ?? 0) / 2
  const symbol = DIMENSION_SYMBOLS
  return [
    ...(cheeks === undefined
      ? []
      : [
          {
            words: `${symbol.cheekThickness} ${say(cheeks.thickness)}`,
            tip: at((outer.width + cheeks.thickness) / 2, outer.grooveBottomDiameter / 2),
          },
        ]),
    {
      words: `ends free: ${say(axialPlay)}`,
      tip: at((half + outer.width / 2) / 2, pitchRadius),
    },
    {
      words: `${symbol.radialInternalClearance} ${say(radialInternalClearance)}, across`,
      tip: at(PLAY_TIP * half, inner.grooveBottomDiameter / 2),
    },
  ]
}

/** How much of a room's width the labels take; half of it at the most. */
function labelRoom(bearing: Bearing, say: SizeText, room: Room): number {
  const widest = Math.max(...labelsOf(bearing, say).map(({ words }) => textWidth(words, TEXT_HEIGHT)))
  return Math.min(room.width / 2 - LABEL_BESIDE, 2 + widest)
}

/** The scale at which a roller's surroundings fit a room with their labels. */
export function rollerDetailScale(bearing: Bearing, say: SizeText, room: Room): Scale {
  const { half, top, bottom } = cropOf(bearing)
  const beside = LEFT_NEEDS + LABEL_BESIDE + labelRoom(bearing, say, room)
  return scaleUpTo(Math.min((room.width - beside) / (2 * half), room.height / (top - bottom)))
}

/** A roller between its tracks and cheeks, enlarged: round the origin, on paper. */
export function rollerDetail(bearing: Bearing, say: SizeText, { factor }: Scale, room: Room): readonly Shape[] {
  const { pitchRadius } = bearing
  const crop = cropOf(bearing)
  const limits = { half: crop.half, top: mm(crop.top), bottom: mm(crop.bottom) }
  const middle = (crop.top + crop.bottom) / 2
  const shown = [
    ...ringCuts(bearing).flatMap((cut) => ringSection(cropped(cut, limits), HATCH_SPACING / factor)),
    ...cheekSections(bearing, HATCH_SPACING / factor, limits),
    ...rollingElement(bearing),
    line('centre', at(-crop.half, pitchRadius), at(crop.half, pitchRadius)),
  ]
  const rightRoom = labelRoom(bearing, say, room)
  const onPaper = ({ x, y }: Point): Point => at(x * factor, (y - middle) * factor)
  const all = [
    ...placed(shown, factor, at(0, -middle * factor)),
    ...diameterAndLength(bearing, say, onPaper, crop.half * factor, room),
    ...labels(bearing, say, onPaper, { beside: crop.half * factor + LABEL_BESIDE, room, rightRoom }),
  ]
  return placed(all, 1, at((LEFT_NEEDS - LABEL_BESIDE - rightRoom) / 2, 0))
}

type OnPaper = (point: Point) => Point

/** On the left how thick a roller is, along its middle how long. */
function diameterAndLength(
  { settled, pitchRadius }: Bearing,
  say: SizeText,
  onPaper: OnPaper,
  half: number,
  room: Room,
): readonly Shape[] {
  const { ballDiameter, input } = settled
  const length = input.balls.length ?? mm(0)
  const [low, high] = [pitchRadius - ballDiameter / 2, pitchRadius + ballDiameter / 2].map((y) => onPaper(at(0, y)).y)
  const [left, right] = [-length / 2, length / 2].map((x) => onPaper(at(x, 0)).x)
  if (low === undefined || high === undefined || left === undefined || right === undefined) return []
  const x = -half - LINE_BESIDE
  const along = low + (high - low) / 4
  return [
    levelExtension(low, left, x),
    levelExtension(high, left, x),
    ...uprightLine(x, low, high),
    fittedText(`Dw Ø${say(ballDiameter)}`, at(x - 2, (low + high) / 2), room.height / 2, 'middle', { turned: 90 }),
    ...levelLine(along, left, right),
    fittedText(`${DIMENSION_SYMBOLS.rollerLength} ${say(length)}`, at(0, along + 1), right - left - 2, 'middle'),
  ]
}

function labels(
  bearing: Bearing,
  say: SizeText,
  onPaper: OnPaper,
  { beside, room, rightRoom }: { readonly beside: number; readonly room: Room; readonly rightRoom: number },
): readonly Shape[] {
  const rows = labelsOf(bearing, say)
    .map(({ words, tip }) => ({ words, tip: onPaper(tip) }))
    .toSorted((a, b) => b.tip.y - a.tip.y)
  const wished = rows.map(({ tip }) => tip.y)
  const heights = stacked(wished, LABELS_APART, -room.height / 2, room.height / 2)
  return rows.flatMap(({ words, tip }, index) => {
    const start = at(beside, heights[index] ?? tip.y)
    return [...leader(start, tip), labelBeside(words, start, rightRoom - 1)]
  })
}
