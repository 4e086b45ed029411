import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { differenceFigure, figure } from '#src/words/figure.ts'
import { MADE_OF } from '#src/words/materials.ts'
import type { OperationWords } from './operation.ts'

/* Choosing what rolls, and cutting rollers to length. */

interface ChooseFacts {
  readonly count: number
  readonly material: BallMaterial
  readonly diameter: Mm
  /** So much larger than wanted … */
  readonly over: Mm
  /** … takes this off the gap, or with a cage off the play. */
  readonly taken: Mm
  readonly units: Units
}

const CHANNEL = 'a straight channel made of two battens, a rule, a caliper'

const chooseBalls = ({ count, material, diameter, units }: ChooseFacts) => ({
  title: `Choose ${count} balls`,
  tool: `${CHANNEL}, ${count} ${MADE_OF[material]} balls of ${figure(diameter, units)}`,
  how: `Lay ${count} balls in the channel so that they touch, and measure the whole row: this gives their mean diameter more finely than a caliper does. Roll each ball on glass, and put aside the ones that wobble.`,
  check: 'Compare the row with its size. Measure each ball with the caliper in three directions.',
})

const smallerGap = (what: 'Balls' | 'Rollers', { over, taken, units }: ChooseFacts): string =>
  `${what} that are ${differenceFigure(over, units)} too large make the gap ${differenceFigure(taken, units)} smaller.`

export const CHOOSE: Readonly<Record<ArrangementName, (facts: ChooseFacts) => OperationWords>> = {
  radial: (facts) => ({
    ...chooseBalls(facts),
    mistake: {
      looksLike: smallerGap('Balls', facts),
      costs: 'The groove is cut for the wrong balls.',
      remedy: 'Measure them before you cut any wood, and design the bearing again for the balls that you have.',
    },
  }),
  thrust: (facts) => ({
    ...chooseBalls(facts),
    mistake: {
      looksLike: smallerGap('Balls', facts),
      costs: 'The grooves are cut for the wrong balls.',
      remedy: 'Measure them before you cut any wood, and design the turntable again for the balls that you have.',
    },
  }),
  caged: (facts) => ({
    ...chooseBalls(facts),
    mistake: {
      looksLike: `Balls that are ${differenceFigure(facts.over, facts.units)} too large make the play ${differenceFigure(facts.taken, facts.units)} smaller.`,
      costs: `Little: you turn the inner ring to fit. But one ball that is larger than the other ${facts.count - 1} carries all the load.`,
      remedy: 'Change a ball that is larger than the others.',
    },
  }),
  roller: (facts) => ({
    title: `Choose ${facts.count} rollers`,
    tool: `${CHANNEL}, ${MADE_OF[facts.material]} rod of ${figure(facts.diameter, facts.units)} for ${facts.count} rollers`,
    how: `Lay ${facts.count} rollers side by side in the channel so that they touch, and measure the whole row: this gives their mean diameter more finely than a caliper does. Roll each roller on glass, and put aside the ones that wobble.`,
    check:
      'Compare the row with its size. Measure each roller with the caliper at both ends and in the middle, in two directions.',
    mistake: {
      looksLike: smallerGap('Rollers', facts),
      costs: 'The track is cut for the wrong rollers.',
      remedy: 'Measure them before you cut any ring, and design the bearing again for the rollers that you have.',
    },
  }),
}

const BREAK_EDGES = 'Then break the edges of the ends with two strokes.'

type SawnMaterial = Exclude<BallMaterial, 'glass'>

/** By the material: glass is cut by nobody at home. */
const ROLLERS_BY: Readonly<Record<SawnMaterial, { readonly tool: string; readonly how: string }>> = {
  wood: { tool: 'fine saw, V-block or cradle with a stop, sanding block', how: BREAK_EDGES },
  acrylic: {
    tool: 'fine saw, V-block or cradle with a stop, file',
    how: `Saw slowly, for hot acrylic melts and grabs the blade. ${BREAK_EDGES}`,
  },
  steel: {
    tool: 'hacksaw, vise, V-block or cradle with a stop, file',
    how: 'Use a hacksaw, or have them cut. File the ends square, and take off the burr.',
  },
}

const cutGlassRollers = (count: number): OperationWords => ({
  title: `Buy the ${count} rollers cut to length`,
  tool: 'caliper',
  how: `Do not cut glass rod at home: it breaks into splinters, and its ends cut. Buy a few more than ${count}, all cut to one length with their ends ground smooth.`,
  check: 'Stand them on end on a flat surface. None may lean, and a straightedge laid across them must not rock.',
  mistake: {
    looksLike: 'One roller is longer than the others, or an edge is chipped.',
    costs: 'The cheeks pinch it, or it scores the track.',
    remedy: 'Put it aside: do not grind it.',
  },
})

interface CutRollers {
  readonly count: number
  readonly material: BallMaterial
}

export const cutRollers = ({ count, material }: CutRollers): OperationWords =>
  material === 'glass' ? cutGlassRollers(count) : sawnRollers({ count, material })

const sawnRollers = ({
  count,
  material,
}: {
  readonly count: number
  readonly material: SawnMaterial
}): OperationWords => ({
  title: `Cut the ${count} rollers to length`,
  tool: ROLLERS_BY[material].tool,
  how: `Lay the rod in the V-block, hold it down in it, and push it against the stop. Cut a few more than ${count}, all at one setting and with square ends. With a machine saw, take the stop away before each cut: a piece caught between stop and blade is thrown. ${ROLLERS_BY[material].how}`,
  check: 'Stand them on end on a flat surface. None may lean, and a straightedge laid across them must not rock.',
  mistake: {
    looksLike: 'One roller is longer than the others.',
    costs: 'The cheeks pinch it, and the whole bearing drags.',
    remedy: 'Rub it down on abrasive laid flat.',
  },
})
