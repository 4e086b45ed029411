import { type Static, type TSchema, Type } from 'typebox'
import {
  ARRANGEMENT_NAMES,
  ARRANGEMENTS,
  type ArrangementName,
  arrangementOf,
  type InputByArrangement,
  nameOf,
} from '#shared/bearing/arrangements.ts'
import type { Group } from '#shared/bearing/field.ts'
import { refTo } from '#src/http/schema.ts'
import {
  type ForeignNames,
  fromRequest,
  groupSchemas,
  propertiesOf,
  type RequestOf,
  rulesOf,
  toRequest,
} from './fields.ts'
import type { StockRequest } from './stock-input.ts'
import type { UnitsName } from './units.ts'

type FieldsOf<Name extends ArrangementName> = (typeof ARRANGEMENTS)[Name]['fields']['fields']
type Units = Static<typeof UnitsName>

/** The design request of each arrangement, as it is once the arrangement is filled in. */
export type RequestByArrangement = {
  readonly [Name in ArrangementName]: {
    units: Units
    arrangement: Name
    stock?: Static<typeof StockRequest>
  } & RequestOf<FieldsOf<Name>>
}
export type DesignRequest = RequestByArrangement[ArrangementName]

/** Every name that some arrangement has at a path of its input. */
const NAMES_AT: ReadonlyMap<string, ReadonlySet<string>> = (() => {
  const names = new Map<string, Set<string>>()
  const add = (path: string, { fields }: Group): void => {
    for (const [name, field] of Object.entries(fields)) {
      names.set(path, (names.get(path) ?? new Set()).add(name))
      if (field.kind === 'group') add(`${path}/${name}`, field)
    }
  }
  for (const name of ARRANGEMENT_NAMES) add('', ARRANGEMENTS[name].fields)
  return names
})()

const foreignNames: ForeignNames = (path, { fields }) => {
  const foreign = [...(NAMES_AT.get(path) ?? [])].filter((name) => !Object.hasOwn(fields, name))
  return foreign.length > 0 ? { 'x-foreign': foreign } : {}
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
): readonly TSchema[] {
  const variants = ARRANGEMENT_NAMES.map((arrangement) => {
    const { fields } = ARRANGEMENTS[arrangement]
    return Type.Object(
      {
        units: refTo<typeof UnitsName>('Units'),
        arrangement: requestTag(arrangement),
        ...propertiesOf(fields.fields),
        stock: Type.Optional(refTo<typeof StockRequest>('StockRequest')),
        ...extra,
      },
      { $id: variantId(arrangement, name), description: fields.means, ...rulesOf(fields), ...foreignNames('', fields) },
    )
  })
  return [...variants, requestUnion(`${name}Request`, description, variants)]
}

/** The field by which a request states its arrangement. */
export const requestTag = <Name extends ArrangementName>(arrangement: Name) =>
  Type.Unsafe<Name>(
    Type.Enum([arrangement], {
      type: 'string',
      description: `\`${arrangement}\`: ${ARRANGEMENTS[arrangement].fields.means}`,
    }),
  )

/** A request of any arrangement: one of several schemas, told apart by `arrangement`. Each has a `$id` and the tag. */
export const requestUnion = <Request>($id: string, description: string, variants: readonly TSchema[]) =>
  Type.Unsafe<Request>({
    $id,
    description: `${description} Without \`arrangement\` it is \`radial\`.`,
    type: 'object',
    // The tag is filled in before it is looked at.
    'x-usual': 'radial',
    discriminator: { propertyName: 'arrangement' },
    oneOf: variants.map((variant) => Type.Ref(String(Reflect.get(variant, '$id')))),
  })

const variantId = (arrangement: ArrangementName, name: string): string =>
  `${arrangement[0]?.toUpperCase()}${arrangement.slice(1)}${name}Request`

/** A reference to the design request of one arrangement. */
export const requestRef = <Name extends ArrangementName>(arrangement: Name) =>
  Type.Unsafe<RequestByArrangement[Name]>(Type.Ref(variantId(arrangement, 'Design')))

/** A reference to the design request of any arrangement, or of those that a path serves. */
export const designRef = Type.Unsafe<DesignRequest>(Type.Ref('DesignRequest'))

const byId = new Map<string, TSchema>()
for (const name of ARRANGEMENT_NAMES) {
  for (const schema of groupSchemas(ARRANGEMENTS[name].fields, foreignNames)) {
    byId.set(String(Reflect.get(schema, '$id')), schema)
  }
}

/** Added once by `app.ts`, inner ones first: every path that takes a bearing refers to them. */
export const DESIGN_INPUT_SCHEMAS: readonly TSchema[] = [
  ...byId.values(),
  ...designRequests(
    'Design',
    'A bearing, by what is known of it. What is left out takes its default and is echoed in the answer.',
    {},
  ),
]

/** The caller's input in the words of the core: millimetres, and no field that is undefined. */
export function toDesignInput<Name extends ArrangementName>(
  request: RequestByArrangement[Name],
): InputByArrangement[Name] {
  const { units } = request
  const arrangement = nameOf(request)
  const fields = fromRequest(ARRANGEMENTS[arrangement].fields.fields, request, units)
  // Its fields are those of the arrangement: the same rows made the request's type and the core's.
  return { units, arrangement, ...fields } as unknown as InputByArrangement[Name]
}

/** The core's input as the caller could have written it: lengths as numbers in `units`. The way back of `toDesignInput`. */
export function toDesignRequest<Name extends ArrangementName>(
  input: InputByArrangement[Name],
): RequestByArrangement[Name] {
  const arrangement = nameOf(input)
  const fields = toRequest(arrangementOf(input).fields.fields, { ...input }, input.units)
  return { units: input.units, arrangement, ...fields } as unknown as RequestByArrangement[Name]
}
