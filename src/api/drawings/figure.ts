import { type Design, isOfPlates } from '#shared/bearing/arrangements.ts'
import type { Drawing } from '#src/drawings/model.ts'
import type { View } from '#src/drawings/view.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { escaped, page } from '#src/http/html.ts'
import { wordedFor } from '#src/words/arrangement-words.ts'
import { figure } from '#src/words/figure.ts'
import { FIGURE_STYLE } from './figure-style.ts'

const WORDS: Readonly<Record<View, string>> = {
  assembly: 'Half section, face and groove',
  templates: 'Templates of the blanks: to cut by, print the PDF at full size',
  gauges: 'Gauges: to cut by, print the PDF at full size',
}

/** A drawing as a page of its own, for an `<iframe>`: nothing in it runs or loads. */
export function toFigure(view: View, drawing: Drawing, design: Design): string {
  const { settled } = design.bearing
  const { units, balls } = settled.input
  const { count, material = 'wood' } = balls
  const size = figure(settled.ballDiameter, units)
  const whole = isOfPlates(design) ? design.bearing.plate : design.bearing.outerRing
  const outside = figure(whole.outsideDiameter, units)
  const words = `${WORDS[view]}. ${count} ${material} balls of ${size}, ${outside} outside.`
  const { message: caption } = wordedFor(settled.input, { message: words })
  const svg = toSvg(drawing, { paper: false, fluid: true })
  return page(drawing.title, FIGURE_STYLE, `<figure>${svg}<figcaption>${escaped(caption)}</figcaption></figure>`)
}
