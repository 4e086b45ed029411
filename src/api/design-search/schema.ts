import { type Static, Type } from 'typebox'
import { BALL_MATERIALS, type BallMaterial, ENGAGEMENT, MOST_BALLS } from '#shared/bearing/fields.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { WOOD_FIELDS } from '#shared/questions/load/fields.ts'
import { SEARCH_DEFAULTS, SEARCH_RULES } from '#shared/questions/search/defaults.ts'
import { DROP_REASONS, type DropReason } from '#shared/questions/search/drop-reason.ts'
import { CRITERIA, type Criterion, SHARED_FIELDS, SHOWN, type Shown } from '#shared/questions/search/input.ts'
import { answerOf, arrangementTag } from '#src/api/answer.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { optionalField } from '#src/api/fields.ts'
import { FORCE_UNITS_FIELD } from '#src/api/force.ts'
import { type Length, length, nonNegativeLength, shownLength as shown } from '#src/api/length.ts'
import { shownNumber, shownShare } from '#src/api/number.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const ROWS = { ...SEARCH_DEFAULTS, ...SEARCH_RULES }
/** The default of a field, as its row states it. */
const usual = (path: keyof typeof ROWS): string => `Default: ${ROWS[path].stated}.`

const MOST_STOCKS = 24
const MOST_CUTTERS = 16
const MOST_DEPTHS = 12
const MOST_BOARDS = 24
const MOST_WEIGHT = 10
const MOST_OFFSET = 200
const MOST_SHOWN = 50

const BallStock = Type.Object(
  {
    diameter: length('Nominal ball diameter.'),
    material: Type.Optional(
      Type.Unsafe<BallMaterial>(Type.Enum(BALL_MATERIALS, { type: 'string', description: usual('/balls/*/material') })),
    ),
    standardDeviation: Type.Optional(
      nonNegativeLength(`Scatter of single balls round their mean. ${usual('/balls/*/standardDeviation')}`),
    ),
    quantity: Type.Optional(
      Type.Integer({ minimum: 1, maximum: 100_000, description: 'Number of these balls. Default: unlimited.' }),
    ),
  },
  { $id: 'BallStock', description: 'Balls that you have or can buy.', additionalProperties: false },
)

const LengthLimits = Type.Object(
  {
    min: Type.Optional(length('Smallest value that you accept.')),
    max: length('Largest value that you accept.'),
  },
  { $id: 'LengthLimits', description: 'Smallest and largest value that you accept.', additionalProperties: false },
)

const BoreLimits = Type.Object(
  {
    min: length('Smallest value that you accept.'),
    max: length('Largest value that you accept.'),
    step: Type.Optional(length(`Step from one bore to the next. ${usual('/bore/step')}`)),
  },
  { $id: 'BoreLimits', description: 'Every bore from `min` on by `step`.', additionalProperties: false },
)

const count = (description: string) =>
  Type.Optional(Type.Integer({ minimum: FEWEST_BALLS, maximum: MOST_BALLS, description }))

const CountLimits = Type.Object(
  {
    min: count(`The fewest. ${usual('/counts/min')}`),
    max: count(`The most. ${usual('/counts/max')}`),
  },
  { $id: 'CountLimits', description: 'How many balls fill the ring.', additionalProperties: false },
)

const weight = (name: Criterion) =>
  Type.Optional(
    Type.Number({
      minimum: 0,
      maximum: MOST_WEIGHT,
      description: usual(`/weights/${name}`),
    }),
  )

const SearchWeights = Type.Object(
  {
    closure: weight('closure'),
    wall: weight('wall'),
    nesting: weight('nesting'),
    seat: weight('seat'),
    sensitivity: weight('sensitivity'),
    material: weight('material'),
  },
  {
    $id: 'SearchWeights',
    description: 'How much each criterion counts. The defaults are common practice, no source.',
    additionalProperties: false,
  },
)

const SearchLoad = Type.Object(
  {
    radialLoad: Type.Number({
      minimum: 0.001,
      maximum: 100_000,
      description: 'Load across the axis, in `forceUnits`.',
    }),
    forceUnits: optionalField(FORCE_UNITS_FIELD),
    wood: optionalField(WOOD_FIELDS.wood),
    dentFraction: optionalField(WOOD_FIELDS.dentFraction),
  },
  {
    $id: 'SearchLoad',
    description: 'A load that the bearing must carry without a deeper dent: an estimate, as in `/v1/load-check`.',
    additionalProperties: false,
  },
)

