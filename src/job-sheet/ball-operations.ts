import { type Design, isCaged } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { CHOOSE } from '#src/words/job-sheet/balls.ts'
import { meanDiameter, rowLength, rowOf } from '#src/words/job-sheet/sizes.ts'
import { type AnyJob, arrangementOf, glassCautions, madeAt, type Operation, unitsOf } from './operation.ts'

export function chooseBalls(job: AnyJob<Design>): Operation {
  const { design } = job
  const { resolved } = design.bearing
  const { count, material = BALL_MATERIAL } = resolved.input.balls
  const arrangement = arrangementOf(job)
  const over = mm(resolved.ballDiameter / 100)
  return {
    ...CHOOSE[arrangement]({
      count,
      material,
      diameter: resolved.ballDiameter,
      over,
      taken: takenBy(over, design),
      units: unitsOf(job),
    }),
    id: 'choose-balls',
    part: 'balls',
    sizes: [
      { symbol: 'Dw', name: meanDiameter(arrangement), value: resolved.ballDiameter },
      { name: rowOf(count, arrangement), value: mm(count * resolved.ballDiameter) },
    ],
    cautions: glassCautions(job),
    readings: [{ name: rowLength(count, arrangement), at: madeAt(design), kind: 'ball-row', field: '/value' }],
  }
}

/** Loss of the figure that is made through balls that run so much larger: of the gap, or, in a cage, of the play. */
const takenBy = (over: Mm, design: Design): Mm =>
  mm(over * (isCaged(design) ? PLAY_PER_BALL : Math.abs(design.bearing.gapPerBallDiameter)))

/** A ball that grows pushes both grooves apart, on either side of the ring. */
const PLAY_PER_BALL = 2
