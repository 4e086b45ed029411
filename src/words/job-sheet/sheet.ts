import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { Mm } from '#shared/units/length.ts'
import type { BearingFacts } from '#src/words/bearing-facts.ts'
import { capitalised, figure } from '#src/words/figure.ts'
import { MADE_OF } from '#src/words/materials.ts'
import { TRADE_SIGN } from '#src/words/standing.ts'
import { TERMS } from '#src/words/terms.ts'
import { CHECK_LABELS, LABELS } from './labels.ts'

/** Words round the operations: headings, and leads of paragraphs. */
export const SHEET = {
  name: 'Job sheet',
  use: 'Use',
  ...LABELS,
  ...CHECK_LABELS,
  tools: 'Tools',
  how: 'How',
  tick: 'tick by hand when done',
  symbol: 'symbol',
  size: 'size',
  exact: 'exact',
  onTheRule: 'on the rule',
  stopAt: 'stop at',
  writeDown: 'write down',
  reading: 'reading',
  goesTo: 'goes to',
  allTools: 'You need',
  warnings: 'Before you begin',
  warning: 'Warning',
  speed: 'Speed',
  byCaliper: 'by caliper',
  blank: 'no.',
  notToScale: 'nothing on this page is to scale',
  readFull: 'Read the full job sheet once before you work by this one: it says how each step is done.',
} as const

/** Before a caution, the first time whole and then by its name alone. */
const CAUTION_SIGN = '⚠'
export const cautionAgain = (names: readonly string[]): string => `${CAUTION_SIGN} ${names.join(', ')}: as above.`
export const cautionFirst = (name: string, message: string): string =>
  `${CAUTION_SIGN} ${capitalised(name)}. ${message}`

/** For a blank that has been made round; before that as slow as the lathe goes. */
export const speedSentence = (speed: Speed): string =>
  `Start at the lowest speed. Once the blank is round, ${turns(speed)}.`
export const shortSpeed = (speed: Speed): string => `once round, ${turns(speed)}`

interface Speed {
  readonly min: number
  readonly max: number
}
const turns = ({ min, max }: Speed): string =>
  `${twoDigits(min, Math.ceil)} to ${twoDigits(max, Math.floor)} turns a minute ${TRADE_SIGN}`

/** No lathe is set more finely, and neither end is passed. */
function twoDigits(speed: number, round: (value: number) => number): number {
  const digit = Number(`1e${Math.floor(Math.log10(speed)) - 1}`)
  return Number((round(speed / digit) * digit).toPrecision(2))
}

/** A blank is called by its number, which is not that of a step. */
export const blankName = ({ number, name }: { readonly number: number; readonly name: string }): string =>
  `(${number}) ${name}`

/** The nearest figure of the rule, and by how much it is off where it is. */
export const onTheRule = (shop: string, error: string): string => (error === '' ? shop : `${shop} (${error})`)

/** `Radial bearing with 12 wooden balls of 16 mm: outside 104 mm, bore 12 mm`. */
export function sheetTitle(arrangement: ArrangementName, facts: BearingFacts): string {
  const { bearing, element } = TERMS[arrangement]
  const size = (length: Mm): string => figure(length, facts.units)
  return `${capitalised(bearing)} with ${facts.count} ${MADE_OF[facts.material]} ${element.many} of ${size(facts.ballDiameter)}: outside ${size(facts.outside)}, bore ${size(facts.bore)}`
}

export const pageNumber = (page: number, pages: number): string => `${SHEET.name}, page ${page} of ${pages}`
