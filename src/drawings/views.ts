import { type Design, isCaged, isOfPlates, nameOf } from '#shared/bearing/arrangements.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Assembled, assemblySheet } from '#src/drawings/sheets/assembly.ts'
import { cagedGaugeItems, gaugeItems, plateGaugeItems } from '#src/drawings/sheets/gauges.ts'
import { type Item, oneSheet, pagesOf, type TooManyPages } from '#src/drawings/sheets/pages.ts'
import { assembledPlates } from '#src/drawings/sheets/plates-assembly.ts'
import { assembledRings, assembledWithCage } from '#src/drawings/sheets/rings-assembly.ts'
import { cagedTemplateItems, plateItems, templateItems } from '#src/drawings/sheets/templates.ts'
import { CUT_OUT_DESCRIPTIONS, TITLES } from '#src/words/drawing.ts'
import type { Drawing } from './model.ts'
import { PAPER_SIZES, type Paper } from './papers.ts'
import type { View } from './view.ts'

/** What is cut out of paper. */
function itemsOf(view: Exclude<View, 'assembly'>, design: Design): readonly Item[] {
  const isTemplates = view === 'templates'
  if (isOfPlates(design))
    return isTemplates ? plateItems(design, plateStockOf(design.bearing)) : plateGaugeItems(design)
  if (isCaged(design))
    return isTemplates ? cagedTemplateItems(design, stockOf(design.bearing)) : cagedGaugeItems(design)
  return isTemplates ? templateItems(design, stockOf(design.bearing)) : gaugeItems(design)
}

/** The items, and what the sheet says of itself. */
function cutOut(view: Exclude<View, 'assembly'>, design: Design) {
  const description = CUT_OUT_DESCRIPTIONS[view](nameOf(design.bearing.resolved.input))
  return { items: itemsOf(view, design), words: { title: TITLES[view], description } }
}

function assembled(design: Design): Assembled {
  if (isOfPlates(design)) return assembledPlates(design)
  return isCaged(design)
    ? assembledWithCage(design, stockOf(design.bearing))
    : assembledRings(design, stockOf(design.bearing))
}

/** A view of a bearing as one drawing, as large as it takes. */
export function drawingOf(view: View, design: Design, paper: Paper): Drawing {
  if (view === 'assembly') return assemblySheet(assembled(design), paper)
  const { items, words } = cutOut(view, design)
  return oneSheet(items, words, PAPER_SIZES[paper])
}

/** The same on pages to print, or how many pages it would take where nobody would print so many. */
export function pagesOfView(view: View, design: Design, paper: Paper): Result<readonly Drawing[], TooManyPages> {
  if (view === 'assembly') return ok([assemblySheet(assembled(design), paper)])
  const { items, words } = cutOut(view, design)
  return pagesOf(items, words, PAPER_SIZES[paper])
}
