import { type Static, type TSchema, Type } from 'typebox'
import {
  ARRANGEMENT_NAMES,
  ARRANGEMENTS,
  type ArrangementName,
  type Arrangements,
  arrangementOf,
  type InputByArrangement,
  nameOf,
} from '#shared/bearing/arrangements.ts'
import { type Fields, type Group, type InputOf, valueAt } from '#shared/bearing/field.ts'
import type { Seasoned } from '#shared/bearing/making-input.ts'
import { choiceOf } from '#src/api/schema.ts'
import { type Fault, notValid } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { NO_FRACTIONS, NO_SHARED_GROOVE } from '#src/words/season-refusal.ts'
import { TERMS } from '#src/words/terms.ts'
import {
  type ForeignNames,
  fromRequest,
  groupSchemas,
  propertiesOf,
  type RequestOf,
  rulesOf,
  toRequest,
} from './fields.ts'
import { type MakingRequest, makingFaults, toMakingInput, toMakingRequest } from './making-input.ts'
import type { UnitsName } from './units.ts'

type FieldsOf<A> = A extends { fields: Group<infer F> } ? F : never
type Units = Static<typeof UnitsName>

/** The design request of each of some arrangements, as it is once the arrangement is filled in. */
export type RequestsOf<M extends Arrangements> = {
  readonly [Name in keyof M]: {
    units: Units
    arrangement: Name
    making?: MakingRequest
  } & RequestOf<FieldsOf<M[Name]>>
}
export type RequestByArrangement = RequestsOf<typeof ARRANGEMENTS>
export type DesignRequest = RequestByArrangement[ArrangementName]

/** Names that a place of one arrangement's input has not, and that of another has. */
function foreignNames(modules: Arrangements): ForeignNames {
  const names = new Map<string, Set<string>>()
  const add = (path: string, { fields }: Group): void => {
    for (const [name, field] of Object.entries(fields)) {
      names.set(path, (names.get(path) ?? new Set()).add(name))
      if (field.kind === 'group') add(`${path}/${name}`, field)
    }
  }
  for (const { fields } of Object.values(modules)) add('', fields)
  return (path, { fields }) => {
    const foreign = [...(names.get(path) ?? [])].filter((name) => !Object.hasOwn(fields, name))
    return foreign.length > 0 ? { 'x-foreign': foreign } : {}
  }
}

/**
 * A design request with further fields of a path, one schema an arrangement and the union of them.
 *
 * @param name of the request, after which its schemas are called: `Drawing` makes `RadialDrawingRequest` and so on
 */
export function designRequests<Extra extends Record<string, TSchema>>(
  name: string,
  description: string,
  extra: Extra,
  modules: Arrangements = ARRANGEMENTS,
): readonly TSchema[] {
  const foreignIn = foreignNames(modules)
  const variants = Object.entries(modules).map(([arrangement, { fields }]) =>
    Type.Object(
      {
        units: refTo<typeof UnitsName>('Units'),
        arrangement: requestTag(arrangement, fields),
        ...propertiesOf(fields.fields),
        making: Type.Optional(refTo<typeof MakingRequest>('MakingRequest')),
        ...extra,
      },
      {
        $id: variantId(arrangement, name),
        description: fields.means,
        ...thingsOf(arrangement),
        ...rulesOf(fields),
        ...foreignIn('', fields),
      },
    ),
  )
  return [...variants, requestUnion(`${name}Request`, description, variants)]
}

/** The field by which a request states its arrangement. */
export const requestTag = <Name extends string>(arrangement: Name, { means }: Pick<Group, 'means'>) =>
  choiceOf<Name>(`\`${arrangement}\`: ${means}`, [arrangement])

/** How a refusal speaks of bearings of an arrangement. */
export function thingsOf(arrangement: string): { readonly 'x-things'?: string } {
  const known = ARRANGEMENT_NAMES.find((name) => name === arrangement)
  return known === undefined ? {} : { 'x-things': TERMS[known].bearings }
}

/** The schemas of all groups of fields that some arrangements have, each once, inner ones first. */
export function fieldSchemas(modules: Arrangements): readonly TSchema[] {
  const foreignIn = foreignNames(modules)
  const schemas = Object.values(modules).flatMap(({ fields }) => groupSchemas(fields, foreignIn))
  return [...new Map(schemas.map((schema) => [String(Reflect.get(schema, '$id')), schema])).values()]
}

