import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import type { Split } from '#shared/bearing/fields.ts'
import { turnRatios } from '#shared/questions/load/speeds.ts'
import { mm } from '#shared/units/length.ts'
import { DISC_BY, type Job, LAYOUT_CHECK, type Operation, sawLine, size } from './operation.ts'

/* What is done otherwise where a cage holds fewer balls than fill the ring. Common practice, no source, as all of the sheet. */

export type CagedJob = Job<CagedDesign>

/** The same choice; here one large ball does the harm, not the mean. */
export const evenBalls = ({ design }: CagedJob, choice: Operation): Operation => ({
  ...choice,
  mistake: {
    ...choice.mistake,
    costs: `Little, for the inner ring is turned to what comes out. One ball larger than the other ${design.bearing.settled.input.balls.count - 1} carries everything: change it.`,
  },
  readings: [],
})

/** The same turning; no gap hangs on the hole, but the cage runs in it. */
export const holeForCage = (inside: Operation): Operation => ({
  ...inside,
  mistake: {
    looksLike: 'A hole that is too large, with the groove cut to its depth all the same.',
    costs: 'Play, and a cage that hangs loose. Cut the groove to its bottom diameter, and turn the cage to the hole.',
  },
})

export function plugGroove(job: CagedJob): Operation {
  const { count } = job.design.bearing.settled.input.balls
  return {
    id: 'outer-groove',
    part: 'outer-ring',
    title: 'Cut the groove of the outer ring',
    tool: 'lathe, scraper ground to the groove radius, inside caliper, the plug',
    how: `At mid width, straight in, then sanded smooth. Near its depth, lay the ${count} balls in, spread evenly, and try the plug between them. Write down what it came to: the inner ring is made to that.`,
    sizes: [
      size(job, 'outerRing.grooveRadius', 'groove radius'),
      size(job, 'outerRing.grooveDepth', 'groove depth'),
      size(job, 'outerRing.grooveBottomDiameter', 'across the bottoms'),
      size(job, 'plugDiameter', 'plug, just enters'),
    ],
    check: 'The profile of the gauge sheet: its shoulders meet the land all the way round.',
    mistake: {
      looksLike: 'A groove that came out deeper than drawn.',
      costs:
        'Nothing yet: no gap opens between balls that a cage holds. Make the inner ring larger, all round, by as much.',
    },
    cautions: ['turning', 'sanding-inside', 'dust'],
    readings: [],
  }
}

/** How three balls come in, which stand by themselves: fewer than fill the ring would gather at one side without the cage. */
const THREE_IN: Readonly<Record<Split, string>> = {
  none: 'Push the inner ring to one side of the outer one, drop three balls into the wide side, bring it to the middle and spread them to thirds.',
  'inner-ring':
    'Three balls in the groove of the outer ring, spread to thirds, a dab of wax under each; close the halves of the inner ring in from both sides.',
  'outer-ring':
    'Three balls round the inner ring, spread to thirds, a dab of wax under each; close the halves of the outer ring over them.',
}

/** The same trial: the cage is not there yet. */
export const threeBalls = ({ design }: CagedJob, fit: Operation): Operation => ({
  ...fit,
  how: `${THREE_IN[design.bearing.settled.split]} Feel for play, side to side, with a ball under the hand.`,
})

export function cageRing(job: CagedJob): Operation {
  const { cage } = job.design.bearing
  const outside = size(job, 'cage.outsideDiameter', 'outside')
  const { tool, round, cautions } = DISC_BY[job.method]
  const width = size(job, 'cage.width', cage.pieces === 2 ? 'thickness of both together' : 'thickness')
  return {
    id: 'cage-ring',
    part: 'cage',
    title: cage.pieces === 2 ? 'Make the two rings of the cage' : 'Make the ring of the cage',
    tool: `${tool}, ply or a tough wood`,
    how: `${cage.pieces === 2 ? 'Pin two discs together, each half as thick, the grain of one across the other; mark the pair across the edge. ' : ''}Bore it while it can still be clamped, then ${round} about the hole.`,
    sizes: [outside, ...sawLine(job, outside), size(job, 'cage.boreDiameter', 'bore'), width],
    check: `${LAYOUT_CHECK} Laid between the rings it has room to both lands, all the way round.`,
    mistake: {
      looksLike: 'A ring cut to the lands as drawn, when the lands came out otherwise.',
      costs: 'A cage that rubs: measure both lands first, and leave the clearance to each.',
    },
    cautions,
    readings: [],
  }
}

