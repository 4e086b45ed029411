import type { Units } from '#shared/units/length.ts'
import type { Form, JobSheet, SheetOperation } from '#src/api/job-sheet/schema.ts'
import { qrCode } from '#src/drawings/qr-code.ts'
import { page } from '#src/http/html.ts'
import { VERSION } from '#src/version.ts'
import { cautionSentence } from '#src/words/caution.ts'
import { imprint } from '#src/words/drawing.ts'
import { blankName, SHEET, speedSentence } from '#src/words/job-sheet/sheet.ts'
import { toolGroups } from '#src/words/job-sheet/tools.ts'
import { placeOfReading } from '#src/words/kiosk/lathe.ts'
import { signMeanings } from '#src/words/standing.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import { prose } from './prose.ts'
import { allCautions, cautionsAt, gravely, shortFacts, sizeCells } from './sheet-text.ts'
import { STYLE } from './style.ts'

/** The job sheet as a page of its own: to read on a telephone at the lathe, and to print. */
export const toHtml = (sheet: JobSheet, form?: Form, address?: string | undefined): string =>
  page(sheet.title, { style: STYLE }, sheetBody(sheet, form, address))

/**
 * The body of that page.
 *
 * @param address leads back to the bearing, where that has one
 */
export function sheetBody(sheet: JobSheet, form: Form = 'full', address?: string | undefined): string {
  const { title, arrangement, name, code, tools, operations } = sheet
  const isShort = form === 'short'
  const steps = operations.map((operation, index) =>
    isShort ? line(operation, shortFacts(sheet, operation, index)) : step(sheet, operation, index),
  )
  const lead = `<p class="caution"><b>${SHEET.use}.</b> ${prose(cautionSentence('light-use-only', TERMS[arrangement]))}</p>`
  const cautions = isShort ? allCautions(sheet).map((words) => `<p class="caution">${prose(words)}</p>`) : []
  const warnings = gravely(sheet).map((words) => `<p class="caution"><b>${SHEET.warning}.</b> ${prose(words)}</p>`)
  const before = [...(isShort ? [`<p>${SHEET.readFull}</p>`] : []), ...warnings, ...cautions, toolLists(tools)]
  const signs = signMeanings([...before, ...steps])
  const foot = [imprint({ name, code, version: VERSION }), ...signs].map(prose).join(', ')
  return `<main>${address === undefined ? '' : wayBack(address)}<h1>${prose(title)}</h1>${lead}${before.join('')}<ol>${steps.join('')}</ol><footer>${foot}</footer></main>`
}

/** To tick at the bench. */
function toolLists(tools: readonly string[]): string {
  const item = (tool: string): string => `<li><span class="box" aria-hidden="true"></span>${prose(tool)}</li>`
  const lists = toolGroups(tools).map((group) => `<h3>${group.name}</h3><ul>${group.tools.map(item).join('')}</ul>`)
  return `<section class="need"><h2>${SHEET.allTools}</h2>${lists.join('')}</section>`
}

function wayBack(address: string): string {
  const { modules, path } = qrCode(address)
  return `<svg class="code" role="img" aria-label="${SHEET.code}" viewBox="0 0 ${modules} ${modules}"><path d="${path}"/></svg>`
}

/** One operation of the short sheet. */
function line({ number, title, check, readings }: SheetOperation, said: readonly string[]): string {
  const facts = [
    ...said.map(prose),
    ...readings.map((reading) => `${prose(blankName(reading))}: <span class="blank"></span>`),
  ]
  return `<li class="head"><span class="box" role="img" aria-label="${SHEET.tick}"></span><span><b>${number}. ${prose(title)}</b>${facts.length === 0 ? '' : `: ${facts.join('; ')}`}. ${prose(check)}</span></li>`
}

function step(sheet: JobSheet, operation: SheetOperation, index: number): string {
  const { number, title, tool, counted, how, sizes, check, mistake, readings, speed } = operation
  const spin = speed ? `<dt>${SHEET.speed}</dt><dd>${prose(speedSentence(speed))}</dd>` : ''
  const open = counted === undefined ? '' : `<dt>${SHEET.counted}</dt><dd>${prose(counted)}</dd>`
  return [
    `<li class="step"><div class="head"><span class="box" role="img" aria-label="${SHEET.tick}"></span>`,
    `<h2>${number}. ${prose(title)}</h2></div>`,
    ...cautionsAt(sheet, index).map((words) => `<p class="caution"><b>${SHEET.caution}.</b> ${prose(words)}</p>`),
    `<dl><dt>${SHEET.tools}</dt><dd>${prose(tool)}</dd>${spin}${open}<dt>${SHEET.how}</dt><dd>${prose(how)}</dd></dl>`,
    sizes.length === 0 ? '' : sizeTable(sizes, sheet.units),
    `<dl><dt>${SHEET.check}</dt><dd>${prose(check)}</dd>`,
    `<dt>${SHEET.mistake}</dt><dd>${prose(mistake.looksLike)}</dd><dt>${SHEET.cost}</dt><dd>${prose(mistake.costs)}</dd><dt>${SHEET.remedy}</dt><dd>${prose(mistake.remedy)}</dd></dl>`,
    readings.length === 0 ? '' : readingTable(readings, TERMS[sheet.arrangement]),
    '</li>',
  ].join('')
}

function sizeTable(sizes: SheetOperation['sizes'], units: Units): string {
  const stops = sizes.some(({ stopAt }) => stopAt !== undefined)
  // A cell has no other words that its limits could be taken for: on a phone they may stand below the figure.
  const figure = (words: string): string => `<td class="n">${prose(words).replace(/\s±/u, ' ±')}</td>`
  const rows = sizes.map((size) => {
    const [symbol = '', name = '', ...figures] = sizeCells(size, units)
    const shown = stops ? figures : figures.slice(0, -1)
    return `<tr><td>${prose(symbol)}</td><th scope="row">${prose(name)}</th>${shown.map(figure).join('')}</tr>`
  })
  const heads = [SHEET.exact, SHEET.onTheRule, ...(stops ? [SHEET.stopAt] : [])]
  const head = heads.map((words) => `<th class="n" scope="col">${words}</th>`).join('')
  return `<table><thead><tr><th scope="col">${SHEET.symbol}</th><th scope="col">${SHEET.size}</th>${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`
}

function readingTable(readings: SheetOperation['readings'], terms: Terms): string {
  const rows = readings.map(
    (reading) =>
      `<tr><td>(${reading.number})</td><th scope="row">${prose(reading.name)}</th><td><span class="blank"></span></td><td>${prose(placeOfReading(reading, terms))}</td></tr>`,
  )
  return `<table><thead><tr><th scope="col">${SHEET.blank}</th><th scope="col">${SHEET.writeDown}</th><th scope="col">${SHEET.reading}</th><th scope="col">${SHEET.goesTo}</th></tr></thead><tbody>${rows.join('')}</tbody></table>`
}
