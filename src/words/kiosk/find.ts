import type { Units } from '#shared/units/length.ts'

/** Words of the search for a bearing, and of the table of all that there are. */
export const FIND = {
  title: 'More: find a bearing for balls and a place',
  sizes: 'Ball sizes that you have or can buy',
  sizesHint: (units: Units) => `Part them by a semicolon: ${units === 'in' ? '1/2; 5/8; 3/4' : '14; 16; 20'}`,
  outside: 'Largest outside diameter',
  counts: 'Numbers of balls',
  countsHint: 'Part them by a semicolon: 10; 12; 14. Then there is a table of all of them too.',
  best: 'The best with your bore',
  take: 'Take this bearing',
  takeRow: 'Take',
  table: 'Every size and number',
  columns: ['Balls', 'Circle of their centres', 'Outside', 'Choose'],
  balls: (count: number, diameter: string) => `${count} of ${diameter}`,
  line: (of: { readonly count: number; readonly diameter: string; readonly outside: string; readonly score: string }) =>
    `${of.count} balls of ${of.diameter}, ${of.outside} outside; score ${of.score}.`,
} as const
