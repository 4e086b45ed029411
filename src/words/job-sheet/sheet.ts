import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { Mm } from '#shared/units/length.ts'
import type { BearingFacts } from '#src/words/bearing-facts.ts'
import { capitalised, figure } from '#src/words/figure.ts'
import { MADE_OF } from '#src/words/materials.ts'
import { TERMS } from '#src/words/terms.ts'

/** What stands round the operations: headings, and leads of paragraphs. */
export const SHEET = {
  name: 'Job sheet',
  use: 'Use',
  caution: 'Caution',
  tools: 'Tools',
  how: 'How',
  check: 'Check',
  mistake: 'Mistake',
  cost: 'Cost',
  tick: 'tick by hand when done',
  symbol: 'symbol',
  size: 'size',
  exact: 'exact',
  onTheRule: 'on the rule',
  stopAt: 'stop at',
  writeDown: 'write down',
  reading: 'reading',
  goesTo: 'goes to',
} as const

/** `Radial bearing with 12 wooden balls of 16 mm: outside 104 mm, bore 12 mm`. */
export function sheetTitle(arrangement: ArrangementName, facts: BearingFacts): string {
  const { bearing, element } = TERMS[arrangement]
  const size = (length: Mm): string => figure(length, facts.units)
  return `${capitalised(bearing)} with ${facts.count} ${MADE_OF[facts.material]} ${element.many} of ${size(facts.ballDiameter)}: outside ${size(facts.outside)}, bore ${size(facts.bore)}`
}

export const pageNumber = (page: number, pages: number): string => `${SHEET.name}, page ${page} of ${pages}`

/** Where the figure of a blank goes. */
export const goesTo = (reading: {
  readonly ring?: 'outer' | 'inner'
  readonly kind: string
  readonly field: string
}): string =>
  `fit correction${reading.ring === undefined ? '' : `, ${reading.ring} ring`}: ${reading.kind}${reading.field}`
