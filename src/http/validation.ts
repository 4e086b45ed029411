import type { FastifyInstance, FastifyServerOptions } from 'fastify'
import { lengthFormats } from '#src/wire/length.ts'

type AjvOptions = Extract<NonNullable<FastifyServerOptions['ajv']>, { readonly mode?: never }>
type Ajv = Parameters<NonNullable<AjvOptions['onCreate']>>[0]
type Groups = readonly (readonly string[])[]

/** Long enough after the start for whoever waited for it to have been answered. */
const AFTER_START_MS = 250

type Validation = {
  readonly ajv: AjvOptions
  /** What is still to be compiled, one function a schema. */
  readonly pending: readonly (() => void)[]
}

/**
 * How a request is held to its schema. Fastify's own settings turn "22" into 22, true into 1 and null into 0, and drop a
 * field that they do not know: a maker would get a bearing for another input than the one given.
 */
export function validation(): Validation {
  const pending: (() => void)[] = []
  return { pending, ajv: { customOptions: CUSTOM_OPTIONS, onCreate: (ajv) => compileLater(ajv, pending) } }
}

const CUSTOM_OPTIONS: NonNullable<AjvOptions['customOptions']> = {
  coerceTypes: false,
  removeAdditional: false,
  useDefaults: false,
  allErrors: true,
  allowUnionTypes: true,
  discriminator: true,
  strictTypes: true,
  // Errors carry the value and the schema that it met: the sentences in faults.ts are made of both.
  verbose: true,
  // Our schemas are our own, and the document's linter sees every one: to hold them to the schema of schemas at each start
  // took a third of it.
  validateSchema: false,
  meta: false,
  formats: lengthFormats,
  keywords: [
    {
      // [["engagement", "grooveDepth"], …]: of each group the object may have one name. As `not` or `oneOf` the same
      // rule would answer "must NOT be valid".
      keyword: 'x-exclusive',
      type: 'object',
      schemaType: 'array',
      errors: true,
      validate: exclusive,
    },
  ],
}

/**
 * Compiling takes ten milliseconds and more a schema, all of it before the first answer. So a schema is compiled when a
 * request first meets it, or a while after the start, one at a time, whichever comes first.
 */
export function compileWhenIdle(app: FastifyInstance, pending: readonly (() => void)[]): void {
  app.addHook('onListen', () => {
    for (const [index, compile] of pending.entries()) setTimeout(compile, (index + 1) * AFTER_START_MS).unref()
  })
}

type ExclusiveError = { readonly keyword: 'x-exclusive'; readonly params: { readonly given: readonly string[] } }

function exclusive(groups: Groups, data: object): boolean {
  const errors: ExclusiveError[] = []
  for (const group of groups) {
    const given = group.filter((name) => Object.hasOwn(data, name))
    if (given.length > 1) errors.push({ keyword: 'x-exclusive', params: { given } })
  }
  exclusive.errors = errors
  return errors.length === 0
}
/** Where Ajv looks for them: a keyword's function hands its errors over as a property of itself. */
exclusive.errors = [] as ExclusiveError[]

/** In place of Ajv's own `compile`: gives a validator at once, which is compiled by its first use. */
function compileLater(ajv: Ajv, pending: (() => void)[]): void {
  const compileNow = ajv.compile.bind(ajv)
  const compile = (schema: Parameters<typeof compileNow>[0]) => {
    let compiled: ReturnType<typeof compileNow> | undefined
    const ready = () => {
      compiled ??= compileNow(schema)
      return compiled
    }
    const validate = (data: unknown): boolean => {
      const checked = ready()
      const isValid = checked(data) === true
      validate.errors = checked.errors
      return isValid
    }
    validate.errors = undefined as ReturnType<typeof compileNow>['errors']
    pending.push(ready)
    return validate
  }
  Object.assign(ajv, { compile })
}
