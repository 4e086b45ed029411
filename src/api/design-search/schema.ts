import { type Static, Type } from 'typebox'
import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIALS, type BallMaterial, ENGAGEMENT, MOST_BALLS } from '#shared/bearing/fields.ts'
import { CONTACT_WOODS, type ContactWoodId } from '#shared/data/contact-woods.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import { DROP_REASONS, type DropReason } from '#shared/questions/search/drop-reason.ts'
import { CRITERIA, type Criterion, SHOWN, type Shown } from '#shared/questions/search/input.ts'
import { FORCE_UNITS, type ForceUnits } from '#shared/units/force.ts'
import type { Caution } from '#src/api/caution.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { type DesignRequest, designRef } from '#src/api/design-input.ts'
import { optionalField } from '#src/api/fields.ts'
import type { Length, NonNegativeLength, ShownLength, SignedLength } from '#src/api/length.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const length = (description: string) => Type.Unsafe<Length>({ ...refTo<typeof Length>('Length'), description })
const size0 = (description: string) =>
  Type.Unsafe<Length>({ ...refTo<typeof NonNegativeLength>('NonNegativeLength'), description })
const shown = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

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
      Type.Unsafe<BallMaterial>(Type.Enum(BALL_MATERIALS, { type: 'string', description: 'Default: wood.' })),
    ),
    standardDeviation: Type.Optional(size0('Scatter of single balls round their mean. Default: by material.')),
    quantity: Type.Optional(
      Type.Integer({ minimum: 1, maximum: 100_000, description: 'How many there are. Default: as many as wanted.' }),
    ),
  },
  { $id: 'BallStock', description: 'Balls on hand, or to be had.', additionalProperties: false },
)

const LengthLimits = Type.Object(
  {
    least: Type.Optional(length('The smallest that will do.')),
    most: length('The largest that will do.'),
  },
  { $id: 'LengthLimits', description: 'From the smallest to the largest that will do.', additionalProperties: false },
)

const BoreLimits = Type.Object(
  {
    least: length('The smallest that will do.'),
    most: length('The largest that will do.'),
    step: Type.Optional(length('From one to the next. Default: 1/8 in or 2 mm.')),
  },
  { $id: 'BoreLimits', description: 'Every bore from `least` on by `step`.', additionalProperties: false },
)

const count = (description: string) =>
  Type.Optional(Type.Integer({ minimum: FEWEST_BALLS, maximum: MOST_BALLS, description }))

const CountLimits = Type.Object(
  { least: count('Default: 6.'), most: count('Default: 40.') },
  { $id: 'CountLimits', description: 'How many balls fill the ring.', additionalProperties: false },
)

const weight = (usual: number) =>
  Type.Optional(Type.Number({ minimum: 0, maximum: MOST_WEIGHT, description: `Default: ${usual}.` }))

const SearchWeights = Type.Object(
  {
    closure: weight(3),
    wall: weight(2),
    nesting: weight(1),
    seat: weight(2),
    sensitivity: weight(2),
    material: weight(1),
  },
  {
    $id: 'SearchWeights',
    description: 'How much each criterion counts. The defaults are common practice, no source.',
    additionalProperties: false,
  },
)

const SearchLoad = Type.Object(
  {
    radialLoad: Type.Number({ minimum: 0.001, maximum: 100_000, description: 'In `forceUnits`.' }),
    forceUnits: Type.Optional(
      Type.Unsafe<ForceUnits>(
        Type.Enum(FORCE_UNITS, { type: 'string', description: 'Default: N with millimetres, lbf with inches.' }),
      ),
    ),
    wood: Type.Optional(
      Type.Unsafe<ContactWoodId>(
        Type.Enum([...CONTACT_WOODS], { type: 'string', description: 'Of both rings. Default: maple-sugar.' }),
      ),
    ),
    dentFraction: Type.Optional(
      Type.Number({
        minimum: 0.0001,
        maximum: 0.05,
        description: 'Lasting dent that is still borne, in ball diameters. Default: 0.005.',
      }),
    ),
  },
  {
    $id: 'SearchLoad',
    description: 'What the bearing is to carry without a deeper dent: an estimate, as of `/v1/load-check`.',
    additionalProperties: false,
  },
)

/** What is the same in every design, as a design has it. */
const SHARED = ARRANGEMENTS.radial.fields.fields

const SearchYear = Type.Object(
  { woods: refTo<typeof Woods>('Woods'), climate: refTo<typeof Climate>('Climate') },
  {
    $id: 'SearchYear',
    description: 'What the bearing is made of, the day on which it is made, and the year in which nothing may stop it.',
    additionalProperties: false,
  },
)

const engagements = (ring: string, usual: number) =>
  Type.Optional(
    Type.Array(Type.Number({ minimum: ENGAGEMENT.least, maximum: ENGAGEMENT.most }), {
      minItems: 1,
      maxItems: MOST_DEPTHS,
      description: `Depths of the ${ring} ring's groove to try, as fractions of the ball diameter. Default: ${usual}.`,
    }),
  )

