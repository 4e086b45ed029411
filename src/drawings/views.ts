import { type AnyDesign, isCaged, isOfPlates } from '#shared/bearing/any-design.ts'
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

const TEMPLATES = {
  title: 'Templates',
  description:
    'Both blanks in full size: the lines to turn to, the lines to saw by, the centre, the grain and the holes.',
}
const GAUGES = {
  title: 'Gauges',
  description: 'In full size: go and no-go plug, a profile for each groove, and an edge for each cylinder.',
}

/** What is cut out of paper: the items, and what the sheet says of itself. */
type CutOut = { readonly items: readonly Item[]; readonly words: typeof GAUGES }

function cutOut(view: Exclude<View, 'assembly'>, design: AnyDesign): CutOut {
  if (isOfPlates(design)) {
    return view === 'templates'
      ? {
          items: plateItems(design),
          words: {
            ...TEMPLATES,
            description: TEMPLATES.description.replace('Both blanks', 'The blank of both plates'),
          },
        }
      : { items: plateGaugeItems(design), words: GAUGES }
  }
  if (isCaged(design)) {
    return view === 'templates'
      ? {
          items: cagedTemplateItems(design),
          words: {
            ...TEMPLATES,
            description: TEMPLATES.description.replace('Both blanks', 'The blanks of rings and cage'),
          },
        }
      : {
          items: cagedGaugeItems(design),
          words: { ...GAUGES, description: GAUGES.description.replace('go and no-go plug', 'the plug') },
        }
  }
  const isTrack = design.bearing.settled.traits.raceway === 'track'
  if (view === 'templates') {
    const description = TEMPLATES.description.replace(
      'Both blanks',
      isTrack ? 'The blanks of rings and cheeks' : 'Both blanks',
    )
    return { items: templateItems(design), words: { ...TEMPLATES, description } }
  }
  const words = isTrack
    ? { ...GAUGES, description: 'In full size: go and no-go plug, and an edge for each cylinder.' }
    : GAUGES
  return { items: gaugeItems(design), words }
}

function assembled(design: AnyDesign): Assembled {
  if (isOfPlates(design)) return assembledPlates(design)
  return isCaged(design) ? assembledWithCage(design) : assembledRings(design)
}

/** A view of a bearing as one drawing, as large as it takes. */
export function drawingOf(view: View, design: AnyDesign, paper: Paper): Drawing {
  if (view === 'assembly') return assemblySheet(assembled(design), paper)
  const { items, words } = cutOut(view, design)
  return oneSheet(items, words, PAPER_SIZES[paper])
}

/** The same on pages to print, or how many pages it would take where nobody would print so many. */
export function pagesOfView(view: View, design: AnyDesign, paper: Paper): Result<readonly Drawing[], TooManyPages> {
  if (view === 'assembly') return ok([assemblySheet(assembled(design), paper)])
  const { items, words } = cutOut(view, design)
  return pagesOf(items, words, PAPER_SIZES[paper])
}
