import { type Bounds, choice, flag, group, nonNegativeLength, number } from '#shared/bearing/field.ts'
import { plain, trade } from '#shared/bearing/fields.ts'
import { CONTACT_WOODS } from '#shared/data/contact-woods.ts'

export const TURNING_RINGS = ['inner-ring', 'outer-ring'] as const
export type TurningRing = (typeof TURNING_RINGS)[number]

/** Beyond any wooden bearing either way: what is larger is a slip of the hand. Common practice, no source. */
const LOAD: Bounds = { min: 0.001, max: 100_000 }
const SPEED: Bounds = { min: 0.001, max: 100_000 }
const DENT: Bounds = { min: 0.0001, max: 0.05 }
const FRICTION: Bounds = { min: 0.01, max: 2 }

/** The wood and what is expected of it, whatever carries the load. */
const WOOD_FIELDS = {
  wood: choice(
    'Wood of both rings, or of the turntable. Where a plan states woods, the softest of them is the default; for one that is not in this list, the next softer one that is.',
    CONTACT_WOODS,
    trade('maple-sugar', 'a hard wood that is common in the trade'),
  ),
  dentFraction: number(
    'Permanent dent that ruins the bearing for you, in ball diameters.',
    DENT,
    trade('0.005', 'a dent of 1/200 of a ball is just felt as the ball rolls over it'),
  ),
}

/** Fields of a load across the axis, which rings carry. */
export const RADIAL_LOAD_FIELDS = {
  radialLoad: number('Load across the axis, at rest. Rings need it; a turntable takes none. In `forceUnits`.', LOAD),
  turning: choice(
    'The ring that turns. Rings only.',
    TURNING_RINGS,
    plain('inner-ring', 'the shaft turns in a ring that does not'),
  ),
}

/** Fields of a load along the axis, which a turntable carries. */
export const AXIAL_LOAD_FIELDS = {
  axialLoad: number(
    'Load along the axis of a turntable, at rest, with its upper plate. A turntable needs it; rings take none. In `forceUnits`.',
    LOAD,
  ),
  offset: nonNegativeLength(
    'Distance of the axial load from the axis. It must lie within the line between any two neighbouring balls.',
    plain('0', 'the load lies over the middle'),
  ),
  load: group('LoadOnTurntable', 'How the load of a turntable stands on it.', {
    turnsWithPlate: flag(
      'Whether the load turns with the upper plate. A load that is held still while the plate turns under it pulls nothing aside.',
      plain('true', 'what stands on a turntable turns with it'),
    ),
    height: nonNegativeLength(
      "Height of the load's centre above the centres of the balls.",
      plain('the top of the upper plate', 'a flat load: state the height of a tall one'),
    ),
  }),
  friction: number(
    'Coefficient of friction between the load and the plate on which it stands.',
    FRICTION,
    trade('0.3', 'dry wood, glass or pottery on smooth wood slides at about 0.3'),
  ),
}

/** The fields of a load check, besides the design and the units of force: one row each. */
export const LOAD_FIELDS = {
  ...RADIAL_LOAD_FIELDS,
  ...AXIAL_LOAD_FIELDS,
  wood: WOOD_FIELDS.wood,
  ballWood: choice(
    'Wood of wooden balls. Where a plan states one, it is the default; for one that is not in this list, the next softer one that is.',
    CONTACT_WOODS,
    plain('the wood of the rings or of the turntable', 'one wood for the whole bearing'),
  ),
  dentFraction: WOOD_FIELDS.dentFraction,
  speed: number('Turns a minute of the ring that turns, or of the upper plate.', SPEED),
}
