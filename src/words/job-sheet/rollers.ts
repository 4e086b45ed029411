import type { Method } from '#shared/bearing/method.ts'
import type { CheekScrews } from '#shared/making/split-ring.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { STOP_TO_MEASURE } from '#src/words/caution.ts'
import { figure } from '#src/words/figure.ts'
import { screwHoles, screwTools } from './joints.ts'
import {
  AT_THE_LATHE,
  BARS_FIRST,
  CIRCLES_CHECK,
  type GapFacts,
  HELD_OUTSIDE,
  MARK_CHUCK,
  MARK_MANDREL,
  type MandrelFacts,
  mandrelWords,
  NO_EDGE_YET,
  type OperationWords,
  RING_BY,
  SET_BY_STOP_BLOCK,
} from './operation.ts'

/* Turning the tracks of a roller bearing, and its cheeks. */

export const outerTrack = (facts: GapFacts): OperationWords => ({
  title: 'Turn the track of the outer ring, short of its size',
  tool: 'lathe, ring held by its outside, scraper, inside caliper',
  how: `${HELD_OUTSIDE} Turn straight through, moving the tool along the axis: on a track that tapers the rollers run askew. Stop short of the size: you sand the rest to fit, with the rollers in. ${STOP_TO_MEASURE} ${MARK_CHUCK}`,
  check: `Measure it with the inside caliper, ${SET_BY_STOP_BLOCK}, at both ends, in two directions. ${NO_EDGE_YET}`,
  mistake: {
    looksLike: `Each ${figure(facts.over, facts.units)} too much all round opens the gap by ${figure(facts.opens, facts.units)}.`,
    costs: 'You cannot put wood back.',
    remedy: `Thicker rollers, a spacer or a new ring can still save the bearing: ${AT_THE_LATHE} works out which.`,
  },
})

export const innerTrack = (mandrel: MandrelFacts): OperationWords => ({
  title: 'Turn the track of the inner ring, short of its size',
  tool: `lathe, ${mandrelWords(mandrel).tool}, gouge and scraper, outside caliper`,
  how: `${mandrelWords(mandrel).how} Turn it straight along the axis. Stop short of the size: you sand the rest to fit. ${STOP_TO_MEASURE} ${MARK_MANDREL}`,
  check: `Measure it with the outside caliper, ${SET_BY_STOP_BLOCK}, at both ends, in two directions. ${NO_EDGE_YET}`,
  mistake: {
    looksLike: 'The track is thinner at one end.',
    costs: 'Play at that end, and rollers that run askew.',
    remedy: 'Set the tool parallel to the axis, and take the last pass again while there is wood.',
  },
})

export function cheeks(facts: {
  readonly machines: Method
  readonly axialPlay: Mm
  /** The screws of the cheeks, if there is room for any. */
  readonly screws: CheekScrews | undefined
  /** The screw that the maker chose, by name. */
  readonly requested: string | undefined
  readonly units: Units
}): OperationWords {
  const { tool, how } = RING_BY[facts.machines]
  const { screws } = facts
  const fastened = screws
    ? `The screws go into the outer ring, clear of its track, those of one cheek between those of the other. ${screwHoles(screws, 'the cheek')}.`
    : `There is no room for ${facts.requested === undefined ? 'a wood screw' : `a ${facts.requested} screw`} in cheek and ring: drill for thin pins, and glue them into the ring alone.`
  return {
    title: screws
      ? `Make the two cheeks, and screw each on with ${screws.count} wood screws ${screws.name}`
      : 'Make the two cheeks, and fasten them',
    tool: `${tool}, ${screws ? screwTools(screws, facts.units, 2) : 'fine saw, drill press, thin pins, glue'}`,
    how: `${BARS_FIRST} Make each cheek like this. ${how('hole', false)} ${fastened} Brush out the chips, ${screws ? 'screw' : 'pin'} one cheek on, lay the ring on it, put in the inner ring and the rollers, and ${screws ? 'screw' : 'lay'} the other cheek on.`,
    check: `${CIRCLES_CHECK} With both cheeks on, the rollers and the inner ring must still move ${figure(facts.axialPlay, facts.units)} along the axis.`,
    mistake: {
      looksLike: 'A cheek is not flat: the inner ring drags at one place in every turn.',
      costs: 'Little: the bearing drags.',
      remedy: 'Plane the cheek, or put paper under it.',
    },
  }
}
