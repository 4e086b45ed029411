import { type Design, isCaged } from '#shared/bearing/arrangements.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Job, madeAt, type Operation } from './operation.ts'

export function chooseBalls({ design, say }: Job<Design>): Operation {
  const { settled } = design.bearing
  const { count, material = 'wood' } = settled.input.balls
  const over = mm(settled.ballDiameter / 100)
  return {
    id: 'choose-balls',
    part: 'balls',
    title: `Choose ${count} balls`,
    tool: 'a straight channel of two battens, a rule, a caliper',
    how: `Lay ${count} balls in the channel, touching, and read the whole row; it gives their mean finer than a caliper does. Roll each ball on glass and leave out the ones that wobble.`,
    sizes: [
      { symbol: 'Dw', name: 'mean ball diameter', value: settled.ballDiameter },
      { name: `the row of ${count}`, value: mm(count * settled.ballDiameter) },
    ],
    check: 'The row against its size; each ball with the caliper in three directions.',
    mistake: {
      looksLike: `Balls that run ${say(over)} large take ${say(takenBy(over, design))} off the ${isCaged(design) ? 'play' : 'gap'}.`,
      costs: 'A groove cut for the wrong balls. Measure before any wood is cut, and design again with what you have.',
    },
    cautions: material === 'glass' ? ['glass-balls'] : [],
    readings: [{ name: `length of the row of ${count}`, at: madeAt(design), kind: 'ball-row', field: '/value' }],
  }
}

/** What balls that run so much larger take off the figure that is made: the gap, or, in a cage, the play. */
const takenBy = (over: Mm, design: Design): Mm =>
  mm(over * (isCaged(design) ? PLAY_PER_BALL : Math.abs(design.bearing.gapPerBallDiameter)))

/** A ball that grows pushes both grooves apart, on either side of the ring. */
const PLAY_PER_BALL = 2
