import { shownLength as shown } from '#src/api/length.ts'
import { LAND_GAP, PLAY, RING_GROOVES, shapeOf } from '#src/api/seasonal-fit/state.ts'

export const CAGED_STATE = {
  ...RING_GROOVES,
  cage: shapeOf('The bore of the cage.'),
  ...PLAY,
  ...LAND_GAP,
  cageClearance: shown('Least space between the cage and a land. Below 0 it rubs.'),
  pocketClearance: shown('Least space for a ball in its pocket. Below 0 it sticks.'),
}
