import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { FittedPart, FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingKind, ToolName } from '#shared/questions/fit/reading.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { caliperFigure, capitalised, cutFigures, figure, withMinus } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'
import { STAGE_NAMES } from './page.ts'

/** Words of the step at the lathe. */
export const LATHE = {
  ring: 'Ring on the lathe',
  outer: 'outer ring',
  inner: 'inner ring',
  measured: 'I measured',
  blanks: 'In brackets: the blanks of the job sheet.',
  cut: 'I cut or sanded',
  value: 'Measured',
  diameter: 'Diameter of the plug',
  landDiameter: 'Diameter of the land',
  result: 'The plug',
  add: 'Enter this reading',
  depth: 'How much I meant to take off',
  tool: 'With',
  strokes: 'Strokes of the abrasive',
  oneStroke: '+1 stroke',
  noStrokes: 'none counted',
  cutDone: 'I have cut or sanded: measure again',
  cutAnyway: 'More: a cut that you made, or sanding',
  nothingRead: 'Nothing read yet.',
  nothingSince: 'Nothing read since the last cut.',
  remove: 'Remove',
  history: 'Earlier states',
  startAgain: 'Start this ring again',
  keys: 'Keys',
  back: 'delete the last sign',
  space: 'space',
  rescue: 'What can still be done, the first to try first',
  tooTight: 'more to remove',
  inBand: 'finished',
  onHandSizes: 'Size and number of each',
  onHandHint: (units: Units) =>
    `For one that is cut too far. Part them by a semicolon: ${units === 'in' ? '21/32 x 12; 11/16 x 20' : '16.5 x 12; 17 x 20'}`,
} as const

/** Above readings that do not fit, or one alone that does not. */
export const doubtWords = (isAlone: boolean) =>
  isAlone
    ? ({ headline: 'Check the reading', title: 'A reading that does not fit' } as const)
    : ({ headline: 'Check the readings', title: 'Readings that do not fit' } as const)

/** Cut further than wanted. */
export const tooFar = (ring: FittedPart, terms: Terms): string => (ring === 'inner' ? terms.innerTooFar : terms.tooFar)

/** Words of the step for what is on the lathe. */
export const latheWords = (ring: FittedRing, terms: Terms) => ({
  now: `Read at the ${terms.raceway.one} as it is now`,
  standing: `The ${terms.raceway.one} as it is now`,
  chance: `Chance of ending ${tooFar(ring, terms)}`,
  onHand: `More: other ${terms.element.many} that you have`,
  ballsLeftOut: `${capitalised(terms.element.many)} left out`,
  count: `${capitalised(terms.element.many)} in the row`,
  landDiameter: LATHE.landDiameter,
})

/** Headlines on the screen. */
export const headlines = (ring: FittedPart, terms: Terms) => ({
  measure: 'Measure first',
  stop: 'Stop',
  // A plate's groove that fits may still be shallow: only its circle stays.
  'in-band': ring === 'plate' ? 'It fits: keep this circle' : 'It fits: stop here',
  'too-deep': `${capitalised(tooFar(ring, terms))}: stop`,
  'cannot-be-told': 'No reading can decide this: stop',
})
export type Headlines = ReturnType<typeof headlines>

export const cutUntil = (size: string, acrossIt: string): string => `Cut until ${size} ${acrossIt}`

/**
 * A cut, as far as anyone can see it end: at a size, or, where that is only an estimate, so much deeper than now. A plate's circle moves
 * with the tool.
 */
export function cutLarge(
  of: {
    readonly tool: ToolName
    readonly radial: Mm
    /** Undefined where the groove is not known well enough to stop at it. */
    readonly size: Mm | undefined
  },
  units: Units,
  { acrossIt, ofCut, part }: Terms,
): string {
  const isSanded = of.tool === 'abrasive'
  if (part.one === 'plate')
    return `${isSanded ? 'Sand' : 'Set the tool'} ${cutFigures(of.radial, units).depth} ${ofCut}`
  const end =
    of.size === undefined
      ? `${cutFigures(of.radial, units).depth} ${ofCut}`
      : `until ${caliperFigure(of.size, units)} ${acrossIt}`
  return `${isSanded ? 'Sand' : 'Cut'} ${end}`
}

