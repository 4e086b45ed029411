import type { Split } from '#shared/bearing/fields.ts'
import type { Method } from '#shared/bearing/method.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { STOP_TO_MEASURE } from '#src/words/caution.ts'
import { figure } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'
import {
  AT_THE_LATHE,
  BLOCK_ON_TRACK,
  ENTER_READINGS,
  HOLLOW_EDGE,
  LAYOUT_CHECK,
  laidOn,
  MARK_MANDREL,
  type MandrelFacts,
  mandrelWords,
  type OperationWords,
  OVER_A_DOWEL,
  PRINT_TWICE,
  PROFILE_SHORT,
  TURNED_BORE_TOOLS,
  turnBore,
} from './operation.ts'

/* Making an inner ring, from the board to the play. Tracks are in `rollers.ts`. */

const BLANK_TOOL: Readonly<Record<Method, string>> = {
  'saw-and-lathe': 'saw, plane',
  'lathe-only': 'saw, plane',
  'router-and-lathe': 'router on a circle jig',
}
const CUT_OUT = 'along the dashed line: the lathe takes the rest.'

interface InnerFacts {
  readonly isSplit: boolean
  readonly isSegmented: boolean
  /** Whether a bit is as wide as the bore. */
  readonly isBored: boolean
}

export const innerBlank = (machines: Method, { isSplit, isSegmented, isBored }: InnerFacts): OperationWords => ({
  title: isSplit ? 'Cut the two discs of the inner ring' : 'Cut the disc of the inner ring',
  tool: `${BLANK_TOOL[machines]}, ${isBored ? 'drill press, a bit as wide as the bore' : TURNED_BORE_TOOLS}`,
  how: `${isSplit ? `${PRINT_TWICE} ` : ''}Lay out ${isSplit ? 'both discs' : 'the disc'} from the template, ${laidOn(isSegmented)}. ${
    isBored
      ? `Bore the centre${isSplit ? ' of both, one on top of the other' : ''}, then cut ${CUT_OUT}`
      : `Cut ${CUT_OUT} ${turnBore(isSplit ? 'both discs, one on the other,' : 'the disc', isSegmented)}`
  }`,
  check: LAYOUT_CHECK,
  mistake: {
    looksLike: 'The bore is not square to the face: the ring runs out.',
    costs: 'You lose the disc.',
    remedy: isBored
      ? 'Bore it before you cut it round, while you can still clamp it.'
      : 'Turn face and bore at one setting.',
  },
})

export const innerOutside = (mandrel: MandrelFacts): OperationWords => ({
  title: 'Turn the outside of the inner ring',
  tool: `lathe, ${mandrelWords(mandrel).tool}, gouge and scraper, outside caliper`,
  how: `${mandrelWords(mandrel).how} Turn it down to the line. Write down its diameter: the groove is measured from here.`,
  check: `Measure it with the caliper in two directions. ${HOLLOW_EDGE}`,
  mistake: {
    looksLike: 'The outside is too small, and the groove is cut to its depth all the same.',
    costs: 'Too much play.',
    remedy: 'Cut the groove to its bottom diameter, not to its depth.',
  },
})

const SCORE = 'Score the middle with a pencil while the ring turns, before the tool goes in.'

/** Effects of a groove beside the middle. */
const OFF_THE_MIDDLE = {
  radial: (isSplit: boolean) =>
    isSplit
      ? {
          looksLike: 'The groove is off the middle: one half closes, and the other does not.',
          costs: 'You lose both halves.',
          remedy: SCORE,
        }
      : {
          looksLike: 'The groove is off the middle: the rings do not stand flush.',
          costs: 'You lose the ring.',
          remedy: SCORE,
        },
  caged: () => ({
    looksLike: 'The groove is off the middle: the rings do not stand flush, and the cage rubs on one side.',
    costs: 'You lose the ring.',
    remedy: SCORE,
  }),
} as const

export const innerGroove = (arrangement: keyof typeof OFF_THE_MIDDLE, isSplit: boolean): OperationWords => ({
  title: 'Cut the groove of the inner ring, short of its depth',
  tool: 'lathe, scraper ground to the groove radius, outside caliper',
  how: `Cut straight in, at mid width${isSplit ? ', on the line between the halves' : ''}. Stop short of the depth: you sand the rest to fit. ${STOP_TO_MEASURE} ${MARK_MANDREL}`,
  check: PROFILE_SHORT,
  mistake: OFF_THE_MIDDLE[arrangement](isSplit),
})

const TRAVEL =
  'Push the ring to one side, then to the other, and measure the whole travel, in two directions: with a dial indicator against it, or with feelers between the rings at one place, where the difference between both is the travel.'

