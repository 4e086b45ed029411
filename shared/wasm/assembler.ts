/*
 * WebAssembly, written as expressions that are bytes already: an operation is the bytes of what it works on and then its own
 * (WebAssembly Core Specification 2.0, chapters 5.4 and 5.5). Only what the kernels of trials need: whole numbers of 32 bits
 * for addresses, and pairs of doubles, whose + − × / √ give the same bits as everywhere.
 */

/** Bytes that leave one value of a type, or none where they are a statement. */
export type Code = readonly number[]

const I32 = 0x7f
const F64 = 0x7c
const V128 = 0x7b
const WITHOUT_RESULT = 0x40

/** Whole numbers go by seven bits, the lowest first; the last byte of a signed one ends with its sign. */
function unsigned(value: number): Code {
  return value < 128 ? [value] : [(value & 127) | 128, ...unsigned(value >>> 7)]
}

function signed(value: number): Code {
  const [low, rest] = [value & 127, value >> 7]
  const isLast = (rest === 0 && low < 64) || (rest === -1 && low >= 64)
  return isLast ? [low] : [low | 128, ...signed(rest)]
}

const wide = (operation: number): Code => [0xfd, ...unsigned(operation)]

/** Two operands, then the operation. */
const of =
  (...operation: Code) =>
  (...operands: readonly Code[]): Code => [...operands.flat(), ...operation]

export const whole = (value: number): Code => [0x41, ...signed(value)]
export const i32 = {
  add: of(0x6a),
  sub: of(0x6b),
  mul: of(0x6c),
  and: of(0x71),
  or: of(0x72),
  xor: of(0x73),
  shiftLeft: of(0x74),
  shiftRight: of(0x76),
  turnLeft: of(0x77),
  isBelow: of(0x49),
  isZero: of(0x45),
  /** The first where the last is not 0, else the second. */
  select: of(0x1b),
  load: (address: Code, offset = 0): Code => [...address, 0x28, 2, ...unsigned(offset)],
  store: (address: Code, value: Code, offset = 0): Code => [...address, ...value, 0x36, 2, ...unsigned(offset)],
} as const

const bytesOf = (value: number): Code => Array.from(new Uint8Array(Float64Array.of(value).buffer))

export const double = {
  of: (value: number): Code => [0x44, ...bytesOf(value)],
  add: of(0xa0),
  mul: of(0xa2),
  /** Of a whole number, 0 or above. */
  from: of(0xb8),
  load: (address: Code, offset = 0): Code => [...address, 0x2b, 3, ...unsigned(offset)],
  store: (address: Code, value: Code): Code => [...address, ...value, 0x39, 3, 0],
} as const

/** Pairs of doubles. */
export const pair = {
  /** The same number twice. */
  both: (value: number): Code => [...double.of(value), ...wide(0x14)],
  add: of(...wide(0xf0)),
  sub: of(...wide(0xf1)),
  mul: of(...wide(0xf2)),
  div: of(...wide(0xf3)),
  root: of(...wide(0xef)),
  isAbove: of(...wide(0x4a)),
  and: of(...wide(0x4e)),
  /** Of the first where the last has bits set, else of the second. */
  choose: of(...wide(0x52)),
  anySet: of(...wide(0x53)),
  load: (address: Code, offset = 0): Code => [...address, ...wide(0), 3, ...unsigned(offset)],
  store: (address: Code, value: Code, offset = 0): Code => [...address, ...value, ...wide(11), 3, ...unsigned(offset)],
} as const

/** A variable of the function. */
export interface Local {
  readonly type: number
  readonly get: Code
  readonly set: (value: Code) => Code
}

/** The statements again and again, as long as a condition holds after them. */
export const repeatWhile = (statements: readonly Code[], condition: Code): Code => [
  0x03,
  WITHOUT_RESULT,
  ...statements.flat(),
  ...condition,
  0x0d,
  0,
  0x0b,
]

/** The statements, where a condition holds. */
export const when = (condition: Code, statements: readonly Code[]): Code => [
  ...condition,
  0x04,
  WITHOUT_RESULT,
  ...statements.flat(),
  0x0b,
]

interface Variables<Name extends string> {
  /** What the caller hands over: whole numbers. */
  readonly parameters: Readonly<Record<Name, Local>>
  readonly wholeNumber: () => Local
  readonly double: () => Local
  readonly pair: () => Local
}

/** A function of whole numbers that answers with one. */
interface Body {
  readonly statements: readonly Code[]
  readonly answer: Code
}

const section = (id: number, content: Code): Code => [id, ...unsigned(content.length), ...content]
const list = (...items: readonly Code[]): Code => [...unsigned(items.length), ...items.flat()]
const name = (text: string): Code => list(...Array.from(text, (letter) => [letter.charCodeAt(0)]))

/** Under these names a module is given its memory and gives its function. */
export const MEMORY = 'memory'
export const FUNCTION = 'run'

/**
 * A module of one function that works in a memory it is given.
 *
 * @param names of the whole numbers that the function takes, in their order
 */
export function moduleOf<Name extends string>(
  names: readonly Name[],
  write: (variables: Variables<Name>) => Body,
): Uint8Array<ArrayBuffer> {
  const locals: Local[] = []
  const local = (type: number): Local => {
    const place = unsigned(locals.length)
    const made = { type, get: [0x20, ...place], set: (value: Code) => [...value, 0x21, ...place] }
    locals.push(made)
    return made
  }
  const parameters = Object.fromEntries(names.map((each) => [each, local(I32)])) as Record<Name, Local>
  const { statements, answer } = write({
    parameters,
    wholeNumber: () => local(I32),
    double: () => local(F64),
    pair: () => local(V128),
  })
  const declared = list(...locals.slice(names.length).map(({ type }) => [1, type]))
  const code = [...declared, ...statements.flat(), ...answer, 0x0b]
  const type = [0x60, ...list(...names.map(() => [I32])), 1, I32]
  return Uint8Array.of(
    ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    ...section(1, list(type)),
    ...section(2, list([...name(MEMORY), ...name(MEMORY), 0x02, 0, 1])),
    ...section(3, list([0])),
    ...section(7, list([...name(FUNCTION), 0, 0])),
    ...section(10, list([...unsigned(code.length), ...code])),
  )
}