/** A ring that went back askew is cut deeper on one side. Undefined of a plate, which its pin centres. */
export const backOnLathe = ({ part, element }: Terms): string | undefined =>
  part.one === 'plate'
    ? undefined
    : `If you take the ${part.one} off the lathe to try the ${element.many}, mark it and what holds it across each other first. Put it back mark against mark, and tap it true.`

/** How far to cut a fresh blank. @param where its size is measured, or its depth is cut */
export const firstCutLine = (size: string, where: string, { raceway }: Terms): string =>
  `No ${raceway.one} yet? Cut with the sharp tool until ${size} ${where}, then measure.`

/** The circle is what the gap shows: the depth alone would leave it to chance. */
export const deepOnCircle = (circle: string): string => `deep on a circle of ${circle}`

/** Where no gap shows how far to cut: from the size at which the sharp tool stops, to a plug. */
export const thenToPlug = (plug: string, terms: Terms): string =>
  `With a cage no gap shows how deep the outer groove is. From this size on, sand it: lay the ${terms.element.many} in evenly, and try the plug of ${plug} between them after every few strokes, until it just enters. Write on the ring what the groove measures then. Next, cut the inner ring: begin there with “${kindNames(terms).plug}”.`

/** What is made besides the raceways, and when, in the order of the job sheet, to which a button behind it leads. Undefined where that is nothing. */
export function madeBesides(arrangement: ArrangementName, depth: string, { raceway }: Terms): string | undefined {
  const begins = `“${STAGE_NAMES.assembly}” begins with`
  const onSheet = 'on the job sheet:'
  switch (arrangement) {
    case 'caged':
      return `The cage comes once both rings fit: ${begins} it. Measure both lands first, for the cage must clear them. Its sizes are ${onSheet}`
    case 'roller':
      return `The two cheeks come once both ${raceway.many} fit: ${begins} them. Their sizes are ${onSheet}`
    case 'thrust':
      return `The gap shows whether the circle is right, however shallow the ${raceway.one} is. Once it fits, cut to a depth of ${depth} on that circle, and the other plate at the same setting: ${begins} that. The other sizes are ${onSheet}`
    case 'radial':
      return undefined
    default:
      return arrangement satisfies never
  }
}

/** The kinds of reading, as a maker would say them. */
const kindNames = ({ element: { one, many }, across }: Terms): Readonly<Record<ReadingKind, string>> => ({
  'last-ball-opening': `The last ${one} stays out: the opening where it should go`,
  'ball-gap': `All ${many} are in: the gap that is left`,
  'last-ball-refused': `The last ${one} stays out, and I measured nothing`,
  'last-ball-in': `The last ${one} goes in, and I measured nothing`,
  'groove-bottom-diameter': `${capitalised(across)}, with a caliper`,
  'groove-depth': 'Depth of the groove, from the land',
  plug: `A plug inside the seated ${many}`,
  'ball-row': `A row of ${many} in a straight channel`,
  'radial-play': 'Play of the inner ring, from side to side',
  binds: 'The inner ring binds, or does not go in',
})

export const PLUG_NAMES = { enters: 'enters', snug: 'is snug', refuses: 'does not enter' } as const
export const TOOL_NAMES: Readonly<Record<ToolName, string>> = { 'sharp-tool': 'sharp tool', abrasive: 'abrasive' }

/** Where on the page the figure of a blank is entered: the step, the ring, the kind of reading, and any field but its first. */
export function placeOfReading(
  of: { readonly ring?: FittedRing; readonly kind: ReadingKind; readonly field: string },
  terms: Terms,
): string {
  const { ring, kind, field } = of
  const places = [
    `“${STAGE_NAMES.lathe}”`,
    ...(ring === undefined ? [] : [LATHE[ring]]),
    `“${kindNames(terms)[kind]}”`,
    ...(field === '/landDiameter' ? [`“${LATHE.landDiameter}”`] : []),
  ]
  return places.join(', ')
}

/** A kind of reading with the numbers of its blanks on the job sheet. */
export const kindName = (kind: ReadingKind, blanks: readonly number[], terms: Terms): string =>
  [kindNames(terms)[kind], ...blanks.map((number) => `(${number})`)].join(' ')

