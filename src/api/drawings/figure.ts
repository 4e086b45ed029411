import { type Design, nameOf } from '#shared/bearing/arrangements.ts'
import type { Drawing } from '#src/drawings/model.ts'
import type { View } from '#src/drawings/view.ts'
import { narrowParts } from '#src/drawings/views.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { escaped, page } from '#src/http/html.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { figureCaption } from '#src/words/drawing.ts'
import { FIGURE_STYLE } from './figure-style.ts'

/** A drawing as a page of its own, for an `<iframe>`: nothing in it runs or loads. Its heading is for those who cannot see it. */
export function toFigure(view: View, drawing: Drawing, design: Design): string {
  const heading = `<h1 class="unseen">${escaped(drawing.title)}</h1>`
  return page(drawing.title, { style: FIGURE_STYLE }, `<main>${heading}${figureOf(view, drawing, design)}</main>`)
}

/** A drawing with its caption, as a part of a page. */
export function figureOf(view: View, drawing: Drawing, design: Design): string {
  const caption = figureCaption(view, nameOf(design.bearing.resolved.input), bearingFacts(design))
  return `<figure><div class="wide">${fluid(drawing)}</div><div class="narrow">${narrow(view, design)}</div><figcaption>${escaped(caption)}</figcaption></figure>`
}

const fluid = (drawing: Drawing): string => toSvg(drawing, { paper: false, fluid: true })

/** A style sheet shows it where the whole drawing could not be read. */
const narrow = (view: View, design: Design): string =>
  narrowParts(view, design)
    .map(({ title, drawing, words }) => {
      const rows = words.map((line) => `<li>${escaped(line)}</li>`)
      return `<p><b>${escaped(title)}</b></p>${fluid(drawing)}${rows.length === 0 ? '' : `<ul>${rows.join('')}</ul>`}`
    })
    .join('')
