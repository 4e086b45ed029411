import type { Units } from '#shared/units/length.ts'
import { capitalised } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'

const LISTED: Readonly<Record<Units, string>> = { in: '1/2; 5/8; 3/4', mm: '14; 16; 20' }
const RANGED: Readonly<Record<Units, string>> = { in: '1/2 to 3/4', mm: '14 to 20' }

/** Words of the search for a bearing, and of the table of all that there are. */
export const FIND = {
  title: 'More: find a bearing that fits a space',
  sizes: ({ element }: Terms) => `Sizes of ${element.many} that you have or can buy`,
  sizesHint: (units: Units) => `A list such as ${LISTED[units]}, or a range such as ${RANGED[units]}.`,
  outside: 'Largest outside diameter',
  counts: ({ element }: Terms) => `Numbers of ${element.many}`,
  countsHint: (hasTable: boolean) =>
    `A list such as 10; 12; 14, or a range such as 8 to 14.${hasTable ? ' Then there is a table of all of them too.' : ''}`,
  sizesFault: (units: Units) =>
    `Enter sizes as a list such as ${LISTED[units]}, or as a range such as ${RANGED[units]}.`,
  tooManySizes: (count: number, most: number) => `These are ${count} sizes. Enter at most ${most}.`,
  countsFault: (least: number, most: number) =>
    `Enter whole numbers from ${least} to ${most}, as a list such as 10; 12; 14, or as a range such as 8 to 14.`,
  /** What was read of a list, so that a comma cannot be taken for another. */
  readAs: (values: readonly (string | number)[]) => `Read as: ${values.join('; ')}.`,
  /** Numbers in a row as a range: `8 to 14`. */
  runs: (counts: readonly number[]) => {
    const inOrder = counts.toSorted((one, other) => one - other)
    const starts = inOrder.filter((count) => !counts.includes(count - 1))
    const ends = inOrder.filter((count) => !counts.includes(count + 1))
    return starts.map((start, index) => (start === ends[index] ? String(start) : `${start} to ${ends[index]}`))
  },
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
