/*
 * Every sentence about HTTP, and about the form of a request, that a caller can read. They know no bearing: what a field of
 * a schema is for, the schema says.
 */

// ---- What is wrong with a value. Each follows the pointer to the value: `/balls/count: must be …`.

/** @param allowed what the value must be; @param quoted the value that was given */
export const mustBe = (allowed: string, quoted: string): string => `must be ${allowed}; ${quoted} was given`

/** The same for a person who is led to the field with the value: `must be a whole number …; 2 was given` becomes `Enter a whole number ….` */
export const toDo = (message: string): string => message.replace(/^must be (.+); .+ was given$/, 'Enter $1.')

/** @param nearest the choice that was probably meant */
export const mustBeOneOf = (choices: readonly string[], quoted: string, nearest?: string): string => {
  const message = mustBe(oneOf(choices), quoted)
  return nearest === undefined ? message : `${message}. Did you mean "${nearest}"?`
}

/** `one of "glass", "steel" or "wood"`; a single choice is itself. */
export function oneOf(choices: readonly string[]): string {
  const others = choices.slice(0, -1)
  const last = choices.at(-1) ?? SOMETHING_ELSE
  return others.length === 0 ? last : `one of ${others.join(', ')} or ${last}`
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

export const eitherOf = (kinds: readonly string[]): string => kinds.join(', or ')

const SOMETHING_ELSE = 'something else'

/** The noun for a value of each type of JSON. */
export const KINDS = {
  integer: 'a whole number',
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list, written [ … ]',
  object: 'an object, written { … }',
  null: 'null',
  unknown: SOMETHING_ELSE,
} as const
export type Kind = keyof typeof KINDS

/** The numbers that are allowed, to follow `a number`. */
export interface NumberRange {
  readonly minimum?: number | undefined
  readonly exclusiveMinimum?: number | undefined
  readonly maximum?: number | undefined
  readonly exclusiveMaximum?: number | undefined
}

export function inRange({ minimum, exclusiveMinimum, maximum, exclusiveMaximum }: NumberRange): string {
  if (minimum !== undefined && maximum !== undefined) return ` from ${minimum} to ${maximum}`
  const above = exclusiveMinimum === undefined ? [] : [`above ${exclusiveMinimum}`]
  const below = exclusiveMaximum === undefined ? [] : [`below ${exclusiveMaximum}`]
  const least = minimum === undefined ? above : [`at least ${minimum}`]
  const most = maximum === undefined ? below : [`at most ${maximum}`]
  const limits = [...least, ...most]
  if (limits.length === 0) return ''
  return limits.length === 1 && limits[0]?.startsWith('at ') ? ` of ${limits[0]}` : ` ${limits.join(' and ')}`
}

export const multipleOf = (step: number): string => `a multiple of ${step}`
export const withExamples = (noun: string, examples: string): string => `${noun}, such as ${examples}`
export const tooFewCharacters = (least: number, given: number): string =>
  `must have at least ${counted(least, 'character', 'characters')}; it has ${given}`
export const tooManyCharacters = (most: number, given: number): string =>
  `must have at most ${counted(most, 'character', 'characters')}; it has ${given}`
export const tooFewEntries = (least: number, given: number): string =>
  `must have at least ${counted(least, 'entry', 'entries')}; it has ${given}`
export const tooManyEntries = (most: number, given: number): string =>
  `must have at most ${counted(most, 'entry', 'entries')}; it has ${given}`
export const ENTRY_TWICE = 'must not have the same entry twice'
export const isMissing = (name: string): string => `"${name}" is missing`

/** The sentence for at least two names that exclude one another. */
export function onlyOneOf(names: readonly string[]): string {
  const quoted = names.map((name) => `"${name}"`)
  const [first, second, ...more] = quoted
  return more.length === 0 ? `give either ${first} or ${second}, not both` : `give only one of ${quoted.join(', ')}`
}

/** @param things what the input describes, in the plural; undefined where its schema does not say */
export const doesNotApply = (things: string | undefined): string =>
  `does not apply ${things === undefined ? 'here' : `to ${things}`}: remove it`

export const unknownNameNear = (quoted: string, nearest: string): string =>
  `Unknown name ${quoted}. Did you mean "${nearest}"?`
/** @param areAll whether `known` is the whole list */
export const unknownName = (quoted: string, known: readonly string[], areAll: boolean): string =>
  `Unknown name ${quoted}. Known names: ${known.join(', ')}${areAll ? '' : ', …'}`

export const givenTwice = (quoted: string): string => `${quoted} is given twice`
export const hasParts = (quoted: string, parts: readonly string[]): string =>
  `${quoted} has several parts: give ${parts.join(', ')}`

/** Phrases for a value that is not quoted. */
export const QUOTES = {
  hugeNumber: 'a number too large to hold',
  nothing: 'nothing',
  null: 'null',
  object: 'an object',
  list: (entries: number): string => `a list with ${counted(entries, 'entry', 'entries')}`,
} as const

export const BEGINS_BLANK = 'must not begin with a space'
/** @param place of the character, from 1 on */
export const controlCharacter = (place: number, code: number): string =>
  `must be text in one line: character ${place} is a control character (U+${code.toString(16).toUpperCase().padStart(4, '0')})`

// ---- The body as a whole.

export const NO_BODY = 'The request has no body. Send the input as JSON.'
export const EMPTY_BODY = 'The body is empty. Send the input as JSON.'
export const tooDeep = (most: number): string => `The body is nested deeper than ${most} levels. No input needs that.`
export const tooManyNames = (most: number): string => `The body has more than ${most} names. No input needs that.`
export const tooManyContainers = (most: number): string =>
  `The body has more than ${most} lists and objects. No input needs that.`
export const FORBIDDEN_NAMES = 'The names "__proto__" and "constructor" are not allowed.'
/** @param place where the text stops being JSON, if the parser says so */
export function notJson(place?: { readonly line: string; readonly column: string }): string {
  const where = place === undefined ? '' : ` at line ${place.line}, column ${place.column}`
  return `The body is not JSON${where}. Write names and fractions in double quotes, for example "bore": "5/8".`
}

// ---- What became of a request: the `detail` of a problem.

/** @param areAll whether the input may have further errors that were not looked for */
export const hasErrors = (count: number, areAll: boolean): string =>
  `The request has ${areAll ? '' : 'at least '}${counted(count, 'error', 'errors')}: see \`errors\`.`

/** Above the errors of a request for a page. */
export const CANNOT_BE_SHOWN = 'This cannot be shown:'

export const UNREADABLE_REQUEST = 'The request could not be read.'
export const NOT_HTTP = 'This is not an HTTP/1.1 request.'
export const BAD_UTF8 =
  'The address cannot be read: each % must be followed by two hexadecimal digits, and these must spell UTF-8 text.'
export const BAD_PATH = 'The path must start with /, for example /v1/design.'
export const NO_HOST = 'The Host header is missing.'
export const TWO_HOSTS = 'The request has more than one Host.'

const NOTHING_HERE = 'There is nothing at this address.'
export const NOT_FOUND = NOTHING_HERE
export const notFoundNear = (path: string): string => `${NOTHING_HERE} Did you mean ${path}?`
export const notFoundSee = (document: string): string => `${NOTHING_HERE} ${document} lists all paths.`
export const notFoundChoice = (part: string, known: readonly string[]): string =>
  `${NOTHING_HERE} The ${part} must be one of ${known.join(', ')}.`

export const methodNotAllowed = (method: string, allowed: string): string =>
  `${method} is not allowed here. Use ${allowed}.`
export const notAcceptable = (offered: readonly string[]): string =>
  `The answer is available as ${offered.join(' or ')}. The Accept header of the request allows none of these.`
export const TOO_SLOW = 'The request took too long to arrive.'
export const bodyTooLarge = (bytes: number | undefined): string => `The body is larger than ${bytes} bytes.`
export const ADDRESS_TOO_LONG = 'The address is too long. Send the input as the body of a POST request.'
export const addressLongerThan = (characters: number): string =>
  `The address is longer than ${characters} characters. Send the input as the body of a POST request.`
export const NOT_JSON_TYPE = 'Send the input as JSON, with the header content-type: application/json.'
export const COMPRESSED = 'The body is compressed. Send it uncompressed.'
export const headersLongerThan = (bytes: number): string => `The headers are longer than ${bytes} bytes.`
export const headLongerThan = (bytes: number): string =>
  `The address and the headers together may have at most ${bytes} bytes and 1000 lines.`
export const NOT_CARRIED_OUT = 'The request could not be carried out.'

export const TOO_MANY_REQUESTS = 'Too many requests. Wait a moment, then try again.'
export const tooManyRequests = (most: number, waitSeconds: number): string =>
  `This address sent more than ${most} requests in a minute. Try again in ${waitSeconds} s.`
export const BUSY = 'The service is busy. Wait a moment, then try again.'
export const OVERLOADED = 'The service has more requests than it can answer in time. Try again in a second.'
export const STOPPING = 'The service is stopping. Try again in a few seconds.'
export const FAILED = 'The service failed: the request is not at fault. When you report this, give the x-request-id.'
