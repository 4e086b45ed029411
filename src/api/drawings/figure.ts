import { type Design, nameOf } from '#shared/bearing/arrangements.ts'
import type { Drawing } from '#src/drawings/model.ts'
import type { View } from '#src/drawings/view.ts'
import { narrowParts } from '#src/drawings/views.ts'
import { CAPITAL_HEIGHT } from '#src/drawings/writers/looks.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { escaped, page } from '#src/http/html.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { figureCaption } from '#src/words/drawing.ts'
import { unbroken } from '#src/words/unbroken.ts'
import { BESIDE_FIGURE, FIGURE_STYLE, LEAST_TEXT, ROOT_SIZE, WIDE_FROM } from './figure-style.ts'

/** A drawing as a page of its own, for an `<iframe>`: nothing in it runs or loads. Its heading is for those who cannot see it. */
export function toFigure(view: View, drawing: Drawing, design: Design): string {
  const heading = `<h1 class="unseen">${escaped(drawing.title)}</h1>`
  return page(drawing.title, { style: FIGURE_STYLE }, `<main>${heading}${figureOf(view, drawing, design)}</main>`)
}

/** A drawing with its caption, as a part of a page. */
export function figureOf(view: View, drawing: Drawing, design: Design): string {
  const caption = figureCaption(view, nameOf(design.bearing.resolved.input), bearingFacts(design))
  return `<figure><div class="${wideClass(drawing)}">${fluid(drawing)}</div><div class="narrow">${narrow(view, design)}</div><figcaption>${escaped(caption)}</figcaption></figure>`
}

const fluid = (drawing: Drawing): string => toSvg(drawing, { paper: false, fluid: true })

/** Of the whole drawing on a screen: from the width on at which its smallest text can be read. On paper it always is. */
function wideClass(drawing: Drawing): string {
  const { shapes, scale } = drawing
  const smallest = Math.min(
    ...shapes.map((shape) =>
      shape.kind === 'text' ? (shape.height * scale) / CAPITAL_HEIGHT : Number.POSITIVE_INFINITY,
    ),
  )
  const needed = (LEAST_TEXT * drawing.width * scale) / smallest + BESIDE_FIGURE
  const from = WIDE_FROM.find((rem) => rem * ROOT_SIZE >= needed)
  return from === undefined ? 'wide' : `wide from-${from}`
}

/** A style sheet shows it where the whole drawing could not be read: part beside part, as many as there is room for. */
const narrow = (view: View, design: Design): string =>
  narrowParts(view, design)
    .map(({ title, drawing, words, sizes }) => {
      const picture = `<p><b>${escaped(title)}</b></p>${fluid(drawing)}`
      return sizes === undefined
        ? `<section>${picture}${list(words)}</section>`
        : `<section>${picture}</section><section class="sizes">${list(sizes)}</section><section>${list(words)}</section>`
    })
    .join('')

const list = (lines: readonly string[]): string =>
  lines.length === 0 ? '' : `<ul>${lines.map((line) => `<li>${escaped(unbroken(line))}</li>`).join('')}</ul>`