/** Travel on three balls differs by direction: only that towards a ball is a fixed multiple of the play. */
function travelOnThree(perPlay: number): string {
  const times = Number(perPlay.toFixed(2))
  return `Push the inner ring towards one ball, then straight away from it, and measure the whole travel with a dial indicator or feelers. Do the same at the other two balls. With three balls in, that travel is ${times} times the play: divide it by ${times}, and write down what comes out.`
}

const FEEL = 'Turn it by hand and feel for play from side to side.'
const FIT_TOOL = 'hands, a dial indicator or feelers'
const GROOVE_BINDS = {
  looksLike: 'It binds at one place in every turn: a groove is not round, or one ball is large.',
  costs: 'It dents or splits if you force it.',
  remedy: 'Do not force it. Find the ball first, then sand.',
}

/** How a full ring of balls comes between the rings, by what is split. */
const BALLS_IN: Readonly<Record<Split, string>> = {
  none: 'Lay the balls in the outer ring, and put the inner ring between them.',
  'inner-ring': 'Lay the balls in the outer ring, and close the halves of the inner ring in from both sides.',
  'outer-ring': 'Lay the balls round the inner ring, and close the halves of the outer ring over them.',
}

/** How three balls come in, which stand by themselves: without the cage, more of them would gather at one side. */
const THREE_IN: Readonly<Record<Split, string>> = {
  none: 'Push the inner ring to one side of the outer ring, and drop three balls into the wide side. Bring the inner ring to the middle, and spread the balls a third of a turn apart.',
  'inner-ring':
    'Set three balls in the groove of the outer ring, a third of a turn apart, each on a dab of wax. Close the halves of the inner ring in from both sides.',
  'outer-ring':
    'Set three balls round the inner ring, a third of a turn apart, each on a dab of wax. Close the halves of the outer ring over them.',
}

export const INNER_FIT = {
  radial: (split: Split): OperationWords => ({
    title: 'Try the inner ring in the outer ring, with the balls',
    tool: FIT_TOOL,
    how: `${BALLS_IN[split]} ${FEEL}`,
    check: TRAVEL,
    mistake: GROOVE_BINDS,
  }),
  caged: (split: Split, perPlay: number): OperationWords => ({
    title: 'Try the inner ring in the outer ring, with three balls',
    tool: FIT_TOOL,
    how: `${THREE_IN[split]} Feel for play towards each ball, with your hand over it.`,
    check: travelOnThree(perPlay),
    mistake: GROOVE_BINDS,
  }),
  roller: (): OperationWords => ({
    title: 'Try the inner ring in the outer ring, with the rollers',
    tool: FIT_TOOL,
    how: `Lay the outer ring flat on the bench, and stand the rollers in it. Let the inner ring down between them. ${FEEL}`,
    check: TRAVEL,
    mistake: {
      looksLike: 'It binds at one place in every turn: a track is not round, or one roller is large.',
      costs: 'It dents or splits if you force it.',
      remedy: 'Do not force it. Find the roller first, then sand.',
    },
  }),
} as const

const BACK = 'Put the ring back on its mandrel, mark against mark.'
const BY_READINGS = `${ENTER_READINGS} Remove what it says, stop the lathe, clean out the dust, put the bearing together again, and measure.`

interface SandFacts {
  /** The play that is good, as it is measured in this step. */
  readonly play: { readonly min: Mm; readonly max: Mm }
  readonly isSplit: boolean
  /** Whether a finish is still to come, which the figures leave room for. */
  readonly isBare: boolean
  readonly units: Units
}

/** The same of a groove and of a track, but for the tool. */
function sand({ raceway, element }: Terms, { play, isSplit, isBare, units }: SandFacts) {
  const most = `${figure(play.max, units)}${isBare ? ' before the finish' : ''}`
  return {
    title: `Sand the ${raceway.one} of the inner ring to fit`,
    check: `It turns freely all the way round, and its play is from ${figure(play.min, units)} to ${most}. The play decides, not the caliper: uneven ${element.many} take some of it, and then the ${raceway.one} must go past its drawn size.`,
    mistake: {
      looksLike: `The play is more than ${most}.`,
      costs: 'The bearing rattles.',
      remedy: `Look under ${AT_THE_LATHE} before you make a new inner ring: it says what can still be done${isSplit ? ', such as sanding the mating faces of the halves' : ''}.`,
    },
  }
}

export const INNER_SAND = {
  groove: (terms: Terms, facts: SandFacts): OperationWords => ({
    ...sand(terms, facts),
    how: `${BACK} ${OVER_A_DOWEL} ${BY_READINGS}`,
    tool: 'lathe, strips of abrasive, a dowel for the groove',
  }),
  track: (terms: Terms, facts: SandFacts): OperationWords => ({
    ...sand(terms, facts),
    how: `${BACK} ${BLOCK_ON_TRACK} ${BY_READINGS}`,
    tool: 'lathe, abrasive on a narrow block with a handle',
  }),
} as const
