import { ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import {
  type Bounds,
  choice,
  type Fields,
  group,
  type InputOf,
  integer,
  length,
  lengths,
  nonNegativeLength,
  number,
  required,
} from '#shared/bearing/field.ts'
import { BALLS, COUNT, ENGAGEMENT, plain, trade } from '#shared/bearing/fields.ts'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'

/*
 * The fields of a search, one row each. Those that are the same in every design it tries are the arrangement's own rows.
 */

/** The criteria of the score, in the order of an answer. */
export const CRITERIA = ['running', 'load', 'wall', 'seat', 'material', 'nesting', 'onHand'] as const
export type Criterion = (typeof CRITERIA)[number]

/** How much each counts where nothing is stated. Common practice, no source. */
export const WEIGHTS = { running: 4, load: 2, wall: 2, seat: 2, material: 1, nesting: 1, onHand: 1 } as const
const WEIGHT: Bounds = { min: 0, max: 10 }
const weight = (name: Criterion, means: string, reason: string) =>
  number(`Weight of the mark for ${means}.`, WEIGHT, trade(String(WEIGHTS[name]), reason))
export const WEIGHT_FIELDS = {
  running: weight('running', 'the chance that it runs', 'a bearing that does not run is worth nothing'),
  load: weight('load', 'the working load over the load', 'a margin keeps the wood from marks'),
  wall: weight('wall', 'the wood left beside what is cut', 'thick walls keep the wood whole'),
  seat: weight('seat', 'the seat of the balls', 'balls on the bottom of their groove run best'),
  material: weight('material', 'the part of the boards that is used', 'little wood should go to waste'),
  nesting: weight(
    'nesting',
    'an inner ring cut from the hole of the outer ring',
    'one board for both rings saves wood',
  ),
  onHand: weight('onHand', 'drills and plugs on hand', 'a tool that is there need not be made'),
} as const satisfies Readonly<Record<Criterion, unknown>>

/** Common practice, no source. */
const OFF_BY_WARNING = 0.05
const GROOVE_ERROR = 0.05
const COUNTS = { min: 6, max: 40 }
const LIMIT = 10
const MOST_LISTED: Bounds = { min: 1, max: 24 }

export const SHOWN = ['best-of-each-ring', 'all'] as const

const BORE = {
  min: required(length('Smallest bore that you accept.')),
  max: required(length('Largest bore that you accept.')),
  step: length(
    'Step from one bore to the next.',
    trade('1/8 in or 2 mm', 'the steps in which drills and shafts are sold'),
  ),
}

/** The fields that a search of every arrangement has. */
export const COMMON_FIELDS = {
  outsideDiameter: required(
    group('OutsideLimits', 'Limits of the outside diameter.', {
      min: length('Smallest outside diameter that you accept.'),
      max: required(length('Largest outside diameter that you accept.')),
    }),
  ),
  bore: required(group('BoreLimits', 'Every bore from `min` on by `step`.', BORE)),
  counts: group('CountLimits', 'How many of them the bearing holds.', {
    min: integer('The fewest.', COUNT.bounds, trade(String(COUNTS.min), 'with fewer it runs rough')),
    max: integer('The most.', COUNT.bounds, trade(String(COUNTS.max), 'more are seldom turned for')),
  }),
  boardWidths: {
    ...lengths('Widths of the boards on hand, less what is turned off.', MOST_LISTED),
    byDefault: plain('any', 'boards of any width can be had'),
  },
  drillDiameters: lengths('Drills and bits on hand for the bore. A bore without one has a lower mark.', MOST_LISTED),
  tools: group('SearchTools', 'How true a finished raceway comes out.', {
    grooveError: nonNegativeLength(
      'Standard deviation of the radius of a finished groove or track.',
      trade('0.05 mm or 0.002 in', 'cut with a sharp tool, then sanded to a gauge'),
    ),
  }),
  riskDeduction: number(
    'The share of the score that a design with a warning of severity `risk` loses. It is as much as wood and tools leave uncertain: such a design leads a clean one only if it is better beyond doubt. What plugs cannot tell does not count, for a rule can.',
    { min: 0, max: 1 },
    trade(String(OFF_BY_WARNING), 'two scores nearer than this are equal for a maker'),
  ),
  show: choice(
    '`best-of-each-ring`: of the designs with the same balls and count only the best. `all`: every one.',
    SHOWN,
    plain('best-of-each-ring', 'one design for each size and count'),
  ),
  offset: integer('How many of the best to pass over.', { min: 0, max: 200 }, plain('0', 'from the best on')),
  limit: integer('How many to show.', { min: 1, max: 50 }, plain(String(LIMIT), 'as many as one can look through')),
} as const satisfies Fields

/** Fields that some arrangements have. */
export const OWN_FIELDS = {
  partingWidth: length(
    'Wood between the rings when one is cut out of the other: saw, and what is turned off.',
    trade('1/4 in or 6 mm', 'the cut of the saw, and what is turned off'),
  ),
  plugDiameters: lengths(
    'Plugs or discs on hand. One between the go and the no-go size tells when to stop cutting.',
    MOST_LISTED,
  ),
  cutterDiameters: {
    ...lengths('Round-nosed cutters on hand, for every groove.', { min: 1, max: 16 }),
    byDefault: trade('a groove radius of 0.53 balls, by whatever cutter', 'a little rounder than the ball'),
  },
} as const satisfies Fields

/** Depths of grooves to try, as fractions of the ball diameter. */
export const DEPTH_LISTS = ['outerEngagements', 'innerEngagements', 'engagements'] as const
export type DepthList = (typeof DEPTH_LISTS)[number]
export const DEPTHS = { each: ENGAGEMENT, items: { min: 1, max: 12 } } as const

/** `onlyOnRule`, which is true or false. */
export const ON_RULE = {
  means:
    "Keep only designs whose groove or track, cut to the rule's nearest figure, still leaves a gap from that of the go plug to `maxBallGap`.",
  byDefault: plain('false', 'designs count whatever figure the rule shows'),
}

/** Rolling elements: on hand, or to be bought. */
export const STOCK_FIELDS = {
  diameter: required(length('Nominal diameter.')),
  material: BALLS.fields.material,
  standardDeviation: nonNegativeLength(
    'Standard deviation of single diameters.',
    trade('by material', 'the usual scatter of one lot of this material'),
  ),
  quantity: {
    ...integer('How many of them there are.', { min: 1, max: 100_000 }),
    byDefault: plain('as many as are wanted', 'more can be bought'),
  },
} as const satisfies Fields
export type Stock = InputOf<typeof STOCK_FIELDS>

const { wood, dentFraction } = LOAD_FIELDS
/** A load across the axis, and one along it. */
export const ACROSS_FIELDS = { radialLoad: required(LOAD_FIELDS.radialLoad), wood, dentFraction } as const
export const ALONG_FIELDS = {
  axialLoad: required(LOAD_FIELDS.axialLoad),
  offset: LOAD_FIELDS.offset,
  wood,
  dentFraction,
} as const

const { fields } = ARRANGEMENTS.radial.fields
/** The fields that every design of a search shares, of any arrangement. */
const SHARED_FIELDS = {
  ballGap: fields.ballGap,
  minBallGap: fields.minBallGap,
  maxBallGap: fields.maxBallGap,
  radialInternalClearance: fields.radialInternalClearance,
  finishAllowance: fields.finishAllowance,
  width: fields.width,
  split: fields.split,
  shopDenominator: fields.shopDenominator,
}
export type SharedDesign = InputOf<typeof SHARED_FIELDS>

/** The rows of those that an arrangement has, which are its own. */
export const sharedFields = (name: ArrangementName): Fields =>
  Object.fromEntries(Object.entries(ARRANGEMENTS[name].fields.fields).filter(([field]) => field in SHARED_FIELDS))

/** Values of a search that no row can state, as they depend on the units. */
export const boreStep = (units: Units): Mm => (units === 'in' ? inches(1 / 8) : mm(2))
export const partingWidth = (units: Units): Mm => (units === 'in' ? inches(1 / 4) : mm(6))
export const usualTools = (units: Units) => ({ grooveError: units === 'in' ? inches(0.002) : mm(GROOVE_ERROR) })
export const USUAL = {
  counts: COUNTS,
  limit: LIMIT,
  riskDeduction: OFF_BY_WARNING,
  show: 'best-of-each-ring',
  offset: 0,
} as const
