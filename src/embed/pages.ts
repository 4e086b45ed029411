import { type Design, nameOf } from '#shared/bearing/arrangements.ts'
import { wayToBearing } from '#src/api/bearing-address.ts'
import { answerOf } from '#src/api/design/arrangements/all.ts'
import { figureOf } from '#src/api/drawings/figure.ts'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import { paperFor } from '#src/api/sheet-options.ts'
import type { View } from '#src/drawings/view.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { escaped } from '#src/http/html.ts'
import { queryText } from '#src/http/query-text.ts'
import { sheetBody } from '#src/job-sheet/html.ts'
import { prose } from '#src/job-sheet/prose.ts'
import { gravely } from '#src/job-sheet/sheet-text.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { finerThanRule } from '#src/words/by-caliper.ts'
import { EMBED } from '#src/words/embed.ts'
import { EXACT_DECIMALS } from '#src/words/figure.ts'
import { sheetTitle } from '#src/words/job-sheet/sheet.ts'
import { termsOf } from '#src/words/terms.ts'
import type { EmbedRequest, EmbedView } from './schema.ts'

export const titleOf = (design: Design): string =>
  sheetTitle(nameOf(design.bearing.resolved.input), bearingFacts(design))

/**
 * The body of the page of a view.
 *
 * @param publicUrl where people reach this service; null where nobody has said it
 */
export function embedded(view: EmbedView, design: Design, request: EmbedRequest, publicUrl: string | null): string {
  if (view === 'job-sheet') return sheetBody(toJobSheet(design, request))
  const heading = `<h1 class="unseen">${prose(titleOf(design))}</h1>`
  if (view === 'bearing') return `<main>${heading}${bearing(design, request, publicUrl)}</main>`
  return `<main class="bare">${heading}${figure(view, design, request)}</main>`
}

const figure = (view: View, design: Design, request: EmbedRequest): string =>
  figureOf(view, drawingOf(view, design, paperFor(request)), design)

/** A bearing to try: three fields, and below them what follows from them. */
function bearing(design: Design, request: EmbedRequest, publicUrl: string | null): string {
  const { units } = design.bearing.resolved.input
  const { summary, dimensions, warnings, cautions } = answerOf(design)
  const rows = dimensions.map(
    ({ name, symbol, shop, byCaliper, value }) =>
      `<tr><td>${escaped(symbol)}</td><th scope="row">${prose(name)}</th><td class="n">${byCaliper ? finerThanRule(symbol) : prose(shop)}</td><td class="n">${value.toFixed(EXACT_DECIMALS[units])}</td></tr>`,
  )
  return [
    form(design, request),
    `<div id="answer"><p role="status">${prose(summary)}</p>`,
    ...gravely({ warnings }).map((words) => `<p class="caution"><b>${EMBED.warning}.</b> ${prose(words)}</p>`),
    list(
      EMBED.notes,
      warnings.filter(({ severity }) => severity === 'note'),
    ),
    wholePage(request, publicUrl),
    figure('assembly', design, request),
    `<details><summary>${EMBED.sizes}</summary><table><thead><tr><th scope="col">${EMBED.symbol}</th>`,
    `<th scope="col">${EMBED.size}</th><th class="n" scope="col">${EMBED.onTheRule}</th>`,
    `<th class="n" scope="col">${EMBED.exact(units)}</th></tr></thead><tbody>${rows.join('')}</tbody></table></details>`,
    list(EMBED.cautions, cautions),
    '</div>',
  ].join('')
}

/** A frame has no field for the wood and the place of which it speaks: the whole page has. */
function wholePage(request: EmbedRequest, publicUrl: string | null): string {
  const { address } = wayToBearing(new URLSearchParams(queryText(request)))
  return `<p><a href="${escaped((publicUrl ?? '') + address)}" target="_blank" rel="noopener">${EMBED.wholePage}</a></p>`
}

/** Fields that a reader may change; the rest of the query goes along unseen. */
const OPEN = ['balls.count', 'balls.diameter', 'bore']

/** Without a script its button loads the page anew. */
function form(design: Design, request: EmbedRequest): string {
  const { units } = design.bearing.resolved.input
  const terms = termsOf(request)
  const query = [...new URLSearchParams(queryText(request))]
  const textOf = (name: string): string => escaped(query.find(([known]) => known === name)?.[1] ?? '')
  const field = (label: string, name: string, kind: string) =>
    `<label>${label}<input name="${name}" value="${textOf(name)}" ${kind} required></label>`
  const kept = query
    .filter(([name]) => !OPEN.includes(name))
    .map(([name, value]) => `<input type="hidden" name="${escaped(name)}" value="${escaped(value)}">`)
  return [
    '<form>',
    field(EMBED.count(terms), 'balls.count', 'type="number" min="3" max="200"'),
    field(EMBED.diameter(terms, units), 'balls.diameter', 'maxlength="40"'),
    field(EMBED.bore(units), 'bore', 'maxlength="40"'),
    ...kept,
    `<button>${EMBED.show}</button></form>`,
  ].join('')
}

const list = (heading: string, rows: readonly { readonly message: string }[]): string =>
  rows.length === 0
    ? ''
    : `<h2>${heading}</h2><ul>${rows.map(({ message }) => `<li>${prose(message)}</li>`).join('')}</ul>`
