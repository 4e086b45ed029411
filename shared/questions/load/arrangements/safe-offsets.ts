import { GRAVITY, holdsAt } from '#shared/contact/turntable.ts'
import { endByHalving } from '#shared/numbers/halving.ts'
import { PER_RPM } from '#shared/questions/load/speeds.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { PlateLoadCheck } from './thrust.ts'

/** A speed, and the offset up to which the load and the plate keep their places. */
export interface SafeOffset {
  readonly offset: Mm
  readonly speed: number
}

const SPEEDS = 20
/** Halvings of the offsets at a speed: finer than a line is drawn. */
const HALVINGS = 9

/** A load check as far as its curve needs it, and the fastest speed of interest [1/min], above 0. */
export interface SafeOffsetCurve {
  readonly check: Pick<PlateLoadCheck, 'load' | 'turntable' | 'tipsBeyond'>
  readonly fastest: number
}

/**
 * How far out the load may stand at speeds up to the fastest of interest: as it is, at its height.
 */
export function safeOffsets({
  check: { load, turntable, tipsBeyond },
  fastest,
}: SafeOffsetCurve): readonly SafeOffset[] {
  return Array.from({ length: SPEEDS + 1 }, (_, index) => {
    const speed = (fastest * index) / SPEEDS
    const sliding =
      index > 0 && load.load.turnsWithPlate ? slidingOffset(load.friction, speed) : Number.POSITIVE_INFINITY
    const holds = (offset: number): boolean => holdsAt({ ...turntable, offset }, speed)
    const farthest = Math.min(tipsBeyond * ON_THE_LINE, sliding)
    const [safe] = holds(farthest) ? [farthest] : endByHalving(holds, 0, farthest, HALVINGS)
    return { speed, offset: mm(safe) }
  })
}

/** Short of where the plate tips at rest, so that something holds it. */
const ON_THE_LINE = 1 - 1e-6
/** e = μ g / ω². */
const slidingOffset = (friction: number, speed: number): number =>
  (friction * GRAVITY) / (speed * PER_RPM * speed * PER_RPM)
