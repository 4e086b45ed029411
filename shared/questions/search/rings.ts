import type { NumberField } from '#shared/bearing/field.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { LoadCheckInput } from '#shared/questions/load/input.ts'
import { mm } from '#shared/units/length.ts'
import type { Choice, Sizes } from './module.ts'

/* The part that the searches of all arrangements of two rings share. */

export type RingLoad = Omit<LoadCheckInput, 'design'>

/** @param gapPerCut by how much the gap grows with the radius of the outer raceway; 0 where none is left between balls */
export const ringSizes = ({ outerRing, innerRing, landGap }: RingPair, gapPerCut: number): Sizes => ({
  outsideDiameter: outerRing.outsideDiameter,
  outerWall: outerRing.wall,
  innerWall: innerRing.wall,
  landGap,
  discs: [
    { outside: outerRing.outsideDiameter, hole: outerRing.landDiameter },
    { outside: innerRing.landDiameter, hole: 'bore' },
  ],
  seats: [],
  cutDiameter: outerRing.grooveBottomDiameter,
  gapPerCut,
})

export const ringSeats = ({ outerRing, innerRing, resolved }: RingPair): Sizes['seats'] =>
  [outerRing, innerRing].map(({ seat, grooveRadius }) => ({
    onBottom: seat === 'bottom',
    conformity: grooveRadius / resolved.ballDiameter,
  }))

/** The rows of the depths of two rings, each of which may have a default of its own. */
export const ringDepths = ({
  outerRing,
  innerRing,
}: {
  readonly outerRing: GroovedRing
  readonly innerRing: GroovedRing
}) => ({
  outerEngagements: outerRing.fields.engagement,
  innerEngagements: innerRing.fields.engagement,
})
interface GroovedRing {
  readonly fields: { readonly engagement: NumberField }
}

export const groovedParts = ({ outerEngagements, innerEngagements, cutterDiameters }: Choice) => ({
  ...(outerEngagements === undefined ? {} : { outerRing: { engagement: outerEngagements } }),
  ...(innerEngagements === undefined ? {} : { innerRing: { engagement: innerEngagements } }),
  ...(cutterDiameters === undefined ? {} : { groove: { cutterDiameter: mm(cutterDiameters) } }),
})