export const DesignSearchRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    outsideDiameter: Type.Unsafe<Static<typeof LengthLimits>>({
      ...refTo<typeof LengthLimits>('LengthLimits'),
      description: 'Of the outer ring.',
    }),
    bore: refTo<typeof BoreLimits>('BoreLimits'),
    balls: Type.Array(refTo<typeof BallStock>('BallStock'), { minItems: 1, maxItems: MOST_STOCKS }),
    counts: Type.Optional(refTo<typeof CountLimits>('CountLimits')),
    cutterDiameters: Type.Optional(
      Type.Array(refTo<typeof Length>('Length'), {
        minItems: 1,
        maxItems: MOST_CUTTERS,
        description:
          'Round-nosed cutters on hand, for both grooves. Default: a groove radius of 0.53 balls, by whatever cutter.',
      }),
    ),
    outerEngagements: engagements('outer', 0.2),
    innerEngagements: engagements('inner', 0.4),
    boardWidths: Type.Optional(
      Type.Array(refTo<typeof Length>('Length'), {
        minItems: 1,
        maxItems: MOST_BOARDS,
        description: 'Widths of the boards on hand, less what is turned off. Default: any.',
      }),
    ),
    partingWidth: Type.Optional(
      length(
        'Wood between the rings when one is cut out of the other: saw, and what is turned off. Default: 1/4 in or 6 mm.',
      ),
    ),
    ballGap: optionalField(SHARED.ballGap),
    minBallGap: optionalField(SHARED.minBallGap),
    maxBallGap: optionalField(SHARED.maxBallGap),
    radialInternalClearance: optionalField(SHARED.radialInternalClearance),
    finishAllowance: optionalField(SHARED.finishAllowance),
    width: optionalField(SHARED.width),
    split: optionalField(SHARED.split),
    shopDenominator: optionalField(SHARED.shopDenominator),
    onlyOnRule: Type.Optional(
      Type.Boolean({
        description:
          "Only designs whose outer groove, cut to the rule's nearest figure, still leaves a gap from `minBallGap` to `maxBallGap`. Default: false.",
      }),
    ),
    load: Type.Optional(refTo<typeof SearchLoad>('SearchLoad')),
    year: Type.Optional(refTo<typeof SearchYear>('SearchYear')),
    weights: Type.Optional(refTo<typeof SearchWeights>('SearchWeights')),
    show: Type.Optional(
      Type.Unsafe<Shown>(
        Type.Enum(SHOWN, {
          type: 'string',
          description:
            '`best-of-each-ring`: of the designs with the same balls and count only the best. `all`: every one. Default: best-of-each-ring.',
        }),
      ),
    ),
    offset: Type.Optional(
      Type.Integer({ minimum: 0, maximum: MOST_OFFSET, description: 'How many of the best to pass over. Default: 0.' }),
    ),
    limit: Type.Optional(
      Type.Integer({ minimum: 1, maximum: MOST_SHOWN, description: 'How many to show. Default: 10.' }),
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
    mark: Type.Number({ minimum: 0, maximum: 1, description: '1 is as good as it gets.' }),
    weight: Type.Number({ minimum: 0, description: 'How much it counts.' }),
    message: Type.String({ description: 'Why.' }),
  },
  { $id: 'SearchCriterion', description: 'One part of a score.' },
)

const RankedDesign = Type.Object(
  {
    rank: Type.Integer({ minimum: 1, description: 'Among all that were found.' }),
    score: Type.Number({ minimum: 0, maximum: 1, description: 'Weighted mean of the marks.' }),
    criteria: Type.Array(refTo<typeof SearchCriterion>('SearchCriterion')),
    design: Type.Unsafe<DesignRequest>({
      ...designRef,
      description: 'Sent to `/v1/design`, it gives every size of this bearing.',
    }),
    outsideDiameter: shown('Of the outer ring.'),
    pitchDiameter: shown('Circle through the centres of the seated balls.'),
    outerGrooveBottomDiameter: shown('Across the bottoms of the outer groove.'),
    shop: Type.String({ description: "The rule's nearest figure to that." }),
    ballGap: shown('Aimed at.'),
    gapAtShop: Type.Unsafe<SignedLength>({
      ...refTo<typeof ShownLength>('ShownLength'),
      description: 'The gap that the nearest figure leaves.',
    }),
    outerWall: shown('Wood behind the outer groove.'),
    innerWall: shown('Wood between bore and inner groove.'),
    landGap: shown('Between the lands, rings concentric.'),
    nested: Type.Boolean({ description: "Whether the inner ring comes out of the outer ring's hole." }),
    board: Type.Optional(shown('The narrowest of the boards that will do.')),
    materialUsed: Type.Number({ description: 'The part of the boards that becomes rings.' }),
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
  { $id: 'DroppedCandidates', description: 'Candidates that are none, for one reason.' },
)

export const DesignSearchResponse = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    ranked: Type.Array(refTo<typeof RankedDesign>('RankedDesign'), { description: 'The page asked for, best first.' }),
    more: Type.Boolean({ description: 'Whether there are more behind this page.' }),
    candidates: Type.Integer({ description: 'Every combination of the lists.' }),
    workedOut: Type.Integer({ description: 'How many were worked out in full.' }),
    outranked: Type.Integer({
      description: 'How many cannot reach this page: their bound, which no score exceeds, is below its last one.',
    }),
    dropped: Type.Array(refTo<typeof DroppedCandidates>('DroppedCandidates'), {
      description: 'How many are no answer, and why; of those that were worked out or that a bound told.',
    }),
    cautions: Type.Array(refTo<typeof Caution>('Caution')),
  },
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
