import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { grooveHalfWidth } from '#shared/geometry/groove.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { type Scale, scaleUpTo } from '#src/drawings/scales.ts'
import { circle, cross, placed } from '#src/drawings/shapes.ts'
import { fittedText, levelExtension, TEXT_HEIGHT, uprightLine } from './annotations.ts'
import { cageSections, type DrawnRings, ringCuts } from './half-section.ts'
import { type RingCut, ringSection } from './ring-section.ts'
import { labelRoom, type Room, type SideLabel, sideLabels } from './side-labels.ts'
import type { SizeText } from './size-text.ts'

const HATCH_SPACING = 2
/** Wood shown behind a groove and beside it, in ball diameters. */
const BACK_SHOWN = 0.35
const SIDE_SHOWN = 0.12
/** Dimension lines stand so far beside the section, and labels so much farther. */
const LINE_BESIDE = 4.5
const LABEL_BESIDE = 8.5
const CLEAR = 2 // of the extension lines, which run on past their dimension line
/** What the depths take on the left: a dimension line and an upright text. */
const DEPTHS_NEED = LINE_BESIDE + CLEAR + TEXT_HEIGHT + 0.5
/** So far past the view, above and below, a text may still run. */
const TAIL = 5

/** Where the arrows of the right side touch: the ball a little below its middle, a groove part of the way to its edge. */
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

/** What stands beside the section. */
function wordsOf({ outerRing: outer, innerRing: inner, landGap, resolved }: DrawnRings, say: SizeText) {
  const symbol = DIMENSION_SYMBOLS
  return {
    outerDepth: `${symbol['outerRing.grooveDepth']} ${say(outer.grooveDepth)}`,
    innerDepth: `${symbol['innerRing.grooveDepth']} ${say(inner.grooveDepth)}`,
    outerRadius: `${symbol['outerRing.grooveRadius']} R${say(outer.grooveRadius)}`,
    innerRadius: `${symbol['innerRing.grooveRadius']} R${say(inner.grooveRadius)}`,
    landGap: `${symbol.landGap} ${say(landGap)}`,
    ball: `Dw SØ${say(resolved.ballDiameter)}`,
  }
}

/** How much of a room's width the labels on the right take; half of it at the most. */
function rightRoomOf(bearing: DrawnRings, say: SizeText, room: Room): number {
  const { outerRadius, innerRadius, landGap, ball } = wordsOf(bearing, say)
  return labelRoom([outerRadius, innerRadius, landGap, ball], LABEL_BESIDE, room)
}

/** The scale at which the groove's surroundings fit a room with their labels. */
export function detailScale(bearing: DrawnRings, say: SizeText, room: Room): Scale {
  const { half, top, bottom } = cropOf(bearing)
  const beside = DEPTHS_NEED + LABEL_BESIDE + rightRoomOf(bearing, say, room)
  return scaleUpTo(Math.min((room.width - beside) / (2 * half), room.height / (top - bottom)))
}

/** Both grooves and the ball, enlarged, with what the half section is too small to say: round the origin, on paper. */
export function grooveDetail(bearing: DrawnRings, say: SizeText, { factor }: Scale, room: Room): readonly Shape[] {
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
  const rightRoom = rightRoomOf(bearing, say, room)
  const view: View = {
    bearing,
    factor,
    half,
    side: Math.min(half, (resolved.width / 2) * factor),
    onPaper: (y) => (y - middle) * factor,
    room,
    words: wordsOf(bearing, say),
    rightRoom,
  }
  const all = [...placed(shown, factor, at(0, -middle * factor)), ...depths(view), ...rounds(view)]
  return placed(all, 1, at((DEPTHS_NEED - LABEL_BESIDE - rightRoom) / 2, 0))
}

/** What the labels need to know of the view, on paper. */
type View = {
  readonly bearing: DrawnRings
  readonly factor: number
  /** Half of the width shown, and where the rings end. */
  readonly half: number
  readonly side: number
  /** From the height over the axis, in the bearing's millimetres, to the height in the view. */
  readonly onPaper: (y: number) => number
  readonly room: Room
  readonly words: ReturnType<typeof wordsOf>
  /** For the labels. */
  readonly rightRoom: number
}

/** What is left of a ring in the view. */
function cropped(cut: RingCut, { half, top, bottom }: Crop): RingCut {
  const backRadius = mm(cut.outward === 1 ? Math.min(cut.backRadius, top) : Math.max(cut.backRadius, bottom))
  const halfWidth = mm(Math.min(cut.halfWidth, half))
  const broken = { back: backRadius !== cut.backRadius, sides: halfWidth !== cut.halfWidth }
  return { ...cut, backRadius, halfWidth, broken }
}

/** On the left: how deep both grooves are, said upright along the dimension lines, away from each other. */
function depths({ bearing, words, half, side, onPaper, room }: View): readonly Shape[] {
  const x = -half - LINE_BESIDE
  return [
    { text: words.outerDepth, ring: bearing.outerRing, anchor: 'start' as const },
    { text: words.innerDepth, ring: bearing.innerRing, anchor: 'end' as const },
  ].flatMap(({ text, ring, anchor }) => {
    const [land, bottom] = [onPaper(ring.landDiameter / 2), onPaper(ring.grooveBottomDiameter / 2)]
    const middle = (land + bottom) / 2
    const textRoom = room.height / 2 + TAIL - Math.abs(middle)
    return [
      levelExtension(land, -side, x),
      levelExtension(bottom, 0, x),
      ...uprightLine(x, Math.min(land, bottom), Math.max(land, bottom)),
      fittedText(text, at(x - CLEAR, middle), textRoom, anchor, { turned: 90 }),
    ]
  })
}

/** On the right: the arcs, the ball, and the space between the lands. */
function rounds({ bearing, words, half, side, factor, onPaper, room, rightRoom }: View): readonly Shape[] {
  const { outerRing: outer, innerRing: inner, pitchRadius, resolved } = bearing
  const [outerCut, innerCut] = ringCuts(bearing)
  const [outerLand, innerLand] = [onPaper(outer.landDiameter / 2), onPaper(inner.landDiameter / 2)]
  const x = half + LINE_BESIDE
  const onBall = polar(at(0, onPaper(pitchRadius)), (resolved.ballDiameter / 2) * factor, BALL_TIP)
  const arcTip = (cut: RingCut): Point => {
    const { x: wide, y } = onArc(cut, side / factor)
    return at(wide * factor, onPaper(y))
  }
  const labels: readonly SideLabel[] = [
    { words: words.outerRadius, tip: arcTip(outerCut) },
    { words: words.landGap, tip: at(x, (outerLand + innerLand) / 2), isOfLine: true },
    { words: words.ball, tip: onBall },
    { words: words.innerRadius, tip: arcTip(innerCut) },
  ]
  return [
    levelExtension(outerLand, side, x),
    levelExtension(innerLand, side, x),
    ...uprightLine(x, innerLand, outerLand),
    ...sideLabels(labels, half + LABEL_BESIDE, rightRoom, room),
  ]
}

/** A point of the groove's arc right of its bottom, in the bearing's millimetres. */
function onArc({ outward, landRadius, groove }: RingCut, side: number): Point {
  const wide = ARC_TIP * Math.min(grooveHalfWidth(groove), side)
  const rise = Math.sqrt((groove.radius - wide) * (groove.radius + wide))
  return at(wide, landRadius + outward * (groove.depth - groove.radius + rise))
}
