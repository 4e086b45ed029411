/** How each part names the figure that is brought into its band. */
const GAP = { aim: 'ballGap', min: 'minBallGap', max: 'maxBallGap' } as const
export const NAMES = {
  outer: GAP,
  plate: GAP,
  inner: { aim: 'radialInternalClearance', min: 'minRadialInternalClearance', max: 'maxRadialInternalClearance' },
} as const
