import { type Groove, grooveWidth } from '#shared/geometry/groove.ts'
import { type Seat, seatIn } from '#shared/geometry/seat.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { stepUp } from '#shared/units/step.ts'

/** The finished sizes that both rings have. */
export interface Ring {
  readonly landDiameter: Mm
  readonly grooveBottomDiameter: Mm
  readonly grooveDepth: Mm
  readonly seatDepth: Mm
  readonly grooveRadius: Mm
  readonly grooveWidth: Mm
  /** Wood behind the groove's bottom. Below 0 the groove comes out on the other side. */
  readonly wall: Mm
  readonly width: Mm
  readonly seat: Seat['on']
}

export interface OuterRing extends Ring {
  readonly outsideDiameter: Mm
}

export interface InnerRing extends Ring {
  readonly boreDiameter: Mm
}

/** How the outside is found: said, or from the least wall and the figure to round up to. */
export type Outside =
  | { readonly outsideDiameter: Mm }
  | { readonly wall: Mm; readonly roundOutsideDiameterTo: Mm | null }

/** The outside diameter round a hollow so far across: as said, or a wall further out and rounded up. */
export const diameterOf = (outside: Outside, hollow: number): Mm =>
  'outsideDiameter' in outside
    ? outside.outsideDiameter
    : roundedUp(hollow + 2 * outside.wall, outside.roundOutsideDiameterTo)

/**
 * The outer ring whose seated balls run on a given pitch radius R: its land lies at R + Dw/2 less the seat depth,
 * whatever the balls sit on, and its groove bottom a groove depth further out.
 *
 * @returns finished sizes [mm]; `wall` may be 0 or below: whoever asks must refuse that
 */
export function outerRing(pitchRadius: Mm, ballDiameter: Mm, groove: Groove, outside: Outside, width: Mm): OuterRing {
  const seat = seatIn(groove, ballDiameter)
  const landRadius = pitchRadius + ballDiameter / 2 - seat.depth
  const bottomDiameter = 2 * (landRadius + groove.depth)
  const outsideDiameter = diameterOf(outside, bottomDiameter)
  return {
    outsideDiameter,
    ...grooved(landRadius, bottomDiameter, groove, seat),
    wall: mm((outsideDiameter - bottomDiameter) / 2),
    width,
  }
}

/**
 * The inner ring whose balls run on a given pitch radius: the mirror of `outerRing`, its land at R − Dw/2 plus the seat
 * depth, its groove bottom a groove depth further in.
 *
 * @param pitchRadius of balls seated in the inner groove: the outer's less half the radial internal clearance [mm]
 * @returns finished sizes [mm]; `wall` may be 0 or below: whoever asks must refuse that
 */
export function innerRing(pitchRadius: Mm, ballDiameter: Mm, groove: Groove, bore: Mm, width: Mm): InnerRing {
  const seat = seatIn(groove, ballDiameter)
  const landRadius = pitchRadius - ballDiameter / 2 + seat.depth
  const bottomDiameter = 2 * (landRadius - groove.depth)
  return {
    boreDiameter: bore,
    ...grooved(landRadius, bottomDiameter, groove, seat),
    wall: mm((bottomDiameter - bore) / 2),
    width,
  }
}

function grooved(landRadius: number, bottomDiameter: number, groove: Groove, seat: Seat): Omit<Ring, 'wall' | 'width'> {
  return {
    landDiameter: mm(2 * landRadius),
    grooveBottomDiameter: mm(bottomDiameter),
    grooveDepth: groove.depth,
    seatDepth: seat.depth,
    grooveRadius: groove.radius,
    grooveWidth: grooveWidth(groove),
    seat: seat.on,
  }
}

const roundedUp = (diameter: number, roundTo: Mm | null): Mm =>
  roundTo === null ? mm(diameter) : stepUp(diameter, roundTo)
