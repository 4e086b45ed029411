import type { MakingInput, Seasoned } from '#shared/bearing/making-input.ts'
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

/** More balls than anyone turns a ring for. Common practice, no source. */
export const MOST_BALLS = 200
export const ENGAGEMENT: Bounds = { min: 0.01, max: 0.9 }
const CONFORMITY: Bounds = { min: 0.3, max: 2 }
const MOST_MEASURED = 500

export const BALL_MATERIALS = ['wood', 'glass', 'acrylic', 'steel'] as const
export type BallMaterial = (typeof BALL_MATERIALS)[number]

/** Which ring comes apart at the middle of its groove, so that a full ring of balls can be closed in. */
export const SPLITS = ['inner-ring', 'outer-ring', 'none'] as const
export type Split = (typeof SPLITS)[number]

/** Common practice, no source. */
export const SHOP_DENOMINATORS = [8, 16, 32, 64, 128] as const
export type ShopDenominator = (typeof SHOP_DENOMINATORS)[number]

const TRADE: Standing = 'common practice, no source'
const PLAIN: Standing = 'the plain case'
export const trade = (stated: string, reason: string): Default => ({ stated, reason, standing: TRADE })
export const plain = (stated: string, reason: string): Default => ({ stated, reason, standing: PLAIN })

export const COUNT = required(integer('How many there are.', { min: FEWEST_BALLS, max: MOST_BALLS }))
export const DIAMETERS = lengths(
  'Your own measurements, at least `count` of them. Their mean replaces the nominal diameter. Use instead of `standardDeviation`.',
  { min: FEWEST_BALLS, max: MOST_MEASURED },
)
export const BALLS = required(
  group(
    'Balls',
    'The balls to use.',
    {
      count: COUNT,
      diameter: required(length('Nominal ball diameter.')),
      material: choice('Material of the balls.', BALL_MATERIALS, trade('wood', 'most makers buy turned wooden balls')),
      standardDeviation: nonNegativeLength(
        'Standard deviation of the diameters of single balls.',
        trade('by material', 'the usual scatter of balls of this material in one lot'),
      ),
      diameters: DIAMETERS,
    },
    ['standardDeviation', 'diameters'],
  ),
)

export const GROOVE = group(
  'Groove',
  'The arc of a groove in section. Give one of three values.',
  {
    conformity: number(
      'Groove radius divided by ball diameter.',
      CONFORMITY,
      trade('0.53', 'a radius slightly larger than that of the ball; steel bearings stay at or below this (ISO 76)'),
    ),
    grooveRadius: length('Radius of the groove in section. Use instead of `conformity`.'),
    cutterDiameter: length('Diameter of the round-nosed cutter or scraper. Use instead of `conformity`.'),
  },
  ['conformity', 'grooveRadius', 'cutterDiameter'],
)

/** The two ways to give the depth of a groove. `from`: the surface that it is cut into. */
export const depthFields = (byDefault: Default, from = 'land') => ({
  engagement: number('Groove depth as a fraction of the ball diameter.', ENGAGEMENT, byDefault),
  grooveDepth: length(
    `Depth from the ${from} to the bottom of the groove, at its middle. Use instead of \`engagement\`.`,
  ),
})
export const DEPTH_CHOICE = ['engagement', 'grooveDepth'] as const

/** The two ways to give an outside diameter. */
export const outsideFields = (wall: string, byDefault: Default) => ({
  wall: length(wall, byDefault),
  roundOutsideDiameterTo: optionalLength(
    'The outside diameter is rounded up to a multiple of this. null means no rounding.',
    trade('1/4 in or 5 mm', 'an even figure on the rule'),
  ),
  outsideDiameter: length('Outside diameter. Use instead of `wall` and `roundOutsideDiameterTo`.'),
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
        trade('2/3 of a ball diameter', 'wood behind the groove two thirds as thick as a ball'),
      ),
    },
    DEPTH_CHOICE,
    ...OUTSIDE_CHOICES,
  )
export const innerRingGroup = (id: string, depth: Default) =>
  group(id, 'Options for the inner ring.', { ...depthFields(depth), groove: GROOVE }, DEPTH_CHOICE)

export const BORE = required(length('Diameter of the hole in the middle.'))
/** @param element what rolls */
export const radialInternalClearance = (element = 'ball') =>
  nonNegativeLength(
    'Play of the inner ring, from side to side.',
    trade(
      `1/50 of a ${element}, more where the ${element}s scatter`,
      `a play that you can feel but not see, and with which no more than 1 ring in 20 binds on ${element}s as they come`,
    ),
  )
export const FINISH_ALLOWANCE = nonNegativeLength(
  'Thickness of the finish, or of raised grain, on each turned surface.',
  plain('0', 'bare wood'),
)
export const SHOP_DENOMINATOR = choice(
  'Shop figures in inches are rounded to this fraction of an inch. It has no effect in millimetres.',
  SHOP_DENOMINATORS,
  trade('64', 'a common rule is marked to 1/64 in'),
)
export const widthField = (byDefault: Default) => length('Width of both rings.', byDefault)
export const GROOVED_WIDTH = widthField(
  trade('1 1/2 balls', 'wide enough that the wood beside the grooves does not chip'),
)
export const splitField = (byDefault: Default) =>
  choice('Which ring is split at the middle of its groove, so that it can close round the balls.', SPLITS, byDefault)

/** How the last of a full ring goes in: into a closed groove, or from a side that is open. */
type LastIn = 'into-groove' | 'open-side'

/** The gap of arrangements with a full ring. */
export const gapFields = (lastIn: LastIn, element = 'ball') => {
  const [needed, visible] = {
    'into-groove': [
      ` more than the last ${element} needs to go in`,
      `you can see and that lets the last ${element} in`,
    ],
    'open-side': ['', 'you can see'],
  }[lastIn]
  return {
    ballGap: nonNegativeLength(
      `Gap between the last ${element} and the first, with all ${element}s pushed together: the gap to aim for.`,
      trade(
        `1/20 of a ${element}, or 0.4 mm${needed}, whichever is larger; at most 7/8 of a ${element}`,
        `a gap that ${visible}`,
      ),
    ),
    minBallGap: nonNegativeLength(
      `Smallest gap with which the bearing still runs, once the last ${element} is in.`,
      plain('0', `once the last ${element} is in, the bearing runs with any gap`),
    ),
    maxBallGap: nonNegativeLength(
      'Largest gap that is still good.',
      trade(
        `the largest of 1/8 of a ${element}, 1/16 of a ${element} more than \`ballGap\`, and 2 mm${needed}; at most 15/16 of a ${element}`,
        `with a wider gap the ${element}s begin to knock, and a narrower range is hard to hit by hand`,
      ),
    ),
  }
}

/** Every design has these two. The second determines its shape; a radial design may leave it out. */
export interface Tagged<Name extends string> {
  readonly units: Units
  readonly arrangement: Name
  /** How it is made and where it lives. */
  readonly making?: MakingInput
  /** The effect of the season where it lives: calculated before, not part of the request. */
  readonly seasoned?: Seasoned
}
