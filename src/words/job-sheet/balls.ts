import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { differenceFigure } from '#src/words/figure.ts'
import type { OperationWords } from './operation.ts'

/* Choosing what rolls, and cutting rollers to length. */

interface ChooseFacts {
  readonly count: number
  /** So much larger than wanted … */
  readonly over: Mm
  /** … takes this off the gap, or with a cage off the play. */
  readonly taken: Mm
  readonly units: Units
}

const CHANNEL = 'a straight channel made of two battens, a rule, a caliper'

const chooseBalls = ({ count }: ChooseFacts) => ({
  title: `Choose ${count} balls`,
  tool: CHANNEL,
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
    tool: CHANNEL,
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

export const cutRollers = ({ count }: { readonly count: number }): OperationWords => ({
  title: `Cut the ${count} rollers to length`,
  tool: 'fine saw, V-block or cradle with a stop, sanding block',
  how: `Lay the rod in the V-block, hold it down in it, and push it against the stop. Cut a few more than ${count}, all at one setting and with square ends. With a machine saw, take the stop away before each cut: a piece caught between stop and blade is thrown. Then break the edges of the ends with two strokes.`,
  check: 'Stand them on end on a flat surface. None may lean, and a straightedge laid across them must not rock.',
  mistake: {
    looksLike: 'One roller is longer than the others.',
    costs: 'The cheeks pinch it, and the whole bearing drags.',
    remedy: 'Rub it down on abrasive laid flat.',
  },
})
