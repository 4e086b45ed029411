import { shownLength as shown } from '#src/api/length.ts'
import { BALL_GAP, shapeOf } from '#src/api/seasonal-fit/state.ts'

export const THRUST_STATE = {
  plates: shapeOf('The circle of the groove of either plate.'),
  ...BALL_GAP,
  flankRoom: shown(
    'How much farther apart the two groove circles could lie before the balls ride on the edges of the grooves, with the grain of one plate across that of the other. Below 0 they do.',
  ),
}