const SearchYear = Type.Object(
  { woods: refTo<typeof Woods>('Woods'), climate: refTo<typeof Climate>('Climate') },
  {
    $id: 'SearchYear',
    description: 'The woods, the day of making, and the year through which the bearing must run.',
    additionalProperties: false,
  },
)

const engagements = (ring: 'outer' | 'inner') =>
  Type.Optional(
    Type.Array(Type.Number({ minimum: ENGAGEMENT.min, maximum: ENGAGEMENT.max }), {
      minItems: 1,
      maxItems: MOST_DEPTHS,
      description: `Depths of the ${ring} ring's groove to try, as fractions of the ball diameter. ${usual(`/${ring}Engagements/*`)}`,
    }),
  )

export const DesignSearchRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    arrangement: Type.Optional(arrangementTag('radial')),
    outsideDiameter: Type.Unsafe<Static<typeof LengthLimits>>({
      ...refTo<typeof LengthLimits>('LengthLimits'),
      description: 'Outside diameter of the outer ring.',
    }),
    bore: refTo<typeof BoreLimits>('BoreLimits'),
    balls: Type.Array(refTo<typeof BallStock>('BallStock'), { minItems: 1, maxItems: MOST_STOCKS }),
    counts: Type.Optional(refTo<typeof CountLimits>('CountLimits')),
    cutterDiameters: Type.Optional(
      Type.Array(refTo<typeof Length>('Length'), {
        minItems: 1,
        maxItems: MOST_CUTTERS,
        description: `Round-nosed cutters on hand, for both grooves. ${usual('/cutterDiameters')}`,
      }),
    ),
    outerEngagements: engagements('outer'),
    innerEngagements: engagements('inner'),
    boardWidths: Type.Optional(
      Type.Array(refTo<typeof Length>('Length'), {
        minItems: 1,
        maxItems: MOST_BOARDS,
        description: `Widths of the boards on hand, less what is turned off. ${usual('/boardWidths')}`,
      }),
    ),
    partingWidth: Type.Optional(
      length(
        `Wood between the rings when one is cut out of the other: saw, and what is turned off. ${usual('/partingWidth')}`,
      ),
    ),
    ballGap: optionalField(SHARED_FIELDS.ballGap),
    minBallGap: optionalField(SHARED_FIELDS.minBallGap),
    maxBallGap: optionalField(SHARED_FIELDS.maxBallGap),
    radialInternalClearance: optionalField(SHARED_FIELDS.radialInternalClearance),
    finishAllowance: optionalField(SHARED_FIELDS.finishAllowance),
    width: optionalField(SHARED_FIELDS.width),
    split: optionalField(SHARED_FIELDS.split),
    shopDenominator: optionalField(SHARED_FIELDS.shopDenominator),
    onlyOnRule: Type.Optional(
      Type.Boolean({
        description: `Keep only designs whose outer groove, cut to the nearest figure of the rule, still leaves a gap from \`minBallGap\` to \`maxBallGap\`. ${usual('/onlyOnRule')}`,
      }),
    ),
    load: Type.Optional(refTo<typeof SearchLoad>('SearchLoad')),
    year: Type.Optional(refTo<typeof SearchYear>('SearchYear')),
    weights: Type.Optional(refTo<typeof SearchWeights>('SearchWeights')),
    show: Type.Optional(
      Type.Unsafe<Shown>(
        Type.Enum(SHOWN, {
          type: 'string',
          description: `\`best-of-each-ring\`: of the designs with the same balls and count only the best. \`all\`: every one. ${usual('/show')}`,
        }),
      ),
    ),
    offset: Type.Optional(
      Type.Integer({
        minimum: 0,
        maximum: MOST_OFFSET,
        description: `How many of the best to pass over. ${usual('/offset')}`,
      }),
    ),
    limit: Type.Optional(
      Type.Integer({ minimum: 1, maximum: MOST_SHOWN, description: `How many to show. ${usual('/limit')}` }),
    ),
  },
  {
    $id: 'DesignSearchRequest',
    description: 'Limits, and what is on hand. Every combination of the lists is a candidate.',
    additionalProperties: false,
  },
)
export type DesignSearchRequest = Static<typeof DesignSearchRequest>

const SearchCriterion = Type.Object(
  {
    name: Type.Unsafe<Criterion>(Type.Enum(CRITERIA, { type: 'string', description: 'A name for programs.' })),
    mark: shownShare('Mark from 0 to 1, the best.'),
    weight: shownNumber('Weight of the criterion.'),
    message: Type.String({ description: 'Reason for the mark.' }),
  },
  { $id: 'SearchCriterion', description: 'One part of a score.' },
)

const RankedDesign = Type.Object(
  {
    rank: Type.Integer({ minimum: 1, description: 'Rank among all designs found.' }),
    score: shownShare('Weighted mean of the marks.'),
    criteria: Type.Array(refTo<typeof SearchCriterion>('SearchCriterion')),
    design: Type.Unsafe<DesignRequest>({
      ...designRef,
      description: 'Sent to `/v1/design`, it gives every size of this bearing.',
    }),
    pitchDiameter: shown('Circle through the centres of the seated balls.'),
    outerRing: Type.Object(
      {
        outsideDiameter: shown('Outside diameter.'),
        grooveBottomDiameter: shown('Diameter across the bottoms of the groove.'),
        wall: shown('Wood behind the groove.'),
      },
      { description: 'Sizes of the outer ring.' },
    ),
    innerRing: Type.Object(
      { wall: shown('Wood between bore and groove.') },
      { description: 'Sizes of the inner ring.' },
    ),
    shop: Type.String({ description: "The rule's nearest figure to the outer groove's bottom." }),
    ballGap: shown('Target ball gap.'),
    gapAtShop: shown('Ball gap that the nearest figure leaves.'),
    landGap: shown('Space between the lands of concentric rings.'),
    nested: Type.Boolean({ description: "Whether the inner ring comes out of the outer ring's hole." }),
    board: Type.Optional(shown('The narrowest of the boards that will do.')),
    materialUsed: shownShare('The part of the boards that becomes rings.'),
    warnings: Type.Array(refTo<typeof Warning>('Warning')),
  },
  { $id: 'RankedDesign', description: 'A design within the limits.' },
)

const DroppedCandidates = Type.Object(
  {
    reason: Type.Unsafe<DropReason>(Type.Enum(DROP_REASONS, { type: 'string', description: 'A name for programs.' })),
    count: Type.Integer({ minimum: 1, description: 'Number of candidates.' }),
    message: Type.String({ description: 'The reason in words.' }),
  },
  { $id: 'DroppedCandidates', description: 'Candidates dropped for one reason.' },
)

export const DesignSearchResponse = Type.Object(
  answerOf(['radial'], refTo<typeof DesignSearchRequest>('DesignSearchRequest'), {
    ranked: Type.Array(refTo<typeof RankedDesign>('RankedDesign'), {
      description: 'The requested page of designs, best first.',
    }),
    more: Type.Boolean({ description: 'Whether there are more behind this page.' }),
    candidates: Type.Integer({ description: 'Every combination of the lists.' }),
    workedOut: Type.Integer({ description: 'Number of candidates calculated in full.' }),
    outranked: Type.Integer({
      description: 'How many cannot reach this page: their bound, which no score exceeds, is below its last one.',
    }),
    dropped: Type.Array(refTo<typeof DroppedCandidates>('DroppedCandidates'), {
      description: 'How many candidates were dropped for which reason, among those that were calculated or bounded.',
    }),
  }),
  { $id: 'DesignSearchResponse', description: 'Ranked designs within the limits: complete, none is missed.' },
)
export type DesignSearchResponse = Static<typeof DesignSearchResponse>

/** Inner ones first. */
export const DESIGN_SEARCH_SCHEMAS = [
  BallStock,
  LengthLimits,
  BoreLimits,
  CountLimits,
  SearchWeights,
  SearchLoad,
  SearchYear,
  DesignSearchRequest,
  SearchCriterion,
  RankedDesign,
  DroppedCandidates,
  DesignSearchResponse,
]
