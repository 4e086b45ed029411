import { type Mm, mm } from '#shared/units/length.ts'
import { type Design, isCaged, isOfPlates, isOfRollers } from './arrangements.ts'
import type { DimensionKey } from './dimensions.ts'

/** Between which a size may come out [mm]. */
export interface SizeLimits {
  readonly min: Mm
  readonly max: Mm
}

/** Sizes with limits of their own, closer than those of the rest. */
export type LimitedSizes = Partial<Record<DimensionKey, SizeLimits>>

/**
 * The sizes on which the ball gap and the seat of the balls hang, each with the limits that follow from the design, all else
 * as designed: the circle that the plugs check between the gaps of the go and the no-go plug, and the arc of a groove with
 * its balls on the bottom down to the ball's own radius and up by as much. Derived here.
 *
 * If balls ride on the edges of their groove, its depth moves the pitch circle by less than itself: the slopes tell by how
 * much. Balls that are held apart have no gap to limit.
 */
export function limitedSizes(design: Design): LimitedSizes {
  return { ...gapLimits(design), ...arcLimits(design) }
}

function gapLimits(design: Design): LimitedSizes {
  if (isCaged(design)) return {}
  const { gauge, resolved, gapPerPitchRadius } = design.bearing
  const { nominalDiameter: nominal, goDiameter: go, noGoDiameter: noGo } = gauge
  if (isOfPlates(design))
    return { pitchDiameter: { min: mm(go + resolved.ballDiameter), max: mm(noGo + resolved.ballDiameter) } }
  const { outerRing, gapPerGrooveDepth } = design.bearing
  const bottom = outerRing.grooveBottomDiameter
  const perPlug = gapPerPitchRadius / gapPerGrooveDepth
  const limits = { min: mm(bottom + perPlug * (go - nominal)), max: mm(bottom + perPlug * (noGo - nominal)) }
  return isOfRollers(design) ? { 'outerRing.trackDiameter': limits } : { 'outerRing.grooveBottomDiameter': limits }
}

function arcLimits({ bearing, dimensions }: Design): LimitedSizes {
  const ballRadius = bearing.resolved.ballDiameter / 2
  const arcs = dimensions.filter(({ key, value }) => key.endsWith('.grooveRadius') && value > ballRadius)
  return Object.fromEntries(
    arcs.map(({ key, value }) => [key, { min: mm(ballRadius), max: mm(2 * value - ballRadius) }]),
  )
}
