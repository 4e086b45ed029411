import type { Method } from '#shared/bearing/method.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { STOP_TO_MEASURE } from '#src/words/caution.ts'
import { figure, giveOrTake } from '#src/words/figure.ts'
import type { PlugFacts } from '#src/words/plugs.ts'
import type { Terms } from '#src/words/terms.ts'
import {
  AT_THE_LATHE,
  BLOCK_ON_TRACK,
  ENTER_READINGS,
  FULL_LINE_STAYS,
  type GapFacts,
  HELD_OUTSIDE,
  HOLLOW_EDGE,
  LAYOUT_CHECK,
  LAYOUT_TOOL,
  layTemplate,
  MARK_CHUCK,
  type OperationWords,
  OVER_A_DOWEL,
  PROFILE_SHORT,
  RECHUCK,
  ROUND_EDGE,
  ROUND_EDGE_AT_END,
} from './operation.ts'

/* Making an outer ring, from the board to the groove. Tracks are in `rollers.ts`. */

/** The rollers are there first: wood is planed to them more easily than many of them are cut alike again. */
const planedToRollers = (axialPlay: Mm, units: Units): string =>
  `Measure how long the rollers came out, and plane the ring ${figure(axialPlay, units)} thicker than that.`

export const outerLayout = (facts: {
  readonly outside: Mm
  /** The error of that size on a page printed at 97 %. */
  readonly lost: Mm
  readonly units: Units
  readonly isSegmented: boolean
  /** Two where the ring is split. */
  readonly pieces: number
  /** Room of rollers along the axis, which the ring is planed to. */
  readonly axialPlay: Mm | undefined
}): OperationWords => ({
  title: 'Lay out the outer ring',
  tool: LAYOUT_TOOL,
  how: `${facts.axialPlay === undefined ? '' : `${planedToRollers(facts.axialPlay, facts.units)} `}${layTemplate(facts.isSegmented, 'Punch the centre deep.', facts.pieces)}`,
  check: LAYOUT_CHECK,
  mistake: {
    looksLike: 'The template was printed to fit the page: every circle is a few per cent too small.',
    costs: `You lose the blank. On a page printed at 97 %, the outside of ${figure(facts.outside, facts.units)} is ${figure(facts.lost, facts.units)} too small.`,
    remedy: 'Measure its bars before you glue it on, and print it again at 100 %.',
  },
})

const BORE_CENTRE = 'Bore the centre square to the face, as wide as the screw of the chuck needs.'

/** There is a hole for the blade where the core is sawn out. */
export const outerBore = (hasBladeHole: boolean): OperationWords => ({
  title: hasBladeHole ? 'Bore the holes for the chuck and the blade' : 'Bore the hole for the chuck',
  tool: 'drill press, sharp bits, a try square, a screw chuck',
  how: hasBladeHole
    ? `${BORE_CENTRE} If you will saw the core out, bore the hole for the blade inside the core, clear of its line.`
    : BORE_CENTRE,
  check: 'Hold a try square against the bit, in two directions.',
  mistake: {
    looksLike: 'The blank wobbles on its chuck.',
    costs: 'You lose thickness.',
    remedy: 'Turn the faces true again.',
  },
})

export const outerSaw = ({ raceway }: Terms): OperationWords => ({
  title: 'Saw the disc out',
  tool: 'band saw or scroll saw',
  how: 'Saw along the dashed line, in the waste. Leave the full line on the blank.',
  check: FULL_LINE_STAYS,
  mistake: {
    looksLike: 'Part of the full line is gone.',
    costs: `The outside comes out smaller, with less wood behind the ${raceway.one}.`,
    remedy: 'Turn it true, measure it, and design the bearing again with that outside.',
  },
})

export const outerOutside = (
  machines: Method,
  { isOnDisc, leavesSides }: { readonly isOnDisc: boolean; readonly leavesSides: boolean },
  { raceway }: Terms,
): OperationWords => ({
  title: 'Turn the outside of the outer ring',
  tool: 'lathe, gouge and scraper, outside caliper',
  how: [
    ...(machines === 'lathe-only' ? ['First knock the corners off the blank by hand.'] : []),
    isOnDisc ? 'Mount the disc of waste wood on the lathe.' : 'Mount the blank on the screw chuck.',
    ...(leavesSides ? ['True the face.'] : []),
    'Turn the outside down to the line.',
  ].join(' '),
  check: `Measure it with the caliper in two directions. ${HOLLOW_EDGE}`,
  mistake: {
    looksLike: 'The outside is not round.',
    costs: `Only its looks, as long as the wood behind the ${raceway.one} is as thick as designed, and it still fits its seat.`,
    remedy: 'Sharpen the tool, take one more light cut, and measure again.',
  },
})

