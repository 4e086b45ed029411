/** Above this wood is wet to the touch after a while, and the figures of its movement are for drier wood. Common practice, no source. */
const DAMP = 85
/** Below this no room is, but for a heated one in a hard frost. Common practice, no source. */
const DRY = 15

/**
 * A question about a relative humidity that can be, but seldom is: it may be a slip.
 *
 * @param percent as it was read; undefined where it could not be
 */
export function airQuestion(percent: number | undefined): string | undefined {
  if (percent === undefined) return undefined
  if (percent > DAMP)
    return `Is ${percent} % right? Only open air in rain or fog is so damp. Wood gets wet there, and the play that is worked out for the year may not be enough.`
  return percent < DRY ? `Is ${percent} % right? Hardly any room is so dry: most stay above ${DRY} %.` : undefined
}
