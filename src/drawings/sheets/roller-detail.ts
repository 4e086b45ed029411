import type { Bearing } from '#shared/bearing/bearing.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { type Mm, mm } from '#shared/units/length.ts'
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
/** A roller shorter than that on paper has no room for words: its length is said beside it. */
const LEAST_FOR_WORDS = 6

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

type Label = { readonly words: string; readonly tip: Point }

const lengthOf = ({ settled }: Bearing): Mm => settled.input.balls.length ?? mm(0)

/** What stands beside the section, and where it points to, in the bearing's millimetres. */
function labelsOf(bearing: Bearing, say: SizeText, isShort: boolean): readonly Label[] {
  const {
    innerRing: inner,
    outerRing: outer,
    cheeks,
    settled,
    pitchRadius,
    radialInternalClearance,
    axialPlay,
  } = bearing
  const length = lengthOf(bearing)
  const half = length / 2
  const symbol = DIMENSION_SYMBOLS
  return [
    ...(isShort
      ? [{ words: `${symbol.rollerLength} ${say(length)}`, tip: at(0, pitchRadius + settled.ballDiameter / 4) }]
      : []),
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
  const widest = Math.max(...labelsOf(bearing, say, false).map(({ words }) => textWidth(words, TEXT_HEIGHT)))
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
  const isShort = lengthOf(bearing) * factor < LEAST_FOR_WORDS
  const all = [
    ...placed(shown, factor, at(0, -middle * factor)),
    ...diameter(bearing, say, onPaper, { left: (-lengthOf(bearing) / 2) * factor, half: crop.half * factor, room }),
    ...(isShort ? [] : lengthInside(bearing, say, onPaper)),
    ...labels(labelsOf(bearing, say, isShort), onPaper, { beside: crop.half * factor + LABEL_BESIDE, room, rightRoom }),
  ]
  return placed(all, 1, at((LEFT_NEEDS - LABEL_BESIDE - rightRoom) / 2, 0))
}

type OnPaper = (point: Point) => Point

/** On the left, how thick a roller is. */
function diameter(
  { settled: { ballDiameter }, pitchRadius }: Bearing,
  say: SizeText,
  onPaper: OnPaper,
  { left, half, room }: { readonly left: number; readonly half: number; readonly room: Room },
): readonly Shape[] {
  const low = onPaper(at(0, pitchRadius - ballDiameter / 2)).y
  const high = onPaper(at(0, pitchRadius + ballDiameter / 2)).y
  const x = -half - LINE_BESIDE
  return [
    levelExtension(low, left, x),
    levelExtension(high, left, x),
    ...uprightLine(x, low, high),
    fittedText(`Dw Ø${say(ballDiameter)}`, at(x - 2, (low + high) / 2), room.height / 2, 'middle', { turned: 90 }),
  ]
}

/** In the roller, a quarter of it up, how long it is. */
function lengthInside(bearing: Bearing, say: SizeText, onPaper: OnPaper): readonly Shape[] {
  const { pitchRadius, settled } = bearing
  const length = lengthOf(bearing)
  const right = onPaper(at(length / 2, pitchRadius - settled.ballDiameter / 4))
  const words = `${DIMENSION_SYMBOLS.rollerLength} ${say(length)}`
  return [...levelLine(right.y, -right.x, right.x), fittedText(words, at(0, right.y + 1), 2 * right.x - 2, 'middle')]
}

function labels(
  labelled: readonly Label[],
  onPaper: OnPaper,
  { beside, room, rightRoom }: { readonly beside: number; readonly room: Room; readonly rightRoom: number },
): readonly Shape[] {
  const rows = labelled.map(({ words, tip }) => ({ words, tip: onPaper(tip) })).toSorted((a, b) => b.tip.y - a.tip.y)
  const wished = rows.map(({ tip }) => tip.y)
  const heights = stacked(wished, LABELS_APART, -room.height / 2, room.height / 2)
  return rows.flatMap(({ words, tip }, index) => {
    const start = at(beside, heights[index] ?? tip.y)
    return [...leader(start, tip), labelBeside(words, start, rightRoom - 1)]
  })
}