type Core = Readonly<Record<'sawn' | 'parted' | 'turned', Pick<OperationWords, 'tool' | 'how'>>>
const PART_OFF = `${HELD_OUTSIDE} Part from both faces, half way from each, well inside the line. Leave a thin web, stop the lathe, and break the web by hand.`
const CORE: Core = {
  sawn: {
    tool: 'parting tool, ring held by its outside; or scroll saw or jigsaw',
    how: `${PART_OFF} With a scroll saw or jigsaw instead, start in the hole for the blade, and saw along the inner dashed line. Leave the full line on the ring.`,
  },
  parted: { tool: 'parting tool, ring held by its outside', how: PART_OFF },
  turned: {
    tool: 'lathe, ring held by its outside, scraper',
    how: `${HELD_OUTSIDE} The core is too small to saw or part out: open the hole in the centre as wide as the core, with light cuts.`,
  },
}

/** The loss through a cut over the line: the land of a groove, or a track. */
const LOST_HOLE: Readonly<Record<'groove' | 'track', string>> = {
  groove: 'You lose the ring: its hole is the land from which the groove is measured.',
  track: 'You lose the ring: the wood at that line is to become the track.',
}

export const outerCore = (way: keyof Core, raceway: 'groove' | 'track'): OperationWords => ({
  title: 'Take out the core',
  ...CORE[way],
  check: FULL_LINE_STAYS,
  mistake: {
    looksLike: 'The cut crosses the full line.',
    costs: LOST_HOLE[raceway],
    remedy: 'Cut a new blank, and stay well inside the line.',
  },
})

export const OUTER_ROUTED: OperationWords = {
  title: 'Rout the outer ring',
  tool: 'router on a circle jig, straight bit, sanding block',
  how: 'Rout the outside first, then the hole, in passes no deeper than half the width of the bit. Keep a thin web under the last pass of each circle, break the wood out by hand, and sand the edges.',
  check: 'The full line of the hole is still there all the way round.',
  mistake: {
    looksLike: 'The jig is set to the wrong side of the bit: the circle is wrong by the width of the bit.',
    costs: 'You lose the ring.',
    remedy: 'Rout a shallow circle in the waste first, and measure it.',
  },
}

const OPEN_HOLE =
  'Open the hole until the line just disappears. Write down its diameter: the groove is measured from here.'
const INSIDE: Omit<OperationWords, 'mistake'> = {
  title: 'Turn the hole to the line',
  tool: 'lathe, ring held by its outside, scraper, inside caliper',
  how: `${HELD_OUTSIDE} ${OPEN_HOLE}`,
  check: `Measure it with the inside caliper in two directions. ${ROUND_EDGE}`,
}
/** A ring of segments is held by the disc that it is glued to. */
export const ON_ITS_DISC = { tool: 'lathe, ring on its disc of waste wood, scraper, inside caliper', how: OPEN_HOLE }

export const OUTER_INSIDE = {
  radial: (facts: GapFacts): OperationWords => ({
    ...INSIDE,
    mistake: {
      looksLike: `A hole that is ${figure(facts.over, facts.units)} too large opens the gap by ${figure(facts.opens, facts.units)}, if you then cut the groove to its depth all the same.`,
      costs: 'Nothing yet.',
      remedy: 'Cut the groove to its bottom diameter, not to its depth.',
    },
  }),
  caged: (): OperationWords => ({
    ...INSIDE,
    mistake: {
      looksLike: 'The hole is too large, and the groove is cut to its depth all the same.',
      costs: 'Too much play, and a cage that hangs loose.',
      remedy: 'Cut the groove to its bottom diameter, and turn the cage to fit the hole.',
    },
  }),
} as const

export const OUTER_GROOVE = {
  radial: (facts: GapFacts): OperationWords => ({
    title: 'Cut the groove of the outer ring, short of its depth',
    tool: 'lathe, scraper ground to the groove radius, inside caliper',
    how: `Cut straight in, at mid width. Stop short of the depth: you sand the rest to fit, between trials of the balls. ${STOP_TO_MEASURE} ${MARK_CHUCK}`,
    check: PROFILE_SHORT,
    mistake: {
      looksLike: `Each ${figure(facts.over, facts.units)} too deep opens the gap by ${figure(facts.opens, facts.units)}.`,
      costs: 'You cannot put wood back.',
      remedy: `Larger balls, a spacer or a new ring can still save the bearing: ${AT_THE_LATHE} works out which.`,
    },
  }),
  /** With a cage the balls stand apart: a plug tells the depth. */
  caged: ({ count }: { readonly count: number }): OperationWords => ({
    title: 'Cut the groove of the outer ring',
    tool: 'lathe, scraper ground to the groove radius, inside caliper, strips of abrasive, a dowel for the groove, the plug',
    how: `Cut straight in, at mid width, and stop short of the depth. ${STOP_TO_MEASURE} ${MARK_CHUCK} Lay the ring flat, packed up so that the balls lie at mid groove, spread the ${count} balls evenly, and try the plug between them. ${RECHUCK} ${OVER_A_DOWEL} After every few strokes stop the lathe and try the plug again, until it just enters. Write the diameter that you end at on the ring: you make the inner ring to that.`,
    check: 'Hold the profile of the gauge sheet in the groove: its shoulders must meet the land all the way round.',
    mistake: {
      looksLike: 'The groove came out deeper than drawn.',
      costs: 'Nothing yet: the cage keeps the balls apart, and no gap opens.',
      remedy: 'Make the inner ring larger by as much, all round.',
    },
  }),
} as const

