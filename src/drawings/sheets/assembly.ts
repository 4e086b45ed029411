import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Dimension } from '#shared/bearing/dimensions.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Drawing, type Point, polar, type Shape } from '#src/drawings/model.ts'
import { PAPER_SIZES, type Paper } from '#src/drawings/papers.ts'
import { type Scale, scaleUpTo } from '#src/drawings/scales.ts'
import { box, circle, line, placed } from '#src/drawings/shapes.ts'
import * as words from '#src/words/drawing.ts'
import { fittedText, leader, TEXT_HEIGHT } from './annotations.ts'
import { ballAngles, gapAngle, type Placed } from './face.ts'
import type { Room } from './side-labels.ts'
import { COLUMNS_LEFT, COLUMNS_RIGHT } from './size-columns.ts'
import { sizeTable } from './size-table.ts'
import { type SizeText, sizeTextFor } from './size-text.ts'
import { titleBlock } from './title-block.ts'

/*
 * The sheet, in millimetres of paper: half section, face view and the enlarged groove side by side; below them the
 * table of sizes and the title block.
 */
const MARGIN = 8
const STRIP_HEIGHT = 32
const TITLE_WIDTH = 88
const LEAST_DETAIL_WIDTH = 76
/** Of the room that the chosen scale leaves over, the enlarged groove takes this part, the face view the rest. */
const DETAIL_SHARE = 0.9
const LEAST_FACE_WIDTH = 56
const BETWEEN_ZONES = 2
const CAPTION_HEIGHT = 9
/** The tails of arrows reach past the enlarged groove, above and below. */
const BESIDE_DETAIL = 12
/** Above and below the face view, for the labels of the balls. */
const FACE_LABELS = 9
const HATCH_SPACING = 1.6
/** Wide lines would make a black band of smaller balls. */
const LEAST_WIDE_BALL = 4
/** Centre lines run so far past what they are the centre of. */
const OVERHANG = 4

type Layout = {
  readonly width: number
  readonly height: number
  readonly scale: Scale
  readonly detail: Scale
  readonly section: Point
  readonly face: Point
  readonly faceWidth: number
  readonly groove: Point
  readonly grooveRoom: Room
  readonly captions: number
}

/** What a sheet shows of a bearing, whatever lies round its balls: views in full size round the origin, and words. */
export type Assembled = {
  readonly arrangement: ArrangementName
  readonly ring: Placed
  readonly dimensions: readonly Dimension[]
  readonly outside: Mm
  /** Of all of it, along the axis. */
  readonly wide: number
  /** What is enlarged: where along the axis its middle is, on the pitch circle, and how far it reaches. */
  readonly marked: { readonly along: number; readonly reach: number }
  readonly section: (hatchSpacing: number, overhang: number) => readonly Shape[]
  readonly columns: (say: SizeText, factor: number) => readonly Shape[]
  readonly face: (overhang: number, ballRole: 'outline' | 'hatch') => readonly Shape[]
  readonly enlarged: {
    readonly scale: (say: SizeText, room: Room) => Scale
    readonly draw: (say: SizeText, scale: Scale, room: Room) => readonly Shape[]
  }
  /** Of the face view. */
  readonly faceCaption: string
  /** Symbol and size of the space between the last ball and the first. */
  readonly between: (say: SizeText) => string
  readonly bore: Mm
}

/**
 * A bearing as an engineering drawing (ISO 128, ISO 129-1): half section, face view, and the groove enlarged, with every
 * size of the design, the nearest figure of the rule, and the scale.
 */
export function assemblySheet(assembled: Assembled, paper: Paper): Drawing {
  const say = sizeTextFor(assembled.ring)
  const layout = layoutOf(assembled, say, paper)
  const { width, height, scale } = layout
  const shapes = [
    ...placed(sectionZone(assembled, say, scale.factor), 1, layout.section),
    ...placed(faceZone(assembled, say, layout), 1, layout.face),
    ...placed(assembled.enlarged.draw(say, layout.detail, layout.grooveRoom), 1, layout.groove),
    ...captions(assembled, layout),
    ...strip(assembled, say, layout, PAPER_SIZES[paper].name),
  ]
  return {
    title: words.TITLES.assembly,
    description: words.assemblyDescription(assembled.arrangement, factsOf(assembled), say),
    width: mm(width / scale.factor),
    height: mm(height / scale.factor),
    scale: scale.factor,
    shapes: placed(shapes, 1 / scale.factor),
  }
}

/** Labels of a bearing as a whole. */
function factsOf({ ring: { resolved }, outside, bore }: Assembled) {
  const { units, balls } = resolved.input
  const { count, material = BALL_MATERIAL } = balls
  return { count, material, ballDiameter: resolved.ballDiameter, outside, bore, units }
}

const viewHeight = (height: number): number => height - 2 * MARGIN - STRIP_HEIGHT - CAPTION_HEIGHT

