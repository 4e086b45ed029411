import { setTimeout as sleep } from 'node:timers/promises'
import type { FastifyInstance, FastifySchemaValidationError, FastifyServerOptions } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { excluded } from './faults.ts'
import type { TextFormats } from './text-format.ts'

type AjvOptions = Extract<NonNullable<FastifyServerOptions['ajv']>, { readonly mode?: never }>
type ValidatorFactory = NonNullable<
  NonNullable<NonNullable<FastifyServerOptions['schemaController']>['compilersFactory']>['buildValidator']
>
type Groups = readonly (readonly string[])[]

/** Long enough after the start for whoever waited for it to have been answered; then one at a time, with room between. */
const AFTER_START_MS = 250
const BETWEEN_MS = 50

const OPTIONS: NonNullable<AjvOptions['customOptions']> = {
  coerceTypes: false,
  removeAdditional: false,
  useDefaults: false,
  // What is wrong is found by faults.ts, which knows where to stop: with `allErrors` Ajv joins its lists of errors anew for
  // each item of a list, which took a minute of a body of 129 KB.
  allErrors: false,
  allowUnionTypes: true,
  discriminator: true,
  strictTypes: true,
  // Our schemas are our own, and the document's linter sees every one: to hold them to the schema of schemas at each start
  // took a third of it.
  validateSchema: false,
  meta: false,
  // A schema that many point to is compiled once and called, and V8 makes the code fast by itself: compiling takes a quarter of the
  // time, and holding a design to its schema a tenth of a microsecond more.
  inlineRefs: false,
  code: { optimize: false },
  keywords: [
    {
      // The tag of an object that leaves it out, before the variants are told apart by it.
      keyword: 'x-usual',
      type: 'object',
      schemaType: 'string',
      before: 'discriminator',
      modifying: true,
      errors: false,
      validate: fillTag,
    },
    // Names that other variants have at this place, and what a variant describes: only sentences about faults use them.
    { keyword: 'x-foreign', schemaType: 'array' },
    { keyword: 'x-things', schemaType: 'string' },
    {
      // [["engagement", "grooveDepth"], …]: of each group the object may have one name. As `not` or `oneOf` the same
      // rule would answer "must NOT be valid".
      keyword: 'x-exclusive',
      type: 'object',
      schemaType: 'array',
      errors: false,
      validate: (groups: Groups, data: object): boolean => excluded(groups, data).length === 0,
    },
  ],
}

/** Our formats in place of Ajv's, which see a text alone: what a length may be depends on the units of its input. */
const holdTexts =
  (formats: TextFormats): NonNullable<AjvOptions['onCreate']> =>
  (ajv) => {
    ajv.removeKeyword('format').addKeyword({
      keyword: 'format',
      type: 'string',
      schemaType: 'string',
      errors: false,
      validate: (name: string, text: string, _: unknown, within?: { readonly rootData: unknown }): boolean =>
        formats[name]?.faultOf(text, within?.rootData) === undefined,
    })
  }

/** Whether data holds to a schema: at once, or a moment later while the schema is still compiled. */
type Validate = {
  (data: unknown): boolean | Promise<boolean>
  errors?: FastifySchemaValidationError[] | null
}
/** The same once it is compiled. */
type Compiled = Validate & ((data: unknown) => boolean)
type Compiler = (route: { readonly schema: object }) => Compiled

type Validation = {
  readonly ajv: AjvOptions
  readonly buildValidator: ValidatorFactory
  /** Schemas that are still to be compiled, one function each. */
  readonly pending: readonly (() => Promise<unknown>)[]
}

/**
 * How a request is held to its schema. Fastify's own settings turn "22" into 22, true into 1 and null into 0, and drop a
 * field that they do not know: a maker would get a bearing for another input than the one given.
 *
 * Ajv is loaded, and a schema compiled, when a request first meets it or a while after the start: both take tens of
 * milliseconds, which would else be part of every start.
 *
 * @param formats the formats of text that schemas may name
 */
export function validation(formats: TextFormats): Validation {
  const pending: (() => Promise<unknown>)[] = []
  const buildValidator = (schemas: Readonly<Record<string, object>>, options: AjvOptions) => {
    const compiler = lazy(() => compilerOf(schemas, options))
    return (route: { readonly schema: object }): Validate =>
      compiledLater(async () => (await compiler())(route), pending)
  }
  // Of what the type asks, which is all of Ajv, Fastify uses the function and its errors.
  return {
    ajv: { customOptions: OPTIONS, onCreate: holdTexts(formats) },
    buildValidator: buildValidator as unknown as ValidatorFactory,
    pending,
  }
}

async function compilerOf(schemas: Readonly<Record<string, object>>, options: AjvOptions): Promise<Compiler> {
  const { default: compilers } = await import('@fastify/ajv-compiler')
  return compilers()(schemas, options) as unknown as Compiler
}

function compiledLater(compile: () => Promise<Compiled>, pending: (() => Promise<unknown>)[]): Validate {
  let compiled: Compiled | undefined
  const ready = async (): Promise<Compiled> => {
    try {
      compiled ??= await compile()
    } catch (cause) {
      // Without a status Fastify would take it for a fault of the request.
      throw Object.assign(new Error('a schema does not compile', { cause }), { statusCode: 500 })
    }
    return compiled
  }
  const validate: Validate = (data) => {
    if (compiled === undefined) return ready().then((first) => passes(first, data))
    const isValid = compiled(data)
    validate.errors = compiled.errors ?? null
    return isValid
  }
  pending.push(ready)
  return validate
}

/** A validator that answers later must fail with its errors for Fastify, not leave them to be overwritten. */
function passes(compiled: Compiled, data: unknown): true {
  if (compiled(data)) return true
  throw compiled.errors
}

/** Compiles what no request has asked for yet, one at a time, so that none has to wait long. */
export function compileWhenIdle(app: FastifyInstance, pending: Validation['pending']): void {
  const closed = new AbortController()
  app.addHook('onListen', () => {
    const wait = (ms: number) => sleep(ms, undefined, { ref: false, signal: closed.signal })
    const compileAll = async (): Promise<void> => {
      await wait(AFTER_START_MS)
      for (const compile of pending) {
        await compile()
        await wait(BETWEEN_MS)
      }
    }
    compileAll().catch((error: unknown) => {
      if (!closed.signal.aborted)
        app.log.warn({ err: error }, 'could not compile all schemas: the others compile on first use')
    })
  })
  app.addHook('preClose', async () => closed.abort())
}

/** Sets the tag where there is none. */
function fillTag(usual: string, data: Record<string, unknown>, schema?: object): boolean {
  const { propertyName } = Object(Reflect.get(schema ?? {}, 'discriminator'))
  if (!Object.hasOwn(data, propertyName)) data[propertyName] = usual
  return true
}
