/*
 * The sisters of one core: circles in a ring that close, whatever stands for them. What an arrangement has, what it lacks and
 * which questions it can be asked stands here and nowhere else: the rest asks for a trait, never for a name.
 */

export const ARRANGEMENTS = ['radial', 'thrust', 'roller', 'caged'] as const
export type ArrangementName = (typeof ARRANGEMENTS)[number]

/** What a design can be asked, by the path that asks it. */
const QUESTIONS = [
  'design',
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
  /** What lies round the balls: rings inside one another, or plates one over the other. */
  readonly members: 'rings' | 'plates'
  /** What rolls: a ball touches in a point, a roller along a line. */
  readonly rolls: 'balls' | 'rollers'
  /** What keeps the balls apart: nothing, in a ring that is full of them, or a cage that holds fewer of them evenly. */
  readonly ballSet: 'full' | 'caged'
  /** What it rolls in: a groove with its lands, or a plain cylinder. */
  readonly raceway: 'groove' | 'track'
  /** What a design of this arrangement has not; giving it is refused. */
  readonly lacks: readonly Pointer[]
  readonly answers: readonly Question[]
}

/** A JSON pointer, ready to be walked. */
interface Pointer {
  readonly path: string
  readonly names: readonly string[]
}

const at = (...paths: readonly string[]): readonly Pointer[] =>
  paths.map((path) => ({ path, names: path.slice(1).split('/') }))

/** What only rollers have. */
const OF_ROLLERS = at('/balls/length')
const OF_PLATES = at('/plates')
const OF_CAGES = at('/cage')
/** What only a full ring has: the gap that is left in it. */
const OF_FULL_RINGS = at('/ballGap', '/minBallGap', '/maxBallGap')
/** What only a groove in a ring has, and a ring that must come apart for it. */
const OF_RING_GROOVES = at(
  '/outerRing/engagement',
  '/outerRing/grooveDepth',
  '/outerRing/groove',
  '/innerRing',
  '/groove',
  '/split',
)
/** What only rings have. */
const OF_RINGS = at('/outerRing', '/innerRing', '/radialInternalClearance', '/width', '/split')

/** What every ring of balls that closes can be asked. */
const OF_ALL_FULL_RINGS = [
  'design',
  'size-table',
  'tolerance-check',
  'fit-correction',
  'ball-selection',
  'load-check',
  'job-sheet',
  'drawings',
] as const satisfies readonly Question[]

const TRAITS: Readonly<Record<ArrangementName, Arrangement>> = {
  radial: {
    members: 'rings',
    rolls: 'balls',
    ballSet: 'full',
    raceway: 'groove',
    lacks: [...OF_ROLLERS, ...OF_PLATES, ...OF_CAGES],
    answers: QUESTIONS,
  },
  thrust: {
    members: 'plates',
    rolls: 'balls',
    ballSet: 'full',
    raceway: 'groove',
    lacks: [...OF_ROLLERS, ...OF_CAGES, ...OF_RINGS],
    answers: OF_ALL_FULL_RINGS,
  },
  roller: {
    members: 'rings',
    rolls: 'rollers',
    ballSet: 'full',
    raceway: 'track',
    lacks: [...OF_PLATES, ...OF_CAGES, ...OF_RING_GROOVES],
    answers: OF_ALL_FULL_RINGS,
  },
  caged: {
    members: 'rings',
    rolls: 'balls',
    ballSet: 'caged',
    raceway: 'groove',
    lacks: [...OF_ROLLERS, ...OF_PLATES, ...OF_FULL_RINGS],
    answers: ['design', 'fit-correction', 'load-check', 'job-sheet', 'drawings'],
  },
}

/** What is taken where nobody says. */
const USUAL: ArrangementName = 'radial'

export const nameOf = ({ arrangement }: { readonly arrangement?: ArrangementName }): ArrangementName =>
  arrangement ?? USUAL

export const traitsOf = (design: { readonly arrangement?: ArrangementName }): Arrangement => TRAITS[nameOf(design)]
