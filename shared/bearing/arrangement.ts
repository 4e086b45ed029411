/*
 * The sisters of one core: circles in a ring that close, whatever stands for them. What an arrangement has, what it lacks and
 * which questions it can be asked stands here and nowhere else: the rest asks for a trait, never for a name.
 */

export const ARRANGEMENTS = ['radial', 'roller'] as const
export type ArrangementName = (typeof ARRANGEMENTS)[number]

/** What a design can be asked, by the path that asks it; `stock` is a part of a design's answer. */
const QUESTIONS = [
  'design',
  'stock',
  'size-table',
  'tolerance-check',
  'fit-correction',
  'ball-selection',
  'seasonal-fit',
  'load-check',
  'job-sheet',
  'drawings',
] as const
export type Question = (typeof QUESTIONS)[number]

export interface Arrangement {
  /** What rolls: a ball touches in a point, a roller along a line. */
  readonly rolls: 'balls' | 'rollers'
  /** What it rolls in: a groove with its lands, or a plain cylinder. */
  readonly raceway: 'groove' | 'track'
  /** JSON pointers of what a design of this arrangement has not; giving one is refused. */
  readonly lacks: readonly string[]
  readonly answers: readonly Question[]
}

/** What only rollers have. */
const OF_ROLLERS = ['/balls/length'] as const
/** What only a groove has, and a ring that must come apart for it. */
const OF_GROOVES = [
  '/outerRing/engagement',
  '/outerRing/grooveDepth',
  '/outerRing/groove',
  '/innerRing',
  '/groove',
  '/split',
] as const

const TRAITS: Readonly<Record<ArrangementName, Arrangement>> = {
  radial: { rolls: 'balls', raceway: 'groove', lacks: OF_ROLLERS, answers: QUESTIONS },
  roller: {
    rolls: 'rollers',
    raceway: 'track',
    lacks: OF_GROOVES,
    answers: ['design', 'size-table', 'tolerance-check', 'fit-correction', 'ball-selection', 'load-check'],
  },
}

/** What is taken where nobody says. */
const USUAL: ArrangementName = 'radial'

export const nameOf = ({ arrangement }: { readonly arrangement?: ArrangementName }): ArrangementName =>
  arrangement ?? USUAL

export const traitsOf = (design: { readonly arrangement?: ArrangementName }): Arrangement => TRAITS[nameOf(design)]
