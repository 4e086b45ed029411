import { type Design, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Assembled, assemblySheet } from '#src/drawings/sheets/assembly.ts'
import { cagedGaugeItems, gaugeItems, plateGaugeItems } from '#src/drawings/sheets/gauges.ts'
import { type Item, oneSheet, pagesOf, type TooManyPages } from '#src/drawings/sheets/pages.ts'
import { assembledPlates } from '#src/drawings/sheets/plates-assembly.ts'
import { assembledRings, assembledWithCage } from '#src/drawings/sheets/rings-assembly.ts'
import { cagedTemplateItems, plateItems, templateItems } from '#src/drawings/sheets/templates.ts'
import type { Drawing } from './model.ts'
import { PAPER_SIZES, type Paper } from './papers.ts'
import type { View } from './view.ts'

/** What is cut out of paper: the items, and what the sheet says of itself. */
type CutOut = {
  readonly items: readonly Item[]
  readonly words: { readonly title: string; readonly description: string }
}

const templates = (blanks: string, items: readonly Item[]): CutOut => ({
  items,
  words: {
    title: 'Templates',
    description: `${blanks} in full size: the lines to turn to, the lines to saw by, the centre, the grain and the holes.`,
  },
})

const gauges = (checks: string, items: readonly Item[]): CutOut => ({
  items,
  words: { title: 'Gauges', description: `In full size: ${checks}, and an edge for each cylinder.` },
})

function cutOut(view: Exclude<View, 'assembly'>, design: Design): CutOut {
  if (isOfPlates(design)) {
    return view === 'templates'
      ? templates('The blank of both plates', plateItems(design))
      : gauges('go and no-go plug, a profile for each groove', plateGaugeItems(design))
  }
  if (isCaged(design)) {
    return view === 'templates'
      ? templates('The blanks of rings and cage', cagedTemplateItems(design))
      : gauges('the plug, a profile for each groove', cagedGaugeItems(design))
  }
  const isTrack = design.bearing.settled.traits.raceway === 'track'
  return view === 'templates'
    ? templates(isTrack ? 'The blanks of rings and cheeks' : 'Both blanks', templateItems(design))
    : gauges(isTrack ? 'go and no-go plug' : 'go and no-go plug, a profile for each groove', gaugeItems(design))
}

function assembled(design: Design): Assembled {
  if (isOfPlates(design)) return assembledPlates(design)
  return isCaged(design) ? assembledWithCage(design) : assembledRings(design)
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
