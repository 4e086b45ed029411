import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { GrooveState } from './reading.ts'

/** The steps of a job, in their order. */
export const STAGES = ['bearing', 'place', 'balls', 'run', 'sheets', 'lathe', 'assembly', 'care'] as const
export type Stage = (typeof STAGES)[number]

/** A bearing by the query names of the service, each value as it was typed: `balls.count` is `12`. */
export type BearingTexts = Readonly<Record<string, string>>
/** Begins the names of what is stated of the wood of a part. */
export const WOODS = 'making.woods.'

/** Everything that a maker has stated about one bearing. The address carries all of it, and nothing else has any. */
export interface Job {
  readonly stage: Stage
  readonly bearing: BearingTexts
  /** The ring on the lathe. */
  readonly ring: FittedRing
  readonly outer: readonly GrooveState[]
  readonly inner: readonly GrooveState[]
  /** Diameters of the balls of a measured lot. */
  readonly lot: readonly string[]
  /** What else was chosen, by its name. */
  readonly choices: Readonly<Partial<Record<ChoiceName, string>>>
}

/**
 * What a job can hold beside its bearing: how far grooves and lots come out, the load, the paper; what a search is told; other
 * balls that a maker has for a groove that is too deep.
 */
export const CHOICES = [
  'grooveScatter',
  'lotScatter',
  'load',
  'paper',
  'findSizes',
  'findCounts',
  'findOutside',
  'onHand',
] as const
export type ChoiceName = (typeof CHOICES)[number]

/** Where a first visit keeps its bearing: in a heated room, which wood has time to follow. */
const PLACE: BearingTexts = {
  'making.woods.outerRing.species': 'maple-sugar',
  'making.woods.innerRing.species': 'maple-sugar',
  'making.climate.today.relativeHumidity': '50',
  'making.climate.relativeHumidity.min': '35',
  'making.climate.relativeHumidity.max': '60',
}

/** The wood of wooden balls. */
export const BALL_WOOD = { name: 'making.woods.balls.species', usual: 'birch-yellow' } as const

/** The bearing that a first visit begins with: one that runs all year. */
const FIRST: BearingTexts = {
  units: 'mm',
  'balls.count': '12',
  'balls.diameter': '16',
  'balls.material': 'wood',
  bore: '12',
  'outerRing.engagement': '0.2',
  'innerRing.engagement': '0.4',
  ...PLACE,
  [BALL_WOOD.name]: BALL_WOOD.usual,
}

/** Of the tide clock in the README: fourteen marbles. Larkmoor is made up. */
const TIDE_CLOCK: BearingTexts = {
  units: 'mm',
  'balls.count': '14',
  'balls.diameter': '14',
  'balls.material': 'glass',
  'balls.standardDeviation': '0.1',
  bore: '10',
  ...PLACE,
}

export const jobOf = (bearing: BearingTexts): Job => ({
  stage: 'bearing',
  bearing,
  ring: 'outer',
  outer: [{ readings: [] }],
  inner: [{ readings: [] }],
  lot: [],
  choices: {},
})

export const FIRST_JOB = jobOf(FIRST)
export const EXAMPLE_JOB = jobOf(TIDE_CLOCK)

/** What was measured of balls holds for these alone. */
const BALLS = ['balls.count', 'balls.diameter', 'balls.material']

/** Some values of the bearing changed; an empty text leaves a value to what is usual. */
export function withBearing(job: Job, changes: BearingTexts): Job {
  const isOfOthers = BALLS.some((name) => changes[name] !== undefined && changes[name] !== job.bearing[name])
  const before = isOfOthers ? { ...job.bearing, 'balls.diameters': '' } : job.bearing
  const entries = Object.entries({ ...before, ...changes }).filter(([, text]) => text !== '')
  return { ...job, bearing: Object.fromEntries(entries) }
}

/** The ring on the lathe as it is now changed. */
export function withRing(job: Job, change: (states: readonly GrooveState[]) => readonly GrooveState[]): Job {
  return { ...job, [job.ring]: change(job[job.ring]) }
}

/** Another choice; an empty text goes back to what is usual. */
export function withChoice(job: Job, name: ChoiceName, text: string): Job {
  const { [name]: _, ...others } = job.choices
  return { ...job, choices: text === '' ? others : { ...others, [name]: text } }
}
