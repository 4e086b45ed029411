import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import type { Scale } from '#src/drawings/scales.ts'
import { circle, cross, placed } from '#src/drawings/shapes.ts'
import { grooveWide } from '#src/words/drawing.ts'
import { fittedText, levelExtension, TEXT_HEIGHT, uprightLine } from './annotations.ts'
import { cageSections, type DrawnRings, ringCuts } from './half-section.ts'
import { type RingCut, ringSection } from './ring-section.ts'
import { labelRoom, type Room, type SideLabel, sideLabels } from './side-labels.ts'
import type { Deviations } from './size-columns.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Wood shown behind a groove and beside it, in ball diameters. */
const BACK_SHOWN = 0.35
const SIDE_SHOWN = 0.12
/** Dimension lines stand so far beside the section, and labels so much farther. */
const LINE_BESIDE = 4
const LABEL_BESIDE = 8.5
const CLEAR = 2 // of the extension lines, which run on past their dimension line
/** The space between the lands has a line of its own, so much farther out: in one line with the depths, the texts would run into one. */
const LINES_APART = CLEAR + TEXT_HEIGHT + 0.5
/** Room for the depths on the left: two dimension lines, each with an upright text. */
const DEPTHS_NEED = LINE_BESIDE + LINES_APART + CLEAR + TEXT_HEIGHT + 0.5
/** So far past the view, above and below, a text may still run. */
const TAIL = 5

/** Points that the arrows of the right side touch: the ball a little below its middle, a groove part of the way to its edge. */
const BALL_TIP = -12
const ARC_TIP = 0.6

type Crop = { readonly half: number; readonly top: Mm; readonly bottom: Mm }

/** Around the ball: how far the enlarged view reaches, in the bearing's millimetres. */
function cropOf({ resolved, outerRing, innerRing }: DrawnRings): Crop {
  const { ballDiameter, width } = resolved
  const widest = Math.max(outerRing.grooveWidth, innerRing.grooveWidth, ballDiameter) / 2
  const half = Math.min(width / 2, widest + SIDE_SHOWN * ballDiameter)
  const shown = BACK_SHOWN * ballDiameter
  return {
    half: Math.max(half, ballDiameter / 2),
    top: mm(outerRing.grooveBottomDiameter / 2 + Math.min(outerRing.wall, shown)),
    bottom: mm(innerRing.grooveBottomDiameter / 2 - Math.min(innerRing.wall, shown)),
  }
}

/** The words beside the section. */
function wordsOf(
  { outerRing: outer, innerRing: inner, landGap, resolved }: DrawnRings,
  deviations: Deviations,
  say: SizeText,
) {
  const symbol = DIMENSION_SYMBOLS
  const arc = (ring: RingName, { grooveRadius, grooveWidth }: RingPair[RingName]) => {
    const [radius, width] = [`${ring}.grooveRadius`, `${ring}.grooveWidth`] as const
    return {
      words: `${symbol[radius]} R${say(grooveRadius)}${deviations[radius] ?? ''}`,
      below: grooveWide(`${symbol[width]} ${say(grooveWidth)}`),
    }
  }
  return {
    outerDepth: `(${symbol['outerRing.grooveDepth']} ${say(outer.grooveDepth)})`,
    innerDepth: `(${symbol['innerRing.grooveDepth']} ${say(inner.grooveDepth)})`,
    outerArc: arc('outerRing', outer),
    innerArc: arc('innerRing', inner),
    landGap: `(${symbol.landGap} ${say(landGap)})`,
    ball: { words: `Dw SØ${say(resolved.ballDiameter)}` },
  }
}

type LabelWords = ReturnType<typeof wordsOf>

/** How much of a room's width the labels on the right take; half of it at the most. */
function rightRoomOf(words: LabelWords, room: Room): number {
  const { outerArc, innerArc, ball } = words
  return labelRoom([outerArc, innerArc, ball], LABEL_BESIDE, room)
}

/** By how much the groove's surroundings may be enlarged to fit a room with their labels. */
export function mostOfDetail(bearing: DrawnRings, deviations: Deviations, say: SizeText, room: Room): number {
  const { half, top, bottom } = cropOf(bearing)
  const beside = DEPTHS_NEED + LABEL_BESIDE + rightRoomOf(wordsOf(bearing, deviations, say), room)
  return Math.min((room.width - beside) / (2 * half), room.height / (top - bottom))
}