interface FitFacts {
  readonly count: number
  readonly ballGap: Mm
  readonly units: Units
}

const MEASURE_GAP = 'push them together, and measure the gap between the last and the first.'

/** Trying what rolls in the outer ring of a full ring. */
export const OUTER_FIT = {
  radial: (facts: FitFacts): OperationWords => ({
    title: 'Try the balls',
    tool: 'the balls, a rule or feelers',
    how: `Lay the ring flat on the bench, packed up so that the balls lie at mid groove. Lay in all the balls that go in, ${MEASURE_GAP} If the last ball does not go in, measure the opening where it should go.`,
    check: `All ${facts.count} balls are in, and you have measured the gap three times.`,
    mistake: {
      looksLike: 'A ball stands high while you measure: the gap reads too small.',
      costs: 'You cut once too often.',
      remedy: `Press every ball down, and measure again. At a gap of ${figure(facts.ballGap, facts.units)} the ring is done.`,
    },
  }),
  roller: (facts: FitFacts): OperationWords => ({
    title: 'Try the rollers',
    tool: 'the rollers, a rule or feelers',
    how: `Lay the ring flat on the bench. Stand all the rollers that go in on end in it, ${MEASURE_GAP} If the last roller does not go in, measure the opening where it should go.`,
    check: `All ${facts.count} rollers are in, and you have measured the gap three times.`,
    mistake: {
      looksLike: 'A roller leans while you measure: the gap reads too small.',
      costs: 'You cut once too often.',
      remedy: `Stand every roller upright, and measure again. At a gap of ${figure(facts.ballGap, facts.units)} the ring is done.`,
    },
  }),
} as const

interface SandFacts {
  readonly minBallGap: Mm
  readonly maxBallGap: Mm
  /** Whether a finish is still to come, which the figures leave room for. */
  readonly isBare: boolean
  readonly noGo: Mm
  readonly plugs: PlugFacts
  readonly units: Units
}

/** When it is finished: by the plugs where they can tell, and else by the rule. */
function finished({ element, raceway }: Terms, { minBallGap, maxBallGap, isBare, noGo, plugs, units }: SandFacts) {
  const most = `${figure(maxBallGap, units)}${isBare ? ' before the finish' : ''}`
  if (plugs.decides)
    return {
      check: `The last ${element.one} goes in, the go plug enters between the seated ${element.many}, and the no-go plug does not: the gap is at most ${most}.`,
      looksLike: `The no-go plug of ${figure(noGo, units)} enters.`,
    }
  const band = minBallGap > 0 ? `between ${figure(minBallGap, units)} and ${most}` : `at most ${most}`
  return {
    check: `The last ${element.one} goes in, and the gap, measured with a rule or feelers, is ${band}. The plugs cannot tell you that the ${raceway.one} is finished: with these ${element.many} the go plug just enters at a gap of ${giveOrTake(plugs.whenGoEnters, units)}.`,
    looksLike: `The gap is more than ${most}.`,
  }
}

/** Plugs that decide nothing need not be there. */
const triedWith = ({ plugs }: SandFacts): string => `${plugs.decides ? 'the two plugs, ' : ''}a rule or feelers`

const sand = (terms: Terms, facts: SandFacts, over = '') => ({
  title: `Sand the ${terms.raceway.one} of the outer ring to fit`,
  how: `${RECHUCK}${over} ${ENTER_READINGS} Remove what it says, stop the lathe, clean out the dust, and measure again. Count the strokes: ${AT_THE_LATHE} learns how much one stroke removes.`,
  check: finished(terms, facts).check,
  mistake: {
    looksLike: finished(terms, facts).looksLike,
    costs: `The ${terms.raceway.one} is ${terms.tooFar}, and no wood comes back.`,
    remedy: `Look under ${AT_THE_LATHE}: it says how to save the bearing.`,
  },
})

export const OUTER_SAND = {
  radial: (terms: Terms, facts: SandFacts): OperationWords => ({
    ...sand(terms, facts, ` ${OVER_A_DOWEL}`),
    tool: `lathe, strips of abrasive, a dowel for the groove, ${triedWith(facts)}`,
  }),
  roller: (terms: Terms, facts: SandFacts): OperationWords => ({
    ...sand(terms, facts, ` ${BLOCK_ON_TRACK} ${ROUND_EDGE_AT_END}`),
    tool: `lathe, abrasive on a narrow block with a handle, ${triedWith(facts)}`,
  }),
} as const
