import type { BALL_SELECTION } from '#shared/questions/selection/ball-selection.ts'
import { IN_RINGS } from './ring.ts'
import { BETWEEN_PLATES } from './thrust.ts'

/** The answer of each arrangement that is served. */
export const ANSWERS = {
  radial: IN_RINGS,
  thrust: BETWEEN_PLATES,
  roller: IN_RINGS,
} as const satisfies Readonly<Record<(typeof BALL_SELECTION.serves)[number], object>>
