import type { Units } from '#shared/units/length.ts'
import { capitalised } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'

/** Words of the search for a bearing, and of the table of all that there are. */
export const FIND = {
  title: 'More: find a bearing that fits a space',
  sizes: ({ element }: Terms) => `Sizes of ${element.many} that you have or can buy`,
  sizesHint: (units: Units) => `Part them by a semicolon: ${units === 'in' ? '1/2; 5/8; 3/4' : '14; 16; 20'}`,
  outside: 'Largest outside diameter',
  counts: ({ element }: Terms) => `Numbers of ${element.many}`,
  countsHint: (hasTable: boolean) =>
    `Part them by a semicolon: 10; 12; 14.${hasTable ? ' Then there is a table of all of them too.' : ''}`,
  /** What was read of a list, so that a comma cannot be taken for another. */
  readAs: (values: readonly (string | number)[]) => `Read as: ${values.join('; ')}.`,
  best: 'The best with your bore',
  take: 'Take this bearing',
  takeRow: 'Take',
  table: 'Every size and number',
  tooMany: (shown: number, all: number) =>
    `The first ${shown} of ${all}: enter fewer sizes or numbers to see the others.`,
  columns: ({ element }: Terms) => [capitalised(element.many), 'Circle of their centres', 'Outside', 'Choose'],
  balls: (count: number, diameter: string) => `${count} of ${diameter}`,
  line: (of: {
    readonly count: number
    readonly diameter: string
    readonly outside: string
    readonly score: string
    /** How many run all year; undefined where no place is known. */
    readonly year: string | undefined
    /** Whether it is wider than the limit, with the play that the year asks for. */
    readonly isWide: boolean
    readonly terms: Terms
  }) =>
    `${[
      `${of.count} ${of.terms.element.many} of ${of.diameter}, ${of.outside} outside`,
      ...(of.isWide ? ['above your limit, with the play that the year needs'] : []),
      `score ${whole(of.score)}`,
      ...(of.year === undefined ? [] : [`${whole(of.year)} run all year at your place`]),
    ].join('; ')}.`,
  scored: ({ element }: Terms) =>
    `All else is as on this page: depths, gaps, wood and place too. The score counts how often it runs on the day it is made, the wood that is left, how the ${element.many} sit, and how much of the board is used.`,
} as const

/** A percentage that no line ends within. */
const whole = (text: string): string => text.replace(' ', '\u00a0')
