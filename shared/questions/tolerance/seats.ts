import type { FullRings } from '#shared/bearing/full-rings.ts'

/*
 * How far from the axis a ball's centre stands in either ring, on the bottom of the groove or on its edges, whatever the
 * ball, the groove's depth and the film. The film lies on the groove and round its edges: to the seat it is as if the ball
 * had a radius larger by it (the seat radius), while the balls still touch one another as they are.
 */

export interface GroovedRing {
  readonly bottomRadius: number
  readonly landRadius: number
  readonly grooveRadius: number
  readonly grooveDepth: number
}

export const outerOf = ({ outerRing }: FullRings): GroovedRing => ({
  bottomRadius: outerRing.grooveBottomDiameter / 2,
  landRadius: outerRing.landDiameter / 2,
  grooveRadius: outerRing.grooveRadius,
  grooveDepth: outerRing.grooveDepth,
})

export const innerOf = ({ innerRing }: FullRings): GroovedRing => ({
  bottomRadius: innerRing.grooveBottomDiameter / 2,
  landRadius: innerRing.landDiameter / 2,
  grooveRadius: innerRing.grooveRadius,
  grooveDepth: innerRing.grooveDepth,
})

/** A groove as round as the ball counts as one that it touches at the bottom: as in `seat.ts`. */
const EQUAL_WITHIN = 1e-9

export const sitsOnBottom = ({ grooveRadius }: GroovedRing, seatRadius: number): boolean =>
  seatRadius * (1 - EQUAL_WITHIN) <= grooveRadius

/** From a ball's centre on the edges of a groove so deep to the land: √(ρ² − w²), w² = h (2 r − h) half the width's square. */
function centreToLand({ grooveRadius }: GroovedRing, depth: number, seatRadius: number): number {
  return Math.sqrt(seatRadius * seatRadius - depth * (2 * grooveRadius - depth))
}

/**
 * @param seatRadius ρ: ball radius and film [mm]
 * @param further by how much the groove's bottom lies further out than in the design, the land staying [mm]
 */
export function outerCentre(ring: GroovedRing, seatRadius: number, further: number): number {
  if (sitsOnBottom(ring, seatRadius)) return ring.bottomRadius + further - seatRadius
  return ring.landRadius - centreToLand(ring, ring.grooveDepth + further, seatRadius)
}

/** The same in the inner ring, whose groove is the shallower the further out its bottom lies. */
export function innerCentre(ring: GroovedRing, seatRadius: number, further: number): number {
  if (sitsOnBottom(ring, seatRadius)) return ring.bottomRadius + further + seatRadius
  return ring.landRadius + centreToLand(ring, ring.grooveDepth - further, seatRadius)
}

/** How the distance of a centre from the land (or from any fixed circle) grows, outer and inner ring alike. */
export interface SeatSlopes {
  /** With the seat radius: 1 on the bottom, more on the edges. */
  readonly perSeatRadius: number
  /** With the depth of the groove, towards its bottom: 1 on the bottom. */
  readonly perDepth: number
}

export function seatSlopes(ring: GroovedRing, seatRadius: number): SeatSlopes {
  if (sitsOnBottom(ring, seatRadius)) return { perSeatRadius: 1, perDepth: 1 }
  const toLand = centreToLand(ring, ring.grooveDepth, seatRadius)
  return { perSeatRadius: seatRadius / toLand, perDepth: (ring.grooveRadius - ring.grooveDepth) / toLand }
}
