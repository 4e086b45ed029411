import { requireAboveZero, requireWhole } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/*
 * A cage: a ring of wood between the lands, with a round pocket drilled through it towards the axis for each ball. All pockets
 * stand evenly, α = π/Z either side of each. Derived here, no source; tested by coordinates.
 */

/** The drilled pockets: of one size, evenly round the ring. */
export interface Pockets {
  readonly pocketDiameter: Mm
  readonly ballCount: number
}

/** Space between neighbouring balls that stand evenly:  2 R sin(π/Z) − Dw. Below 0 they would overlap. */
export function ballSpacing(pitchRadius: Mm, ballDiameter: Mm, ballCount: number): Mm {
  requireWhole('ballCount', ballCount, 2)
  return mm(2 * pitchRadius * Math.sin(Math.PI / ballCount) - ballDiameter)
}

/**
 * The wood left between two pockets where it is least, at the cage's bore. The edges of a pocket lie Dp/2 beside the radius
 * through its middle, so that those of neighbours are  2 r sin(α − asin(Dp / 2r)) = √(4 r² − Dp²) sin α − Dp cos α  apart at
 * the radius r, which grows with r.
 *
 * @param boreRadius r, at least Dp/2 [mm]
 * @returns straight from edge to edge [mm]; 0 or below: the pockets run into one another
 * @throws RangeError outside that range
 */
export function webAtBore(boreRadius: Mm, { pocketDiameter, ballCount }: Pockets): Mm {
  requireAboveZero('pocketDiameter', pocketDiameter)
  if (!(2 * boreRadius >= pocketDiameter))
    throw new RangeError(`boreRadius must be at least ${pocketDiameter / 2} mm, got ${boreRadius}`)
  const half = Math.PI / ballCount
  const chord = Math.sqrt((2 * boreRadius - pocketDiameter) * (2 * boreRadius + pocketDiameter))
  return mm(chord * Math.sin(half) - pocketDiameter * Math.cos(half))
}

/**
 * The way back of `webAtBore`: the bore radius at which this much wood is left,  2 r = √(Dp² + ((w + Dp cos α) / sin α)²).
 *
 * @param web w, 0 or above [mm]
 */
export function boreRadiusForWeb(web: Mm, { pocketDiameter, ballCount }: Pockets): Mm {
  requireWhole('ballCount', ballCount, 2)
  const half = Math.PI / ballCount
  return mm(Math.hypot(pocketDiameter, (web + pocketDiameter * Math.cos(half)) / Math.sin(half)) / 2)
}
