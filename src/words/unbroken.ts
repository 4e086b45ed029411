import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'

/** What a figure says nothing without: the symbol of its size, a sign of reckoning, the screw that it is the size of, its limit. */
const BEFORE_FIGURE = ['No\\.', 'screws?', 'up to', 'on(?= Ø)', 'Dw', ...new Set(Object.values(DIMENSION_SYMBOLS))]

/**
 * Before what says nothing at the start of a line: the sign of a word, the unit of a figure, its fraction, the size of a screw; and
 * before a figure that says nothing there.
 */
const BOUND = new RegExp(
  ` (?=[†‡×])|(?<=\\bup) (?=to \\d)|(?<=\\d) (?=(?:in|mm|N|lbf|g|kg|lb|%|°[CF]?|bolt|(?:wood )?screws?)(?![\\w/])|\\d+/\\d|±)|(?<=[±×<>≤≥]|\\b(?:${BEFORE_FIGURE.join('|')})) (?=(?:[Ø±R−]|No\\. )?\\d)`,
  'g',
)
const HELD = '\u00a0'

/** A text as it is laid out: no line ends between a figure and its unit, or its symbol. Answers of the service keep their plain spaces. */
export const unbroken = (text: string): string => text.replaceAll(BOUND, HELD)