/** A request of any arrangement: one of several schemas, told apart by `arrangement`. Each has a `$id` and the tag. */
export const requestUnion = <Request>($id: string, description: string, variants: readonly TSchema[]) =>
  Type.Unsafe<Request>({
    $id,
    description: `${description} \`arrangement\` tells the shapes apart: each has a value of its own. Without it the bearing is \`radial\`, and because it may be left out, OpenAPI allows no discriminator here.`,
    type: 'object',
    // The tag is filled in before it is looked at.
    'x-usual': 'radial',
    discriminator: { propertyName: 'arrangement' },
    oneOf: variants.map((variant) => Type.Ref(String(Reflect.get(variant, '$id')))),
  })

export const variantId = (arrangement: string, name: string): string =>
  `${arrangement[0]?.toUpperCase()}${arrangement.slice(1)}${name}Request`

/** A reference to the design request of one arrangement. */
export const requestRef = <Name extends ArrangementName>(arrangement: Name) =>
  Type.Unsafe<RequestByArrangement[Name]>(Type.Ref(variantId(arrangement, 'Design')))

/** A reference to the design request of any arrangement, or of those that a path serves. */
export const designRef = Type.Unsafe<DesignRequest>(Type.Ref('DesignRequest'))

/** Added once by `app.ts`, inner ones first: every path that takes a bearing refers to them. */
export const DESIGN_INPUT_SCHEMAS: readonly TSchema[] = [
  ...fieldSchemas(ARRANGEMENTS),
  ...designRequests(
    'Design',
    'The known values of a bearing. Values that you leave out take their defaults, and the answer echoes them.',
    {},
  ),
]

/**
 * The caller's input in the words of the core: millimetres, and no field that is undefined.
 *
 * @param at where the design stands in the request
 * @throws ProblemError with every fault that its schema does not find
 */
export function toDesignInput<Name extends ArrangementName>(
  request: RequestByArrangement[Name],
  at = '',
): InputByArrangement[Name] {
  const ofMaking = request.making === undefined ? [] : makingFaults(request.making, request, request.units)
  const faults = [
    ...ruleFaults(request),
    ...grooveFaults(request),
    ...ofMaking.map((fault) => ({ ...fault, path: `/making${fault.path}` })),
  ]
  if (faults.length > 0) throw notValid(faults.map((fault) => ({ ...fault, path: `${at}${fault.path}` })))
  const fields: Group = ARRANGEMENTS[nameOf(request)].fields
  const { making, seasoned }: { making?: MakingRequest; seasoned?: Seasoned } = request
  return {
    // What rows there are, `fields` knows; what else the request holds is not looked at.
    ...inputBy(fields, request as unknown as Tagged<ArrangementName> & RequestOf<Fields>),
    ...(making && { making: toMakingInput(making, request.units) }),
    ...(seasoned && { seasoned }),
  } as unknown as InputByArrangement[Name]
}

/** A rule in millimetres has no fractions. */
export const ruleFaults = ({ units, shopDenominator }: RuleOf): readonly Fault[] =>
  units === 'mm' && shopDenominator !== undefined ? [{ path: '/shopDenominator', message: NO_FRACTIONS }] : []

/** A groove for both rings, of which each has its own. */
const grooveFaults = (request: DesignRequest): readonly Fault[] =>
  [['groove'], ['outerRing', 'groove'], ['innerRing', 'groove']].every((names) => valueAt(request, names) !== undefined)
    ? [{ path: '/groove', message: NO_SHARED_GROOVE }]
    : []

interface RuleOf {
  readonly units: Units
  readonly shopDenominator?: number
}

/** The core's input as the caller could have written it: lengths as numbers in `units`. The way back of `toDesignInput`. */
export function toDesignRequest<Name extends ArrangementName>(
  input: InputByArrangement[Name],
): RequestByArrangement[Name] {
  const { fields } = arrangementOf(input)
  const { making, seasoned: _, ...rest } = input
  return {
    ...requestBy(fields, { ...rest, arrangement: nameOf(input) }),
    ...(making && { making: toMakingRequest(making, input.units, input) }),
  } as unknown as RequestByArrangement[Name]
}

type Tagged<Name extends string> = { readonly units: Units; readonly arrangement: Name }

/** A request of whichever arrangement, read by the rows of its fields. */
export function inputBy<Name extends string, F extends Fields>(
  { fields }: Group<F>,
  request: Tagged<Name> & RequestOf<F>,
): Tagged<Name> & InputOf<F> {
  const { units, arrangement } = request
  return { units, arrangement, ...fromRequest(fields, { ...request }, units) }
}

/** The way back of `inputBy`. */
export function requestBy<Name extends string, F extends Fields>(
  { fields }: Group<F>,
  input: Tagged<Name> & InputOf<F>,
): Tagged<Name> & RequestOf<F> {
  const { units, arrangement } = input
  return { units, arrangement, ...toRequest(fields, { ...input }, units) }
}
