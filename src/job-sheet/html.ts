import { lengthOf, type Units } from '#shared/units/length.ts'
import type { JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import { escaped, page } from '#src/http/html.ts'
import { figure } from '#src/words/figure.ts'
import { goesTo } from '#src/words/job-sheet.ts'

/** Light and dark by the reader's own wish; on paper black on white, no operation torn in two. */
export const STYLE = `
:root{color-scheme:light dark;--ink:#1d1a16;--paper:#fbf9f5;--rule:#b9ad9a;--warn:#8a3b00;--soft:#f0e9dc}
@media (prefers-color-scheme:dark){:root{--ink:#ece6da;--paper:#1a1815;--rule:#6b6355;--warn:#ffb27a;--soft:#26231e}}
body{margin:0 auto;padding:1rem;max-width:52rem;background:var(--paper);color:var(--ink);font:1rem/1.5 'DejaVu Sans',Verdana,sans-serif}
h1{font-size:1.4rem;line-height:1.25}h2{font-size:1.1rem;margin:0}
ol{list-style:none;margin:0;padding:0}
li.step{border-top:2px solid var(--rule);padding:1rem 0;break-inside:avoid}
.head{display:flex;gap:.75rem;align-items:baseline}
.box{flex:none;width:1.1em;height:1.1em;border:2px solid currentColor;border-radius:2px;transform:translateY(.15em)}
p{margin:.35rem 0}
table{border-collapse:collapse;width:100%;margin:.5rem 0}
th,td{text-align:left;padding:.25rem .5rem;border-bottom:1px solid var(--rule);font-weight:400}
td.n,th.n{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}
thead th{font-size:.85rem;font-weight:700}
.caution{border-left:.35rem solid var(--warn);padding:.25rem .75rem;background:var(--soft)}
.caution b{color:var(--warn)}
.blank{display:inline-block;min-width:7rem;border-bottom:1.5px solid currentColor;height:1.4em;vertical-align:bottom}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.15rem .75rem;margin:.35rem 0}dt{font-weight:700}dd{margin:0}
@media (max-width:34rem){dl{grid-template-columns:1fr}}
@page{margin:10mm}
@media print{:root{--ink:#000;--paper:#fff;--rule:#777;--warn:#000;--soft:#fff}body{max-width:none;padding:0;font-size:10pt}}
`.replaceAll('\n', '')

/** The job sheet as a page of its own: to read on a telephone at the lathe, and to print. */
export function toHtml({ title, use, units, operations }: JobSheet): string {
  const steps = operations.map((operation) => step(operation, units)).join('')
  const lead = `<p class="caution"><b>Use.</b> ${escaped(use)}</p>`
  return page(title, STYLE, `<main><h1>${escaped(title)}</h1>${lead}<ol>${steps}</ol></main>`)
}

function step(operation: SheetOperation, units: Units): string {
  const { number, title, tool, how, sizes, check, mistake, cautions, readings } = operation
  return [
    `<li class="step"><div class="head"><span class="box" role="img" aria-label="done: to tick by hand"></span>`,
    `<h2>${number}. ${escaped(title)}</h2></div>`,
    ...cautions.map(({ message }) => `<p class="caution"><b>Caution.</b> ${escaped(message)}</p>`),
    `<dl><dt>With</dt><dd>${escaped(tool)}</dd><dt>How</dt><dd>${escaped(how)}</dd></dl>`,
    sizes.length === 0 ? '' : sizeTable(sizes, units),
    `<dl><dt>Check</dt><dd>${escaped(check)}</dd>`,
    `<dt>Goes wrong</dt><dd>${escaped(mistake.looksLike)}</dd><dt>Costs</dt><dd>${escaped(mistake.costs)}</dd></dl>`,
    readings.length === 0 ? '' : readingTable(readings),
    '</li>',
  ].join('')
}

function sizeTable(sizes: SheetOperation['sizes'], units: Units): string {
  const stops = sizes.some(({ stopAt }) => stopAt !== undefined)
  const stopHead = stops ? '<th class="n" scope="col">stop at</th>' : ''
  const rows = sizes.map(({ symbol = '', name, value, shop, stopAt, stopAtShop }) => {
    const said = stopAt === undefined ? '' : `${plain(stopAt, units)} (${escaped(stopAtShop ?? '')})`
    const stop = stops ? `<td class="n">${said}</td>` : ''
    return `<tr><td>${escaped(symbol)}</td><th scope="row">${escaped(name)}</th><td class="n">${plain(value, units)}</td><td class="n">${escaped(shop)}</td>${stop}</tr>`
  })
  return `<table><thead><tr><th scope="col">symbol</th><th scope="col">size</th><th class="n" scope="col">work to</th><th class="n" scope="col">on the rule</th>${stopHead}</tr></thead><tbody>${rows.join('')}</tbody></table>`
}

/** A length of the answer, which is in `units` already, in words. */
const plain = (value: number, units: Units): string => escaped(figure(lengthOf(value, units), units))

function readingTable(readings: SheetOperation['readings']): string {
  const rows = readings.map(
    (reading) =>
      `<tr><th scope="row">${escaped(reading.name)}</th><td><span class="blank"></span></td><td>${escaped(goesTo(reading))}</td></tr>`,
  )
  return `<table><thead><tr><th scope="col">write down</th><th scope="col">reading</th><th scope="col">goes to</th></tr></thead><tbody>${rows.join('')}</tbody></table>`
}
