import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingKind, ToolName } from '#shared/questions/fit/reading.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'

/** Words of the step at the lathe. */
export const LATHE = {
  ring: 'Ring on the lathe',
  outer: 'outer ring',
  inner: 'inner ring',
  measured: 'I measured',
  cut: 'I cut',
  value: 'Measured',
  diameter: 'Diameter of the plug',
  ballsLeftOut: 'Balls left out',
  landDiameter: 'Diameter of the land',
  count: 'Balls in the row',
  result: 'The plug',
  add: 'Enter this reading',
  depth: 'Depth that I meant to take off',
  tool: 'With',
  strokes: 'Strokes of the abrasive',
  oneStroke: '+1 stroke',
  noStrokes: 'none counted',
  cutDone: 'I have cut: measure again',
  now: 'Read at the groove as it is now',
  nothingRead: 'Nothing read since the last cut.',
  remove: 'remove',
  history: 'Earlier states',
  startAgain: 'Start this ring again',
  keys: 'Keys',
  back: 'delete the last sign',
  space: 'space',
  rescue: 'What can still be done, the first to try first',
  chance: 'Chance of ending too deep',
  standing: 'The groove as it is now',
  tooTight: 'more to remove',
  inBand: 'finished',
  tooDeep: 'too deep',
  disagree: 'Readings that do not fit the others',
  onHand: 'More: other balls that you have',
  onHandSizes: 'Size and number of each',
  onHandHint: (units: Units) =>
    `For a groove that is too deep. Part them by a semicolon: ${units === 'in' ? '21/32 x 12; 11/16 x 20' : '16.5 x 12; 17 x 20'}`,
} as const

/** Headlines on the screen. */
export const HEADLINES = {
  measure: 'Measure first',
  stop: 'Stop',
  'in-band': 'It fits: stop here',
  'too-deep': 'Too deep: stop',
  'cannot-be-told': 'No reading can decide this: stop',
} as const

export const cutUntil = (size: string, acrossIt: string): string => `Cut until ${size} ${acrossIt}`
export const sandUntil = (size: string, acrossIt: string): string => `Sand until ${size} ${acrossIt}`

/** The kinds of reading, as a maker would say them. */
const KIND_NAMES: Readonly<Record<ReadingKind, string>> = {
  'last-ball-opening': 'The last ball stays out: the opening where it should go',
  'ball-gap': 'All balls are in: the gap that is left',
  'last-ball-refused': 'The last ball stays out, and I measured nothing',
  'last-ball-in': 'The last ball goes in, and I measured nothing',
  'groove-bottom-diameter': 'Across the bottoms of the groove, with a caliper',
  'groove-depth': 'Depth of the groove, from the land',
  plug: 'A plug inside the seated balls',
  'ball-row': 'A row of balls in a straight channel',
  'radial-play': 'Play of the inner ring, from side to side',
  binds: 'The inner ring binds, or does not go in',
}

export const PLUG_NAMES = { enters: 'enters', snug: 'is snug', refuses: 'does not enter' } as const
export const TOOL_NAMES: Readonly<Record<ToolName, string>> = { 'sharp-tool': 'sharp tool', abrasive: 'abrasive' }

/** A kind of reading with the numbers of its blanks on the job sheet. */
export const kindName = (kind: ReadingKind, blanks: readonly number[]): string =>
  [KIND_NAMES[kind], ...blanks.map((number) => `(${number})`)].join(' ')

/** A reading in the list of those that were entered. */
export function readingLine(of: {
  readonly kind: ReadingKind
  readonly value: string | undefined
  readonly second: string | undefined
  readonly result: keyof typeof PLUG_NAMES | undefined
}): string {
  const { kind, value, second, result } = of
  const figures = [value, second && SECONDS[kind]?.(second), result && PLUG_NAMES[result]]
  const told = figures.filter((each) => each !== undefined && each !== '')
  return told.length === 0 ? KIND_NAMES[kind] : `${KIND_NAMES[kind]}: ${told.join(', ')}`
}

const SECONDS: Partial<Record<ReadingKind, (second: string) => string>> = {
  'last-ball-opening': (second) => (second === '1' ? '' : `${second} balls left out`),
  'groove-depth': (second) => `land ${second}`,
  'ball-row': (second) => `${second} balls`,
}

export const cutLine = (tool: ToolName, radial: string, strokes: number | undefined): string =>
  `then cut ${radial} with the ${TOOL_NAMES[tool]}${strokes === undefined ? '' : `, ${strokes} strokes`}`

/** Which bearing and which ring an advice is for. */
export const adviceFor = (bearing: string, ring: FittedRing): string => `${bearing}; ${LATHE[ring]}`

/** Decimals of a gap: no finer than anyone can measure it. */
const GAP_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 1 }

interface Estimated {
  readonly value: Mm
  readonly low: Mm
  readonly high: Mm
}

const sized = (length: Mm, units: Units): string => `${inUnits(length, units).toFixed(GAP_DECIMALS[units])} ${units}`

export const gapNow = ({ value, low, high }: Estimated, units: Units): string =>
  `The gap is now about ${sized(value, units)}; 19 times in 20 it is between ${sized(low, units)} and ${sized(high, units)}. Below 0, the last ball does not go in.`

export const playNow = ({ value, low, high }: Estimated, units: Units): string =>
  `The play is now about ${sized(value, units)}; 19 times in 20 it is between ${sized(low, units)} and ${sized(high, units)}. Below 0, the inner ring does not turn.`
