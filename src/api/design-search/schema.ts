import { type Static, type TSchema, Type } from 'typebox'
import { ARRANGEMENT_NAMES, ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangements.ts'
import { type Fields, group, type NumberField } from '#shared/bearing/field.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import { DROP_REASONS, type DropReason } from '#shared/questions/search/drop-reason.ts'
import type { SharedDesign } from '#shared/questions/search/fields.ts'
import {
  type ACROSS_FIELDS,
  type ALONG_FIELDS,
  COMMON_FIELDS,
  CRITERIA,
  type Criterion,
  DEPTHS,
  type DepthList,
  ON_RULE,
  OWN_FIELDS,
  STOCK_FIELDS,
  sharedFields,
  WEIGHT_FIELDS,
} from '#shared/questions/search/fields.ts'
import { SEASONAL_FIT } from '#shared/questions/season/input.ts'
import type { ForceUnits } from '#shared/units/force.ts'
import { answerOf } from '#src/api/answer.ts'
import type { Climate, Woods } from '#src/api/climate.ts'
import { type DesignRequest, designRef, requestTag, requestUnion, thingsOf, variantId } from '#src/api/design-input.ts'
import { groupSchemas, propertiesOf, type RequestOf } from '#src/api/fields.ts'
import { FORCE_UNITS_FIELD } from '#src/api/force.ts'
import { type Length, shownLength as shown } from '#src/api/length.ts'
import { shownNumber, shownShare } from '#src/api/number.ts'
import { choiceOf, flag, integer, listOf, named, namedRequest, text } from '#src/api/schema.ts'
import type { UnitsName } from '#src/api/units.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const MOST_STOCKS = 24

/** The load of an arrangement with the unit that it is stated in. */
export const loadRows = (name: ArrangementName): Fields => ({ ...SEARCHED[name].load, forceUnits: FORCE_UNITS_FIELD })
type LoadRequest = Partial<RequestOf<typeof ACROSS_FIELDS> & RequestOf<typeof ALONG_FIELDS>> & {
  forceUnits?: ForceUnits
}

/** A search of any arrangement, as it is once the arrangement is filled in: each has some of the fields. */
export type DesignSearchRequest = {
  units: Static<typeof UnitsName>
  arrangement: ArrangementName
  balls: RequestOf<typeof STOCK_FIELDS>[]
  onlyOnRule?: boolean
  load?: LoadRequest
  year?: { woods: Woods; climate: Climate }
  weights?: Partial<Record<Criterion, number>>
} & RequestOf<typeof COMMON_FIELDS> &
  RequestOf<typeof OWN_FIELDS> & {
    -readonly [Name in keyof SharedDesign]: SharedDesign[Name] extends number ? Length : SharedDesign[Name]
  } & Partial<Record<DepthList, number[]>>

const BallStock = namedRequest('BallStock', 'What rolls: what you have or can buy.', propertiesOf(STOCK_FIELDS))

const SearchYear = namedRequest(
  'SearchYear',
  'The woods, the day of making, and the year through which the bearing must run.',
  { woods: refTo<typeof Woods>('Woods'), climate: refTo<typeof Climate>('Climate') },
)

type Properties = Record<string, TSchema>

/** An object schema that refuses, by their names, the properties of others beside it. */
const strict = (own: Properties, all: readonly string[], options: object): TSchema => {
  const foreign = all.filter((name) => !Object.hasOwn(own, name))
  return Type.Object(own, {
    ...options,
    additionalProperties: false,
    ...(foreign.length > 0 ? { 'x-foreign': foreign } : {}),
  })
}

/** The schema of a name that an arrangement has for a part of its search. */
const partId = (name: ArrangementName, part: string): string => variantId(name, part).replace(/Request$/, '')

const LOAD_NAMES = ARRANGEMENT_NAMES.flatMap((name) => Object.keys(loadRows(name)))
const loadOf = (name: ArrangementName) =>
  strict(propertiesOf(loadRows(name)), LOAD_NAMES, {
    $id: partId(name, 'SearchLoad'),
    description:
      'A load that the bearing must carry without a deeper dent; designs rank by their working load over it. An estimate, as in `/v1/load-check`.',
  })

const depths = ({ means, byDefault }: NumberField) =>
  Type.Optional(
    Type.Array(Type.Number({ minimum: DEPTHS.each.min, maximum: DEPTHS.each.max }), {
      minItems: DEPTHS.items.min,
      maxItems: DEPTHS.items.max,
      description: `Depths to try. ${means} Default: ${byDefault?.stated}.`,
    }),
  )

/** The rows of an arrangement's search, besides those that are lists of depths, of balls, or of a path of their own. */
export const rowsOf = (name: ArrangementName): Fields => ({
  ...COMMON_FIELDS,
  ...Object.fromEntries(Object.entries(OWN_FIELDS).filter(([field]) => SEARCHED[name].has.includes(field as never))),
  ...sharedFields(name),
  weights: group(partId(name, 'SearchWeights'), 'How much each mark counts.', weightsOf(name)),
})

const weightsOf = (name: ArrangementName): Fields =>
  Object.fromEntries(
    Object.entries(WEIGHT_FIELDS).filter(([mark]) =>
      (['load', 'onHand', ...SEARCHED[name].marks] as readonly string[]).includes(mark),
    ),
  )

function propertiesFor(name: ArrangementName): Properties {
  const { fields } = ARRANGEMENTS[name]
  const { has } = SEARCHED[name]
  const isYearKnown = (SEASONAL_FIT.serves as readonly string[]).includes(name)
  return {
    units: refTo<typeof UnitsName>('Units'),
    arrangement: requestTag(name, fields),
    balls: Type.Array(refTo<typeof BallStock>('BallStock'), { minItems: 1, maxItems: MOST_STOCKS }),
    ...Object.fromEntries(Object.entries(SEARCHED[name].depths).map(([list, row]) => [list, depths(row)])),
    ...propertiesOf(rowsOf(name)),
    ...(has.includes('onlyOnRule')
      ? {
          onlyOnRule: Type.Optional(flag(`${ON_RULE.means} Default: ${ON_RULE.byDefault.stated}.`)),
        }
      : {}),
    load: Type.Optional(refTo(partId(name, 'SearchLoad'))),
    ...(isYearKnown ? { year: Type.Optional(refTo<typeof SearchYear>('SearchYear')) } : {}),
  }
}

const PROPERTIES = ARRANGEMENT_NAMES.map((name) => [name, propertiesFor(name)] as const)
const ALL_NAMES = [...new Set([...PROPERTIES.flatMap(([, own]) => Object.keys(own)), 'year'])]

const VARIANTS = PROPERTIES.map(([name, own]) =>
  strict(own, ALL_NAMES, {
    $id: variantId(name, 'DesignSearch'),
    description: `Limits, and what is on hand, for ${ARRANGEMENTS[name].fields.means.toLowerCase().replace(/\.$/, '')}. Every combination of the lists is a candidate.`,
    ...thingsOf(name),
  }),
)

export const DesignSearchRequest = requestUnion<DesignSearchRequest>(
  'DesignSearchRequest',
  'Limits, and what is on hand. Every combination of the lists is a candidate.',
  VARIANTS,
)

const SearchCriterion = named('SearchCriterion', 'One part of a score.', {
  name: choiceOf<Criterion>('A name for programs.', CRITERIA),
  mark: shownShare('Mark from 0 to 1, the best.'),
  weight: shownNumber('Weight of the criterion.'),
  message: text('Reason for the mark.'),
})

export const RankedDesign = named('RankedDesign', 'A design within the limits.', {
  rank: Type.Integer({ minimum: 1, description: 'Rank among all designs found.' }),
  score: shownShare('Weighted mean of the marks, less `riskDeduction` of it where a warning is a `risk`.'),
  criteria: Type.Array(refTo<typeof SearchCriterion>('SearchCriterion')),
  design: Type.Unsafe<DesignRequest>({
    ...designRef,
    description: 'Sent to `/v1/design`, it gives every size of this bearing.',
  }),
  outsideDiameter: shown('Outside diameter.'),
  pitchDiameter: shown('Circle through the centres of what rolls.'),
  cutDiameter: shown(
    'The diameter that is cut to set the bearing: of the outer raceway, or of the circle of the groove.',
  ),
  shop: text("The rule's nearest figure to `cutDiameter`."),
  outerWall: shown('Wood between the raceway and the outside.'),
  innerWall: shown('Wood between the raceway and the bore.'),
  ballGap: Type.Optional(shown('Gap to aim for. Absent where no gap closes the ring.')),
  gapAtShop: Type.Optional(shown('Gap that the nearest figure leaves.')),
  nested: Type.Optional(flag("Whether the inner ring comes out of the outer ring's hole.")),
  board: Type.Optional(shown('The narrowest of the boards that will do.')),
  materialUsed: shownShare('The part of the boards that becomes the bearing.'),
  warnings: Type.Array(refTo<typeof Warning>('Warning')),
})

const DroppedCandidates = named('DroppedCandidates', 'Candidates dropped for one reason.', {
  reason: choiceOf<DropReason>('A name for programs.', DROP_REASONS),
  count: Type.Integer({ minimum: 1, description: 'Number of candidates.' }),
  message: text('The reason in words.'),
})

const [FIRST, ...OTHERS] = ARRANGEMENT_NAMES
export const DesignSearchResponse = named(
  'DesignSearchResponse',
  'Ranked designs within the limits: complete, none is missed.',
  answerOf([FIRST ?? 'radial', ...OTHERS], refTo<typeof DesignSearchRequest>('DesignSearchRequest'), {
    ranked: listOf<typeof RankedDesign>('RankedDesign', 'The requested page of designs, best first.'),
    more: flag('Whether there are more behind this page.'),
    candidates: integer('Every combination of the lists.'),
    dropped: listOf<typeof DroppedCandidates>(
      'DroppedCandidates',
      'How many candidates were dropped for which reason. A load and a year are looked at only as far down the list as the page needs.',
    ),
  }),
)
export type DesignSearchResponse = Static<typeof DesignSearchResponse>

const NONE = () => ({})
/** Inner ones first. */
export const DESIGN_SEARCH_SCHEMAS = [
  BallStock,
  SearchYear,
  ...ARRANGEMENT_NAMES.map(loadOf),
  ...groupSchemas(group('', '', COMMON_FIELDS), NONE),
  ...ARRANGEMENT_NAMES.map((name) =>
    strict(propertiesOf(weightsOf(name)), CRITERIA, {
      $id: partId(name, 'SearchWeights'),
      description: 'How much each mark counts.',
    }),
  ),
  ...VARIANTS,
  DesignSearchRequest,
  SearchCriterion,
  RankedDesign,
  DroppedCandidates,
  DesignSearchResponse,
]
