import type { Arrangement } from '#shared/bearing/arrangement.ts'
import type { Design } from '#shared/bearing/design.ts'
import { ok, type Result } from '#shared/result.ts'
import { assemblySheet } from '#src/drawings/sheets/assembly.ts'
import { gaugeItems } from '#src/drawings/sheets/gauges.ts'
import { type Item, oneSheet, pagesOf, type TooManyPages } from '#src/drawings/sheets/pages.ts'
import { templateItems } from '#src/drawings/sheets/templates.ts'
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

type CutOut = Exclude<View, 'assembly'>

/** What is cut out of paper, by what it rolls in. */
const WORDS: Readonly<Record<Arrangement['raceway'], Readonly<Record<CutOut, typeof GAUGES>>>> = {
  groove: { templates: TEMPLATES, gauges: GAUGES },
  track: {
    templates: {
      ...TEMPLATES,
      description:
        'The blanks of rings and cheeks in full size: the lines to turn to, the lines to saw by, the centre, the grain.',
    },
    gauges: { ...GAUGES, description: 'In full size: go and no-go plug, and an edge for each cylinder.' },
  },
}

const wordsFor = ({ bearing }: Design, view: CutOut) => WORDS[bearing.settled.traits.raceway][view]

const itemsOf: Readonly<Record<CutOut, (design: Design) => readonly Item[]>> = {
  templates: templateItems,
  gauges: gaugeItems,
}

/** A view of a bearing as one drawing, as large as it takes. */
export function drawingOf(view: View, design: Design, paper: Paper): Drawing {
  if (view === 'assembly') return assemblySheet(design, paper)
  return oneSheet(itemsOf[view](design), wordsFor(design, view), PAPER_SIZES[paper])
}

/** The same on pages to print, or how many pages it would take where nobody would print so many. */
export function pagesOfView(view: View, design: Design, paper: Paper): Result<readonly Drawing[], TooManyPages> {
  if (view === 'assembly') return ok([assemblySheet(design, paper)])
  return pagesOf(itemsOf[view](design), wordsFor(design, view), PAPER_SIZES[paper])
}
