import { type Operation, type Schema, schemaAt } from './document.ts'
import type { FuzzRequest } from './requests.ts'
import { breaches } from './schemas.ts'

export type FuzzAnswer = {
  readonly status: number
  readonly headers: Readonly<Record<string, string | string[] | undefined>>
  readonly body: Buffer
}

const JSON_TYPES = /^application\/(problem\+)?json$/
/** So many errors a problem lists. */
const MOST_ERRORS = 50
/** What no caller should read: our code's places, and what a calculation gone wrong looks like. */
const LEAK = /node_modules|\bat [^\n]{0,200}:\d+:\d+|\/src\/|\/shared\/|file:\/\//
const BROKEN = /\bNaN\b|\bundefined\b|\[object /

/**
 * What is wrong with an answer, in words; nothing where it is as the document says. That an answer is right is not asked
 * here: whether it is one of those that a caller was told of.
 */
export function faultsOfAnswer(operation: Operation, request: FuzzRequest, answer: FuzzAnswer): readonly string[] {
  const { status, headers, body } = answer
  const described = operation.responses[String(status)]
  if (described === undefined) return [`${status} is not described: ${body.toString('utf8', 0, 300)}`]
  const faults: string[] = []
  if (status === 503 && headers['retry-after'] === undefined) faults.push('503 does not say when to come back')
  if (headers['x-request-id'] === undefined) faults.push('no request id')
  if (headers['x-powered-by'] !== undefined || headers['server'] !== undefined) faults.push('says what it is made of')
  if (request.method === 'HEAD' || status === 304)
    return body.length === 0 ? faults : [...faults, 'a body where none may be']

  const type = String(headers['content-type']).split(';', 1)[0] ?? ''
  const media = described.content?.[type]
  if (media === undefined) return [...faults, `${status} comes as ${type}, which is not described`]
  if (!JSON_TYPES.test(type)) return faults
  const text = body.toString()
  if (LEAK.test(text)) faults.push(`speaks of our code: ${text.slice(0, 300)}`)
  const value: unknown = JSON.parse(text)
  if (media.schema !== undefined) faults.push(...breaches(media.schema, value))
  if (status >= 400) return [...faults, ...faultsOfProblem(operation, status, request.input, value)]
  if (BROKEN.test(text)) faults.push(`a calculation that went wrong: ${BROKEN.exec(text)?.[0]}`)
  if (operation.method === 'POST' && operation.body !== undefined)
    faults.push(...breaches(operation.body, request.input).map((fault) => `taken, though ${fault}`))
  return faults
}

function faultsOfProblem(operation: Operation, status: number, input: unknown, problem: unknown): readonly string[] {
  const {
    status: told,
    errors = [],
    moreErrors,
  } = problem as { status: number; errors?: readonly { path: string }[]; moreErrors?: number }
  const faults: string[] = []
  if (told !== status) faults.push(`the problem says ${told}, the answer ${status}`)
  if (status !== 400 && status !== 422) return faults
  if (errors.length === 0) faults.push(`${status} without a place`)
  if (moreErrors !== undefined && errors.length < MOST_ERRORS) faults.push(`keeps ${moreErrors} errors back`)
  for (const { path } of errors)
    if (!leadsSomewhere(path, input) && !isPlace(path, operation)) faults.push(`${path} leads nowhere in the input`)
  return faults
}

/** A pointer leads to a value of the input, or to a name that is missing in one: its parent is there. */
function leadsSomewhere(pointer: string, input: unknown): boolean {
  if (pointer === '') return true
  if (!pointer.startsWith('/')) return false
  let at = input
  for (const step of pointer.slice(1).split('/').slice(0, -1)) {
    const name = step.replaceAll('~1', '/').replaceAll('~0', '~')
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, name)) return false
    at = (at as Record<string, unknown>)[name]
  }
  return typeof at === 'object' && at !== null
}

/** A default can be what is wrong: then the pointer leads to where a caller can say otherwise. */
function isPlace(pointer: string, { method, body = {}, parameters }: Operation): boolean {
  const steps = pointer.slice(1).split('/')
  if (method === 'GET') return parameters.some(({ name }) => name === steps.join('.'))
  let at: readonly Schema[] = [body]
  for (const step of steps) at = at.flatMap(variantsOf).flatMap(({ properties }) => properties?.[step] ?? [])
  return at.length > 0
}

function variantsOf(schema: Schema): readonly Schema[] {
  const whole = schemaAt(schema)
  return (whole.anyOf ?? whole.oneOf ?? [whole]).map(schemaAt)
}