/** A reading in the list of those that were entered. */
export function readingLine(of: {
  readonly kind: ReadingKind
  readonly value: string | undefined
  readonly second: string | undefined
  readonly result: keyof typeof PLUG_NAMES | undefined
  readonly units: Units
  readonly terms: Terms
}): string {
  const { kind, value, second, result, units, terms } = of
  const figures = [
    value && withUnit(value, units),
    second && SECONDS[kind]?.(second, terms, units),
    result && PLUG_NAMES[result],
  ]
  const told = figures.filter((each) => each !== undefined && each !== '')
  const name = kindNames(terms)[kind]
  return told.length === 0 ? name : `${name}: ${told.join(', ')}`
}

/** A length as it was typed, with the unit that it was typed for. */
const withUnit = (text: string, units: Units): string => (/[a-z"]/i.test(text) ? text : `${text} ${units}`)

const SECONDS: Partial<Record<ReadingKind, (second: string, terms: Terms, units: Units) => string>> = {
  'last-ball-opening': (second, { element }) => (second === '1' ? '' : `${second} ${element.many} left out`),
  'groove-depth': (second, _, units) => `land ${withUnit(second, units)}`,
  'ball-row': (second, { element }) => `${second} ${element.many}`,
}

export const cutLine = (
  { tool, radial, strokes }: { readonly tool: ToolName; readonly radial: string; readonly strokes: number | undefined },
  units: Units,
  { ofCut }: Terms,
): string =>
  `then took off ${withUnit(radial, units)} ${ofCut} with the ${TOOL_NAMES[tool]}${strokes === undefined ? '' : `, ${strokes} ${strokes === 1 ? 'stroke' : 'strokes'}`}`

/** Which bearing and which ring an advice is for. */
export const adviceFor = (bearing: string, part: string): string => `${bearing}; ${part}`

/** Decimals of a gap: no finer than anyone can measure it. */
const GAP_DECIMALS: Readonly<Record<Units, number>> = { in: 3, mm: 1 }

interface Estimated {
  readonly value: Mm
  readonly low: Mm
  readonly high: Mm
}

const sized = (length: Mm, units: Units): string =>
  withMinus(`${inUnits(length, units).toFixed(GAP_DECIMALS[units])} ${units}`)

/** A play is read with a dial, as true as a caliper. */
const ofPlay = (length: Mm, units: Units): string => withMinus(caliperFigure(length, units))

export const gapNow = ({ value, low, high }: Estimated, units: Units): string =>
  `The gap is now about ${sized(value, units)}; 19 times in 20 it is between ${sized(low, units)} and ${sized(high, units)}.`

export const playNow = ({ value, low, high }: Estimated, good: Pick<Estimated, 'low' | 'high'>, units: Units): string =>
  `The play is now about ${ofPlay(value, units)}; 19 times in 20 it is between ${ofPlay(low, units)} and ${ofPlay(high, units)}. A play ${good.low > 0 ? `from ${figure(good.low, units)} to` : 'above 0 and at most'} ${figure(good.high, units)} is good. Below 0, the inner ring does not turn.`

/** Why no size of an inner ring holds yet, and where to go. */
export interface BeforeInner {
  readonly headline: string
  readonly summary: string
  readonly label: string
}

const OUTER_FIRST = { headline: 'First the outer ring', label: 'To the outer ring' }

/** The sizes of a ring inside one that was rescued are those of the rescue. */
export const outerLost = ({ raceway, tooFar: far }: Terms): BeforeInner => ({
  ...OUTER_FIRST,
  summary: `The outer ring's ${raceway.one} is ${far}, so the design's sizes do not hold for this ring: cut to them, it may be lost. Go to the outer ring, choose what to do with it, and cut this ring to the sizes of that choice. Once it is in, enter its play here.`,
})

/** Where nothing is known of the outer ring, whose groove says how deep the inner one must be. */
export const outerFirst = ({ raceway }: Terms): BeforeInner => ({
  ...OUTER_FIRST,
  summary: `Nothing is entered for the outer ring, whose ${raceway.one} decides how far to cut this one. Finish it, and enter there what you measured last.`,
})

/** On from an outer ring that fits. */
export const TO_INNER = 'Next: the inner ring'

/** What can be done at the mating faces, as the service says it, of a ring that may be finished. */
export const ifTooDeep = (remedy: string, { innerTooFar }: Terms): string =>
  `If it is ${innerTooFar}: ${remedy.charAt(0).toLowerCase()}${remedy.slice(1)}`
