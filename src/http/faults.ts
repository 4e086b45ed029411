import type { FastifySchemaValidationError } from 'fastify/types/schema.js'
import { lengthFault } from '#src/api/length.ts'
import { allowed, isLength, listed } from './allowed.ts'
import { given } from './given.ts'
import { nearestName, notKnown } from './nearest-name.ts'
import type { Fault } from './problem.ts'
import { isSchema, type JsonSchema, resolved, type SchemaById } from './schema.ts'

/** What Ajv says of one fault, with the value and the schema that it met (`verbose`). */
type Broken = FastifySchemaValidationError & { readonly data?: unknown; readonly parentSchema?: unknown }

/** A list of 60,000 bad numbers has so many errors: no more than these are looked at, and fewer are told. */
const MOST_ERRORS = 1_000

/** A pointer's step: `~` and `/` in a name are written `~0` and `~1` (RFC 6901). */
export const step = (name: string): string => `/${name.slice(0, 80).replaceAll('~', '~0').replaceAll('/', '~1')}`

/**
 * What is wrong with an input, in words: from what the validator found. One value gives one fault, the first that was
 * found, for a length can miss its range, its form and its size all at once.
 */
export function faultsOf(errors: readonly FastifySchemaValidationError[], byId: SchemaById): Fault[] {
  const faults: Fault[] = []
  const faulty = new Set<string>()
  for (const error of withoutBranches(errors.slice(0, MOST_ERRORS))) {
    const fault = faultOf(error, byId)
    const ofItsOwn = error.keyword === 'x-exclusive'
    if (!ofItsOwn && faulty.has(fault.path)) continue
    if (!ofItsOwn) faulty.add(fault.path)
    faults.push(fault)
  }
  return faults
}

/**
 * `anyOf` and `oneOf` report every branch that did not fit, then themselves. Where one branch was entered (it complains
 * about something inside), its complaints say more; else the sentence about the whole does.
 */
function withoutBranches(errors: readonly Broken[]): readonly Broken[] {
  let kept = errors
  for (const whole of errors) {
    if (whole.keyword !== 'anyOf' && whole.keyword !== 'oneOf') continue
    const isInside = ({ instancePath, schemaPath }: Broken) =>
      schemaPath.startsWith(`${whole.schemaPath}/`) && instancePath.startsWith(`${whole.instancePath}/`)
    const isBranch = (error: Broken) =>
      isInside(error) ||
      (error.schemaPath.startsWith(`${whole.schemaPath}/`) && error.instancePath === whole.instancePath)
    const entered = kept.some(isInside)
    kept = kept.filter((error) => (isBranch(error) ? entered && isInside(error) : error !== whole || !entered))
  }
  return kept
}

function faultOf(error: Broken, byId: SchemaById): Fault {
  const schema = isSchema(error.parentSchema) ? error.parentSchema : {}
  const at = error.instancePath
  const named = (name: unknown) => ({ name: String(name), path: at + step(String(name)) })
  switch (error.keyword) {
    case 'required': {
      const { name, path } = named(error.params['missingProperty'])
      return { path, message: `"${name}" is missing` }
    }
    case 'additionalProperties': {
      const { name, path } = named(error.params['additionalProperty'])
      return { path, message: notAllowed(name, schema) }
    }
    case 'discriminator': {
      const { name, path } = named(error.params['tag'])
      return { path, message: choice(error.params['tagValue'], variants(schema, name, byId)) }
    }
    case 'x-exclusive':
      return { path: at, message: exclusive(error.params['given']) }
    default:
      return { path: at, message: sentence(error, schema, byId) }
  }
}

function notAllowed(name: string, { properties = {}, ...schema }: JsonSchema): string {
  return schema['x-foreign']?.includes(name) === true
    ? `"${name}" does not apply to this arrangement: remove it`
    : notKnown(name, Object.keys(properties))
}

function sentence(error: Broken, schema: JsonSchema, byId: SchemaById): string {
  const { data } = error
  const ofLength = typeof data === 'string' && isLength(schema) ? lengthFault(data, schema.format) : undefined
  if (ofLength !== undefined) return `${given(data)} ${ofLength}`
  switch (error.keyword) {
    case 'enum':
      return choice(data, schema.enum ?? [])
    case 'const':
      return choice(data, [schema.const])
    case 'minLength':
    case 'maxLength':
      return `must have ${limit(error)} characters; ${String(data).length} were given`
    case 'minItems':
    case 'maxItems':
      return `must hold ${limit(error)} entries; ${Array.isArray(data) ? data.length : 0} were given`
    case 'multipleOf':
      return must(`be a multiple of ${String(error.params['multipleOf'])}`, data)
    case 'uniqueItems':
      return 'must not hold the same entry twice'
    default:
      return must(`be ${allowed(schema, byId)}`, data)
  }
}

const must = (what: string, data: unknown): string => `must ${what}; ${given(data)} was given`

function limit(error: Broken): string {
  return `${error.keyword.startsWith('min') ? 'at least' : 'at most'} ${String(error.params['limit'])}`
}

function choice(data: unknown, choices: readonly unknown[]): string {
  const nearest = typeof data === 'string' ? nearestName(data, choices.filter(isText)) : undefined
  const hint = nearest === undefined ? '' : `: did you mean "${nearest}"?`
  return `${must(`be ${listed(choices)}`, data)}${hint}`
}

function isText(value: unknown): value is string {
  return typeof value === 'string'
}

/** The values of the tag that tells the variants of a `oneOf` apart. */
function variants(schema: JsonSchema, tag: string, byId: SchemaById): readonly unknown[] {
  return (schema.oneOf ?? []).flatMap((variant) => {
    const tagged = resolved(variant, byId).properties?.[tag]
    if (tagged === undefined) return []
    return 'const' in tagged ? [tagged.const] : (tagged.enum ?? [])
  })
}

function exclusive(names: unknown): string {
  const quoted = (Array.isArray(names) ? names : []).map((name) => `"${name}"`)
  const [first, second, ...more] = quoted
  return more.length === 0 ? `give either ${first} or ${second}, not both` : `give only one of ${quoted.join(', ')}`
}
