import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import type { Units } from '#shared/units/length.ts'
import {
  type Bounds,
  choice,
  type Default,
  group,
  integer,
  length,
  lengths,
  nonNegativeLength,
  number,
  optionalLength,
  required,
  type Standing,
} from './field.ts'

/*
 * The fields that several arrangements share, one row each. An arrangement composes its input from these rows and from
 * rows of its own (`arrangements/<name>/input.ts`).
 */

/** More balls than anyone turns a ring for. */
export const MOST_BALLS = 200
export const ENGAGEMENT: Bounds = { least: 0.01, most: 0.9 }
export const CONFORMITY: Bounds = { least: 0.3, most: 2 }
const MOST_MEASURED = 500

export const BALL_MATERIALS = ['wood', 'glass', 'acrylic', 'steel'] as const
export type BallMaterial = (typeof BALL_MATERIALS)[number]

/** Which ring comes apart at the middle of its groove, so that a full ring of balls can be closed in. */
export const SPLITS = ['inner-ring', 'outer-ring', 'none'] as const
export type Split = (typeof SPLITS)[number]

export const SHOP_DENOMINATORS = [8, 16, 32, 64, 128] as const
export type ShopDenominator = (typeof SHOP_DENOMINATORS)[number]

const TRADE: Standing = 'common practice, no source'
const PLAIN: Standing = 'the plain case'
export const trade = (stated: string, reason: string): Default => ({ stated, reason, standing: TRADE })
export const plain = (stated: string, reason: string): Default => ({ stated, reason, standing: PLAIN })

export const COUNT = required(
  integer('Number of balls or rollers in the ring.', { least: FEWEST_BALLS, most: MOST_BALLS }),
)
export const DIAMETERS = lengths(
  'Your own measurements, at least `count` of them. Their mean, not the nominal diameter, then closes the ring. Use either this or `standardDeviation`.',
  { least: FEWEST_BALLS, most: MOST_MEASURED },
)
export const BALLS = required(
  group(
    'Balls',
    'The balls that you buy.',
    {
      count: COUNT,
      diameter: required(length('Nominal ball diameter.')),
      material: choice(
        'Material of the balls.',
        BALL_MATERIALS,
        trade('wood', 'turned wooden balls are what most makers buy'),
      ),
      standardDeviation: nonNegativeLength(
        'Standard deviation of single balls about their mean.',
        trade('by material', 'how much balls of this material scatter in a bought lot'),
      ),
      diameters: DIAMETERS,
    },
    ['standardDeviation', 'diameters'],
  ),
)

export const GROOVE = group(
  'Groove',
  'The arc of a groove in section. State it in one of three ways.',
  {
    conformity: number(
      'Groove radius divided by ball diameter.',
      CONFORMITY,
      trade('0.53', 'a little rounder than the ball; steel bearings stay at or below this (ISO 76)'),
    ),
    grooveRadius: length('Radius of the groove in section. Use it instead of `conformity`.'),
    cutterDiameter: length('Diameter of the round-nosed cutter or scraper. Use it instead of `conformity`.'),
  },
  ['conformity', 'grooveRadius', 'cutterDiameter'],
)

/** The two ways to state the depth of a groove. */
export const depthFields = (byDefault: Default) => ({
  engagement: number('Groove depth as a fraction of the ball diameter.', ENGAGEMENT, byDefault),
  grooveDepth: length('Depth from the land to the groove bottom, at mid width. Use it instead of `engagement`.'),
})
export const DEPTH_CHOICE = ['engagement', 'grooveDepth'] as const

/** The two ways to state an outside diameter. */
export const outsideFields = (wall: string, byDefault: Default) => ({
  wall: length(wall, byDefault),
  roundOutsideDiameterTo: optionalLength(
    'Round the outside diameter up to a multiple of this. `null` switches rounding off.',
    trade('1/4 in or 5 mm', 'an even figure on the rule'),
  ),
  outsideDiameter: length('Outside diameter. Use it instead of `wall` and `roundOutsideDiameterTo`.'),
})
export const OUTSIDE_CHOICES = [
  ['outsideDiameter', 'wall'],
  ['outsideDiameter', 'roundOutsideDiameterTo'],
] as const

/** The outer ring of balls in grooves, of whatever default depth. */
export const outerRingGroup = (id: string, depth: Default) =>
  group(
    id,
    'Options for the outer ring.',
    {
      ...depthFields(depth),
      groove: GROOVE,
      ...outsideFields(
        'Least wood behind the groove.',
        trade('2/3 of a ball diameter', 'two thirds of a ball of wood behind the groove'),
      ),
    },
    DEPTH_CHOICE,
    ...OUTSIDE_CHOICES,
  )
export const innerRingGroup = (id: string, depth: Default) =>
  group(id, 'Options for the inner ring.', { ...depthFields(depth), groove: GROOVE }, DEPTH_CHOICE)

export const BORE = required(length('Diameter of the bore through the middle.'))
export const RADIAL_INTERNAL_CLEARANCE = nonNegativeLength(
  'Play: how far the inner ring moves from side to side.',
  trade('1/50 of a ball', 'a play that can be felt and not seen'),
)
export const FINISH_ALLOWANCE = nonNegativeLength(
  'Thickness of the finish or of raised grain on each turned surface.',
  plain('0', 'bare wood'),
)
export const SHOP_DENOMINATOR = choice(
  'Round shop figures in inches to this fraction of an inch: 64 means 1/64 in. It has no effect in millimetres.',
  SHOP_DENOMINATORS,
  trade('64', 'a common rule reads to 1/64 in'),
)
export const widthField = (byDefault: Default) => length('Width of both rings.', byDefault)
export const splitField = (byDefault: Default) =>
  choice('The ring that comes apart at the middle of its groove, so that the balls can go in.', SPLITS, byDefault)

/** The gap between the balls, of arrangements with a full ring of them. */
export const gapFields = (ballGap: Default) => ({
  ballGap: nonNegativeLength(
    'Ball gap to aim for: the space that is left when all balls are pushed together.',
    ballGap,
  ),
  minBallGap: nonNegativeLength(
    'Smallest ball gap at which the bearing still runs.',
    plain('0', 'the ring just closes'),
  ),
  maxBallGap: nonNegativeLength(
    'Largest ball gap that is still good.',
    trade('1/8 of a ball, and at least 1/16 of a ball above the aim', 'wider gaps begin to knock'),
  ),
})

/** Every design states these two; the second tells its shape, and may be left out of a radial one. */
export interface Tagged<Name extends string> {
  readonly units: Units
  readonly arrangement: Name
}
