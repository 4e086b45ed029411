import type { Split } from '#shared/bearing/fields.ts'
import type { Method } from '#shared/bearing/method.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from '#src/words/figure.ts'
import { BARS_FIRST, CIRCLES_CHECK, type OperationWords, RING_BY } from './operation.ts'

/* Making a cage, and putting the balls in through it. */

interface CageRingFacts {
  readonly pieces: 1 | 2
  readonly isSegmented: boolean
  /** Over the diameter, from the land of the outer ring and of the inner one. */
  readonly outerClearance: Mm
  readonly innerClearance: Mm
  readonly units: Units
}

export function cageRing(machines: Method, facts: CageRingFacts): OperationWords {
  const { pieces, isSegmented, units } = facts
  const { tool, how } = RING_BY[machines]
  const words = `${how('bore', isSegmented)} Turn it to the lands as they are now: the outside ${figure(facts.outerClearance, units)} smaller than the hole of the outer ring, and the bore ${figure(facts.innerClearance, units)} larger than the outside of the inner ring.`
  return {
    title: pieces === 2 ? 'Make the two rings of the cage' : 'Make the ring of the cage',
    tool: `${tool}, plywood or a tough wood`,
    how:
      pieces === 2
        ? `${BARS_FIRST} Measure both lands. Pin two ${isSegmented ? 'rings' : 'discs'} together, each half as thick, with the ${isSegmented ? 'joints of one over the middles of the segments' : 'grain of one across the grain'} of the other. Mark the pair across the edge. ${words}`
        : `${BARS_FIRST} Measure both lands. ${words}`,
    check: `${CIRCLES_CHECK} Laid between the rings, the cage must clear both lands all the way round.`,
    mistake: {
      looksLike: 'The cage was cut for the lands as drawn, and the lands came out different.',
      costs: 'The cage rubs.',
      remedy: 'Turn it again to the lands as they are. If it is too small for that, make a new one.',
    },
  }
}

export const cagePockets = (facts: {
  readonly count: number
  readonly pocket: Mm
  readonly leastWeb: Mm
  readonly units: Units
}): OperationWords => ({
  title: `Drill the ${facts.count} pockets`,
  tool: `drill press, a Forstner bit of ${figure(facts.pocket, facts.units)} or the next size up, a cradle that holds the ring on edge`,
  how: `Carry the ${facts.count} lines of the template over the edge with a square. Drill at mid width, towards the centre, with a pilot hole first, no wider than the point of the bit: a wider one leaves the point no wood to start on. Back the ring up from inside so that the bore does not tear.`,
  check: 'Every ball falls through its pocket by its own weight, and all the webs look alike.',
  mistake: {
    looksLike: 'A pocket is off its line: one web is thick, and one is thin.',
    costs: 'The thin web breaks first.',
    remedy: `If a web is thinner than ${figure(facts.leastWeb, facts.units)}, make a new ring.`,
  },
})

interface FillFacts {
  readonly count: number
  /** How far round all the balls reach, pushed together [degrees]. */
  readonly fillingAngle: number
  /** Wood to turn off a land if the last ball does not go in. */
  readonly easeLand: Mm
  /** Turns of the cage while the inner ring turns ten times. */
  readonly cageTurns: number
  readonly units: Units
}

const slipsBack = {
  looksLike: 'A ball slips back into the bore while you close the ring.',
  costs: 'Time.',
  remedy: 'A dab of wax holds it.',
}

/** By what is split: where neither ring is, the cage is. */
const FILL: Readonly<Record<Split, (facts: FillFacts) => Omit<OperationWords, 'check'>>> = {
  none: ({ count, fillingAngle, easeLand, units }) => ({
    title: 'Fill the rings and close the cage over the balls',
    tool: 'hands, thin screws or pegs through the webs',
    how: `Lay the outer ring flat, and push the inner ring all the way to one side. Drop the ${count} balls into the wide side and push them together: they reach ${Math.round(fillingAngle)} degrees round. Bring the inner ring to the middle, spread the balls evenly, and close the halves of the cage over them from both sides. Hold the halves with thin screws through the webs, which you can take out again, or with pegs once the bearing runs as it should.`,
    mistake: {
      looksLike: 'The last ball does not go in: the lands stand too close, or a ball stops short of the end.',
      costs: 'A ring splits if you force the ball in.',
      remedy: `Do not force it. Turn a land ${figure(easeLand, units)} back, and the ball goes in.`,
    },
  }),
  'inner-ring': () => ({
    title: 'Put the balls in through the cage',
    tool: 'hands',
    how: 'Stand the cage in the outer ring, and push a ball out through each pocket into the groove. Then close the halves of the inner ring in from both sides.',
    mistake: slipsBack,
  }),
  'outer-ring': () => ({
    title: 'Put the balls in through the cage',
    tool: 'hands',
    how: 'Slip the cage over the inner ring, and push a ball in through each pocket into its groove. Then close the halves of the outer ring over the balls.',
    mistake: slipsBack,
  }),
}

export const cageFill = (split: Split, facts: FillFacts): OperationWords => ({
  ...FILL[split](facts),
  check: `It turns freely. The cage goes round with the balls, about ${facts.cageTurns} times while the inner ring turns ten times. It may rest on a land, but nothing may pinch it.`,
})
