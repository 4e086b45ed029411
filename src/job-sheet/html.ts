import { lengthOf, type Units } from '#shared/units/length.ts'
import type { JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import { escaped, page } from '#src/http/html.ts'
import { VERSION } from '#src/version.ts'
import { cautionSentence } from '#src/words/caution.ts'
import { imprint } from '#src/words/drawing.ts'
import { figure } from '#src/words/figure.ts'
import { goesTo, SHEET } from '#src/words/job-sheet/sheet.ts'
import { TERMS } from '#src/words/terms.ts'
import { STYLE } from './style.ts'

/** The job sheet as a page of its own: to read on a telephone at the lathe, and to print. */
export const toHtml = (sheet: JobSheet): string => page(sheet.title, { style: STYLE }, sheetBody(sheet))

/** What is on that page. */
export function sheetBody({ title, arrangement, units, name, code, operations }: JobSheet): string {
  const steps = operations.map((operation) => step(operation, units)).join('')
  const lead = `<p class="caution"><b>${SHEET.use}.</b> ${escaped(cautionSentence('light-use-only', TERMS[arrangement]))}</p>`
  return `<main><h1>${escaped(title)}</h1>${lead}<ol>${steps}</ol><footer>${escaped(imprint({ name, code, version: VERSION }))}</footer></main>`
}

function step(operation: SheetOperation, units: Units): string {
  const { number, title, tool, how, sizes, check, mistake, cautions, readings } = operation
  return [
    `<li class="step"><div class="head"><span class="box" role="img" aria-label="${SHEET.tick}"></span>`,
    `<h2>${number}. ${escaped(title)}</h2></div>`,
    ...cautions.map(({ message }) => `<p class="caution"><b>${SHEET.caution}.</b> ${escaped(message)}</p>`),
    `<dl><dt>${SHEET.tools}</dt><dd>${escaped(tool)}</dd><dt>${SHEET.how}</dt><dd>${escaped(how)}</dd></dl>`,
    sizes.length === 0 ? '' : sizeTable(sizes, units),
    `<dl><dt>${SHEET.check}</dt><dd>${escaped(check)}</dd>`,
    `<dt>${SHEET.mistake}</dt><dd>${escaped(mistake.looksLike)}</dd><dt>${SHEET.cost}</dt><dd>${escaped(mistake.costs)}</dd></dl>`,
    readings.length === 0 ? '' : readingTable(readings),
    '</li>',
  ].join('')
}

function sizeTable(sizes: SheetOperation['sizes'], units: Units): string {
  const stops = sizes.some(({ stopAt }) => stopAt !== undefined)
  const stopHead = stops ? `<th class="n" scope="col">${SHEET.stopAt}</th>` : ''
  const rows = sizes.map(({ symbol = '', name, value, shop, stopAt, stopAtShop }) => {
    const said = stopAt === undefined ? '' : `${plain(stopAt, units)} (${escaped(stopAtShop ?? '')})`
    const stop = stops ? `<td class="n">${said}</td>` : ''
    return `<tr><td>${escaped(symbol)}</td><th scope="row">${escaped(name)}</th><td class="n">${plain(value, units)}</td><td class="n">${escaped(shop)}</td>${stop}</tr>`
  })
  return `<table><thead><tr><th scope="col">${SHEET.symbol}</th><th scope="col">${SHEET.size}</th><th class="n" scope="col">${SHEET.exact}</th><th class="n" scope="col">${SHEET.onTheRule}</th>${stopHead}</tr></thead><tbody>${rows.join('')}</tbody></table>`
}

/** A length of the answer, which is in `units` already, in words. */
const plain = (value: number, units: Units): string => escaped(figure(lengthOf(value, units), units))

function readingTable(readings: SheetOperation['readings']): string {
  const rows = readings.map(
    (reading) =>
      `<tr><th scope="row">${escaped(reading.name)}</th><td><span class="blank"></span></td><td>${escaped(goesTo(reading))}</td></tr>`,
  )
  return `<table><thead><tr><th scope="col">${SHEET.writeDown}</th><th scope="col">${SHEET.reading}</th><th scope="col">${SHEET.goesTo}</th></tr></thead><tbody>${rows.join('')}</tbody></table>`
}