/** Both grooves and the ball, enlarged, with what the half section is too small to say: round the origin, on paper. */
export function grooveDetail(
  bearing: DrawnRings,
  deviations: Deviations,
  say: SizeText,
  { factor }: Pick<Scale, 'factor'>,
  room: Room,
): readonly Shape[] {
  const { pitchRadius, resolved } = bearing
  const crop = cropOf(bearing)
  const shown = [
    ...ringCuts(bearing).flatMap((cut) => ringSection(cropped(cut, crop), HATCH_SPACING / factor)),
    ...cageSections(bearing, HATCH_SPACING / factor, crop.half),
    circle('outline', at(0, pitchRadius), resolved.ballDiameter / 2),
    ...cross('centre', at(0, pitchRadius), resolved.ballDiameter * 0.58),
  ]
  const middle = (crop.top + crop.bottom) / 2
  const half = crop.half * factor
  const words = wordsOf(bearing, deviations, say)
  const rightRoom = rightRoomOf(words, room)
  const view: View = {
    bearing,
    factor,
    half,
    side: Math.min(half, (resolved.width / 2) * factor),
    onPaper: (y) => (y - middle) * factor,
    room,
    words,
    rightRoom,
  }
  const all = [...placed(shown, factor, at(0, -middle * factor)), ...depths(view), ...rounds(view)]
  return placed(all, 1, at((DEPTHS_NEED - LABEL_BESIDE - rightRoom) / 2, 0))
}

/** The sizes of the view on paper that the labels need. */
type View = {
  readonly bearing: DrawnRings
  readonly factor: number
  /** Half of the width shown, and where the rings end. */
  readonly half: number
  readonly side: number
  /** From the height over the axis, in the bearing's millimetres, to the height in the view. */
  readonly onPaper: (y: number) => number
  readonly room: Room
  readonly words: LabelWords
  /** For the labels. */
  readonly rightRoom: number
}

/** The part of a ring that the view shows. */
function cropped(cut: RingCut, { half, top, bottom }: Crop): RingCut {
  const backRadius = mm(cut.outward === 1 ? Math.min(cut.backRadius, top) : Math.max(cut.backRadius, bottom))
  const halfWidth = mm(Math.min(cut.halfWidth, half))
  const broken = { back: backRadius !== cut.backRadius, sides: halfWidth !== cut.halfWidth }
  return { ...cut, backRadius, halfWidth, broken }
}

/**
 * On the left: how deep both grooves are and, farther out, the space between the lands, which all follow from the diameters.
 * The depths run upright away from the space, each as far as the view and a little more.
 */
function depths({ bearing, words, half, side, onPaper, room }: View): readonly Shape[] {
  const { outerRing, innerRing } = bearing
  const x = -half - LINE_BESIDE
  const farther = x - LINES_APART
  const [outerLand, innerLand] = [onPaper(outerRing.landDiameter / 2), onPaper(innerRing.landDiameter / 2)]
  const between = (outerLand + innerLand) / 2
  const [outerMiddle, innerMiddle] = [outerRing, innerRing].map(({ landDiameter, grooveBottomDiameter }) =>
    onPaper((landDiameter + grooveBottomDiameter) / 4),
  ) as [number, number]
  const upright = (
    content: string,
    beside: number,
    y: number,
    textRoom: number,
    anchor: 'start' | 'middle' | 'end',
  ): Shape => fittedText(content, at(beside - CLEAR, y), textRoom, anchor, { turned: 90 })
  return [
    ...[
      { ring: outerRing, text: words.outerDepth, y: Math.max(outerMiddle, between + CLEAR), anchor: 'start' as const },
      { ring: innerRing, text: words.innerDepth, y: Math.min(innerMiddle, between - CLEAR), anchor: 'end' as const },
    ].flatMap(({ ring, text, y, anchor }) => {
      const [land, bottom] = [onPaper(ring.landDiameter / 2), onPaper(ring.grooveBottomDiameter / 2)]
      return [
        levelExtension(land, -side, farther),
        levelExtension(bottom, 0, x),
        ...uprightLine(x, Math.min(land, bottom), Math.max(land, bottom)),
        upright(text, x, y, room.height / 2 + TAIL - Math.abs(y), anchor),
      ]
    }),
    ...(outerLand > innerLand ? uprightLine(farther, innerLand, outerLand) : []),
    upright(words.landGap, farther, between, room.height, 'middle'),
  ]
}

/** On the right: the arcs with their widths, and the ball between them. No leader crosses another: they keep their order. */
function rounds({ bearing, words, half, side, factor, onPaper, room, rightRoom }: View): readonly Shape[] {
  const { pitchRadius, resolved } = bearing
  const [outerCut, innerCut] = ringCuts(bearing)
  const onBall = polar(at(0, onPaper(pitchRadius)), (resolved.ballDiameter / 2) * factor, BALL_TIP)
  const arcTip = (cut: RingCut): Point => {
    const { x: wide, y } = onArc(cut, side / factor)
    return at(wide * factor, onPaper(y))
  }
  const labels: readonly SideLabel[] = [
    { ...words.outerArc, tip: arcTip(outerCut) },
    { ...words.ball, tip: onBall },
    { ...words.innerArc, tip: arcTip(innerCut) },
  ]
  return sideLabels(labels, half + LABEL_BESIDE, rightRoom, room)
}

/** A point of the groove's arc right of its bottom, in the bearing's millimetres. */
function onArc({ outward, landRadius, groove }: RingCut, side: number): Point {
  const wide = ARC_TIP * Math.min(grooveHalfWidth(groove), side)
  const rise = Math.sqrt((groove.radius - wide) * (groove.radius + wide))
  return at(wide, landRadius + outward * (groove.depth - groove.radius + rise))
}
