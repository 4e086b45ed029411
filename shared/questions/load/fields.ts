import { type Bounds, choice, nonNegativeLength, number } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import { CONTACT_WOODS } from '#shared/data/contact-woods.ts'

export const TURNING_RINGS = ['inner-ring', 'outer-ring'] as const
export type TurningRing = (typeof TURNING_RINGS)[number]

/** Beyond any wooden bearing either way: what is larger is a slip of the hand. */
const LOAD: Bounds = { least: 0.001, most: 100_000 }
const SPEED: Bounds = { least: 0.001, most: 100_000 }
const DENT: Bounds = { least: 0.0001, most: 0.05 }

/** What can be asked about wood, whatever carries the load. */
const WOOD_FIELDS = {
  wood: choice(
    'Wood of both rings or both plates.',
    CONTACT_WOODS,
    trade('maple-sugar', 'a hard wood that is common in the trade'),
  ),
  dentFraction: number(
    'Permanent dent that you accept, in ball diameters.',
    DENT,
    trade('0.005', 'a dent of 1/200 of a ball is just felt as the ball rolls over it'),
  ),
}

/** The fields of a load check, besides the design and the units of force: one row each. */
export const LOAD_FIELDS = {
  radialLoad: number('Load across the axis, at rest. Rings need it; plates take none. In `forceUnits`.', LOAD),
  axialLoad: number(
    'Load along the axis of a turntable, at rest, with its upper plate. Plates need it; rings take none. In `forceUnits`.',
    LOAD,
  ),
  offset: nonNegativeLength(
    'Distance of the axial load from the axis. It must lie within the line between any two neighbouring balls.',
    plain('0', 'the load lies over the middle'),
  ),
  wood: WOOD_FIELDS.wood,
  ballWood: choice(
    'Wood of wooden balls.',
    CONTACT_WOODS,
    plain('the wood of the rings or plates', 'one wood for the whole bearing'),
  ),
  dentFraction: WOOD_FIELDS.dentFraction,
  turning: choice(
    'The ring that turns. Of two plates either may turn.',
    TURNING_RINGS,
    plain('inner-ring', 'the shaft turns in a ring that stands still'),
  ),
  speed: number('Turns a minute of that ring, or of a plate.', SPEED),
}
