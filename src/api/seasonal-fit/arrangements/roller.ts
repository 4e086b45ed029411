import { shownLength as shown } from '#src/api/length.ts'
import { BALL_GAP, PLAY, shapeOf } from '#src/api/seasonal-fit/state.ts'

export const ROLLER_STATE = {
  outerRing: shapeOf('The track of the outer ring.'),
  innerRing: shapeOf('The track of the inner ring.'),
  ...BALL_GAP,
  ...PLAY,
  endPlay: shown(
    'Space at the ends of the rollers and of the inner ring, between the cheeks. Below 0 they are pinched.',
  ),
}
