import { BALL_GAP, LAND_GAP, PLAY, RING_GROOVES } from '#src/api/seasonal-fit/state.ts'

export const RADIAL_STATE = { ...RING_GROOVES, ...BALL_GAP, ...PLAY, ...LAND_GAP }
