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
export const WOOD_FIELDS = {
  wood: choice(
    'Of both rings, or both plates.',
    CONTACT_WOODS,
    trade('maple-sugar', 'a hard wood that is common in the trade'),
  ),
  dentFraction: number(
    'Lasting dent that is still borne, in ball diameters.',
    DENT,
    trade('0.005', 'a dent of 1/200 of a ball is just felt as the ball rolls over it'),
  ),
}

const RADIAL_LOAD = number(
  'What it carries, square to its axis, at rest; rings need it, and plates have none. In `forceUnits`.',
  LOAD,
)

/** The fields of a load check, besides the design and the units of force: one row each. */
export const LOAD_FIELDS = {
  radialLoad: RADIAL_LOAD,
  axialLoad: number(
    'What plates carry along their axis, at rest, the upper plate included; they need it, and rings have none. In `forceUnits`.',
    LOAD,
  ),
  offset: nonNegativeLength(
    'Of the axial load from the axis, within the line between any two neighbouring balls.',
    plain('0', 'the load lies over the middle'),
  ),
  wood: WOOD_FIELDS.wood,
  ballWood: choice(
    'Of wooden balls.',
    CONTACT_WOODS,
    plain('the wood of the rings or plates', 'one wood for the whole bearing'),
  ),
  dentFraction: WOOD_FIELDS.dentFraction,
  turning: choice(
    'Which ring turns; of plates either.',
    TURNING_RINGS,
    plain('inner-ring', 'the shaft turns in a ring that stands still'),
  ),
  speed: number('Turns a minute of that ring, or of a plate.', SPEED),
}