export function pockets(job: CagedJob): Operation {
  const { cage, settled } = job.design.bearing
  const { count } = settled.input.balls
  return {
    id: 'cage-pockets',
    part: 'cage',
    title: `Drill the ${count} pockets`,
    tool: 'drill press, a Forstner bit of the size or the next larger one, a cradle that holds the ring on edge',
    how: `Carry the ${count} lines of the template over the edge with a square. At mid width, towards the centre, a pilot hole first; back the ring up from inside so that the bore does not tear.`,
    sizes: [size(job, 'cage.pocketDiameter', 'pockets'), size(job, 'cage.web', 'least wood between two')],
    check: 'Every ball falls through its pocket by its own weight; the webs are alike to the eye.',
    mistake: {
      looksLike: 'A pocket off its line: one thick web and one thin.',
      costs: `The thin web breaks first. Below ${job.say(mm(cage.web / 2))} make a new ring.`,
    },
    cautions: ['drilling', 'dust'],
    readings: [],
  }
}

/** The last of all: the cage is opened again only where it is screwed. */
export function fill({ design, say }: CagedJob): Operation {
  const { cage, settled, ballSpacing, fillingAngle } = design.bearing
  const { count } = settled.input.balls
  const aside = settled.split === 'none'
  return {
    id: 'fill',
    part: 'both',
    title: aside ? 'Fill the rings, and close the cage over the balls' : 'Put the balls in through the cage',
    tool: aside ? 'hands, thin screws or pegs through the webs' : 'hands',
    how: aside
      ? `Outer ring flat, inner ring pushed all the way to one side. Drop the ${count} balls into the wide side and push them together, over ${Math.round(fillingAngle)} degrees; bring the inner ring to the middle, spread the balls evenly, and close the halves of the cage over them from both sides. Hold them by thin screws through the webs, which can be taken out again, or by pegs once it runs as it should.`
      : settled.split === 'inner-ring'
        ? 'Stand the cage in the outer ring and push a ball out through each pocket into the groove; then close the halves of the inner ring in from both sides.'
        : 'Slip the cage over the inner ring and push a ball in through each pocket into its groove; then close the halves of the outer ring over the balls.',
    sizes: [{ name: 'between neighbouring balls', value: ballSpacing }],
    check: `It turns freely. The cage goes round with the balls, some ${cageTurns(design)} times while the inner ring turns ten times; it may lie on a land, but is pinched nowhere.`,
    mistake: {
      looksLike: aside
        ? `The last ball does not go in: the lands stand too close, or a ball lies short of the end.`
        : 'A ball that slips back into the bore while the ring is closed.',
      costs: aside
        ? `Do not force it: the ring splits. ${cage.pieces === 2 ? `A land turned ${say(mm(settled.ballDiameter / 50))} back lets it in.` : ''}`.trim()
        : 'Time. A dab of wax holds it.',
    },
    cautions: settled.input.balls.material === 'glass' ? ['glass-balls'] : [],
    readings: [],
  }
}

const TURNS = 10

/** Of ten turns of the inner ring, the outer one held: fewer than half of them, the more so the fewer the balls. */
function cageTurns({ bearing: { pitchRadius: pitch, settled } }: CagedDesign): number {
  const { ballDiameter, input } = settled
  const radii = { outer: pitch + ballDiameter / 2, pitch, inner: pitch - ballDiameter / 2 }
  return Math.round(TURNS * turnRatios(radii, input.balls.count, 'inner-ring').ballSet)
}
