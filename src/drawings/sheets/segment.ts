import type { RingStock } from '#shared/making/stock.ts'
import { mm } from '#shared/units/length.ts'
import { at, type Shape, type Vertex } from '#src/drawings/model.ts'
import { line, loop, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'
import { GRAIN, SEGMENT_LABELS } from '#src/words/drawing.ts'
import { arrowHead, TEXT_HEIGHT } from './annotations.ts'
import { labelledItem } from './labelled-item.ts'
import type { Item, Label } from './pages.ts'
import type { SizeText } from './size-text.ts'

/** Half of the arrow along the grain, and how far it stands above the piece. */
const GRAIN_REACH = 8
const GRAIN_ABOVE = 3
/** Where on the long edge its label points, of half of its length: no line runs through the code. */
const NEAR_CORNER = 0.85
/** Where the code stands, of half of the height. */
const CODE_AT = 0.2

/** One piece of a glued-up part, full size: the first one is laid on it before the others are cut. */
export function segmentItem(
  { title, code }: { readonly title: string; readonly code: string },
  { pieces, miter, outerEdge, innerEdge, stripWidth, layer }: NonNullable<RingStock['segments']>,
  say: SizeText,
): Item {
  const [outer, inner, half] = [outerEdge / 2, innerEdge / 2, stripWidth / 2]
  const corners: readonly Vertex[] = [
    at(-outer, half),
    at(outer, half),
    ...(innerEdge > 0 ? [at(inner, -half), at(-inner, -half)] : [at(0, -half)]),
  ]
  const labels: readonly Label[] = [
    { words: SEGMENT_LABELS.miter(miter), tip: at(inner + (outer - inner) / 4, -half / 2) },
    ...(innerEdge > 0 ? [{ words: SEGMENT_LABELS.short(say(innerEdge)), tip: at(-inner / 2, -half) }] : []),
    { words: SEGMENT_LABELS.long(say(outerEdge)), tip: at(-outer * NEAR_CORNER, half) },
    { words: SEGMENT_LABELS.strip(say(stripWidth), say(layer)) },
    { words: SEGMENT_LABELS.pieces(pieces) },
  ]
  const most = Math.min(TEXT_HEIGHT, stripWidth / 3)
  // Where it stands the piece is at least as wide as in its middle.
  const room = 0.8 * (outer + inner)
  const shapes: readonly Shape[] = [
    loop('finish', corners, 'outside'),
    text(code, at(0, half * CODE_AT), mm(fittedHeight(code, most, room)), 'middle', { role: 'mark' }),
    ...grain(half + GRAIN_ABOVE),
  ]
  const reach = Math.max(outer, GRAIN_REACH)
  const figure = { shapes, left: -reach, right: reach, bottom: -half, top: half + 2 * GRAIN_ABOVE }
  return labelledItem(title, figure, labels)
}

/** Along the long edge. */
const grain = (y: number): readonly Shape[] => [
  line('dimension', at(-GRAIN_REACH, y), at(GRAIN_REACH, y)),
  arrowHead(at(-GRAIN_REACH, y), 180),
  arrowHead(at(GRAIN_REACH, y), 0),
  text(GRAIN, at(GRAIN_REACH + 2, y - TEXT_HEIGHT / 2), TEXT_HEIGHT, 'start'),
]