function layoutOf({ outside, wide, enlarged }: Assembled, say: SizeText, paper: Paper): Layout {
  const { long: width, short: height } = PAPER_SIZES[paper]
  const free = width - 2 * MARGIN - LEAST_DETAIL_WIDTH - 2 * BETWEEN_ZONES - COLUMNS_LEFT - COLUMNS_RIGHT
  const scale = scaleUpTo(
    Math.min(
      (viewHeight(height) - 2 * FACE_LABELS - 2 * OVERHANG) / outside,
      (free - 2 * OVERHANG) / (outside + wide),
      (free - LEAST_FACE_WIDTH) / wide,
    ),
  )
  const sectionWidth = wide * scale.factor
  const faceNeeds = Math.max(LEAST_FACE_WIDTH, outside * scale.factor + 2 * OVERHANG)
  const left = free - sectionWidth - faceNeeds
  const faceWidth = faceNeeds + (1 - DETAIL_SHARE) * left
  const grooveRoom = {
    width: LEAST_DETAIL_WIDTH + DETAIL_SHARE * left,
    height: viewHeight(height) - BESIDE_DETAIL,
  }
  const middle = MARGIN + STRIP_HEIGHT + viewHeight(height) / 2
  const sectionLeft = MARGIN + COLUMNS_LEFT
  const faceLeft = sectionLeft + sectionWidth + COLUMNS_RIGHT + BETWEEN_ZONES
  return {
    width,
    height,
    scale,
    detail: enlarged.scale(say, grooveRoom),
    section: at(sectionLeft + sectionWidth / 2, middle),
    face: at(faceLeft + faceWidth / 2, middle),
    faceWidth,
    groove: at(width - MARGIN - grooveRoom.width / 2, middle),
    grooveRoom,
    captions: height - MARGIN - CAPTION_HEIGHT + 3,
  }
}

function sectionZone(
  { ring: { pitchRadius }, outside, marked, section, columns }: Assembled,
  say: SizeText,
  factor: number,
): readonly Shape[] {
  const ring = marked.reach * factor + 2
  const centre = at(marked.along * factor, pitchRadius * factor)
  const top = Math.max((outside / 2) * factor, centre.y + ring)
  return [
    ...placed(section(HATCH_SPACING / factor, OVERHANG / factor), factor),
    ...columns(say, factor),
    circle('dimension', centre, ring),
    line('dimension', at(centre.x, centre.y + ring), at(centre.x, top + 2)),
    fittedText('X', at(centre.x, top + 3), 10, 'middle'),
  ]
}

function faceZone(assembled: Assembled, say: SizeText, { scale: { factor }, faceWidth }: Layout): readonly Shape[] {
  const { arrangement, ring, outside, face, between } = assembled
  const { pitchRadius, resolved } = ring
  const radius = (outside / 2) * factor
  const high = radius + OVERHANG
  const inGap = polar(at(0, 0), pitchRadius * factor, gapAngle(ring))
  const angles = ballAngles(ring)
  const isSmall = resolved.ballDiameter * factor < LEAST_WIDE_BALL
  const ballAngle = itemAt(angles, Math.floor(angles.length * 0.6))
  const onBall = polar(at(0, 0), (pitchRadius + resolved.ballDiameter / 2) * factor, ballAngle)
  const [above, below] = [at(4, high + 3), at(-4, -high - 3)]
  return [
    ...placed(face(OVERHANG / factor, isSmall ? 'hatch' : 'outline'), factor),
    ...leader(above, inGap),
    fittedText(between(say), at(5, high + 2), faceWidth / 2 - 5, 'start'),
    ...leader(below, onBall),
    fittedText(
      words.rollingLabel(arrangement, factsOf(assembled), say),
      at(0, -high - 4 - TEXT_HEIGHT),
      faceWidth,
      'middle',
    ),
  ]
}

function captions(
  { faceCaption }: Assembled,
  { section, face, groove, grooveRoom, captions: y, scale, detail, faceWidth }: Layout,
): readonly Shape[] {
  const caption = (view: string, { text }: Scale, x: number, room: number): Shape =>
    fittedText(words.caption(view, text), at(x, y), room, 'middle', { bold: true })
  return [
    caption(words.CAPTIONS.section, scale, section.x, COLUMNS_LEFT + COLUMNS_RIGHT),
    caption(faceCaption, scale, face.x, faceWidth),
    caption('X', detail, groove.x, grooveRoom.width),
  ]
}

function strip(assembled: Assembled, say: SizeText, { width, height, scale }: Layout, paper: string): readonly Shape[] {
  const { arrangement, ring, dimensions } = assembled
  const { input, finishAllowance } = ring.resolved
  const { units } = input
  const [left, right, bottom, top] = [MARGIN, width - MARGIN, MARGIN, MARGIN + STRIP_HEIGHT]
  const between = right - TITLE_WIDTH
  return [
    box('frame', MARGIN, MARGIN, width - MARGIN, height - MARGIN),
    line('frame', at(left, top), at(right, top)),
    line('frame', at(between, bottom), at(between, top)),
    ...sizeTable({ arrangement, dimensions }, say, { left, bottom, right: between, top }),
    ...titleBlock(
      {
        title: words.DRAWING_NAMES[arrangement],
        subtitle: words.subtitle(arrangement, factsOf(assembled), units, say),
        facts: [
          [words.FACTS.scale, scale.text],
          [words.FACTS.units, units],
          [words.FACTS.paper, paper],
          [words.FACTS.finish, words.finishFact(finishAllowance, units, say)],
        ],
        note: words.LIGHT_USE_NOTE,
      },
      { left: between, bottom, right, top },
    ),
  ]
}
