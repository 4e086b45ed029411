import fc from 'fast-check'
import { anyLetter } from '#tests/support/any-letter.ts'
import { isObject } from './valid.ts'

type Path = readonly (string | number)[]

/** Values that belong nowhere, or only just not where they stand. */
const STRAY: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    false,
    '',
    ' ',
    [],
    {},
    [[]],
    [null],
    0,
    -0,
    -1,
    0.5,
    1e-12,
    1e12,
    2 ** 53,
    1e308,
  ),
  fc.constantFrom(
    'NaN',
    'Infinity',
    '1e3',
    '0x10',
    '1,250',
    '1/0',
    '5/4/3',
    '1 5/4',
    '-1',
    '+1',
    '99999999999999999999',
  ),
  fc.constantFrom(
    '__proto__',
    'constructor',
    'toString',
    '\u0000',
    '\ud800',
    '‮5/8',
    'ﬀ',
    '½½',
    '１６',
    'x'.repeat(4_000),
  ),
  fc.constantFrom("'; --", '<script>', '{{1}}', '../../etc', '%00', '\r\nx: y', '=1+1'),
  fc.double(),
  fc.string({ unit: anyLetter, maxLength: 60 }),
  fc.jsonValue({ maxDepth: 3 }),
)

/** What is done to one place: another value, a step over a limit, gone, twice, or a neighbour that nobody knows. */
const BLOW = fc.oneof(
  { arbitrary: STRAY.map((value) => ({ kind: 'replace' as const, value })), weight: 6 },
  { arbitrary: fc.constantFrom(-1, 1e-9, 1 + 1e-9, 1e6).map((by) => ({ kind: 'scale' as const, by })), weight: 3 },
  { arbitrary: fc.constant({ kind: 'remove' as const }), weight: 2 },
  { arbitrary: fc.constantFrom(2, 600).map((times) => ({ kind: 'repeat' as const, times })), weight: 1 },
  {
    arbitrary: fc
      .tuple(
        fc.oneof(fc.constantFrom('material', 'kind', 'a/b~c', 'constructor', 'hasOwnProperty'), fc.string()),
        STRAY,
      )
      .map(([name, value]) => ({ kind: 'add' as const, name, value })),
    weight: 2,
  },
)
type Blow = typeof BLOW extends fc.Arbitrary<infer Value> ? Value : never

/** Nearly valid: one to three places of a value are struck. */
export function spoiled(value: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const blows = fc.array(fc.tuple(fc.nat(), BLOW), { minLength: 1, maxLength: 3 })
  return fc.tuple(value, blows).map(([whole, all]) => {
    let struck = whole
    for (const [place, blow] of all) {
      const paths = pathsIn(struck)
      struck = strike(struck, paths[place % paths.length] ?? [], blow)
    }
    return struck
  })
}

/** The way to every value in a value, its own first. */
function pathsIn(value: unknown, here: Path = []): readonly Path[] {
  const inner = Array.isArray(value) ? [...value.entries()] : isObject(value) ? Object.entries(value) : []
  return [here, ...inner.flatMap(([step, part]) => pathsIn(part, [...here, step]))]
}

function strike(value: unknown, [step, ...rest]: Path, blow: Blow): unknown {
  if (step === undefined) return struckWhole(value, blow)
  const isLast = rest.length === 0
  if (Array.isArray(value)) {
    const index = Number(step)
    const list: readonly unknown[] = value
    if (isLast && blow.kind === 'remove') return list.toSpliced(index, 1)
    return list.with(index, strike(list[index], rest, blow))
  }
  if (!isObject(value)) return value
  const others = Object.entries(value).filter(([name]) => name !== step)
  if (isLast && blow.kind === 'remove') return Object.fromEntries(others)
  return { ...value, [step]: strike(value[step], rest, blow) }
}

function struckWhole(value: unknown, blow: Blow): unknown {
  switch (blow.kind) {
    case 'replace':
      return blow.value
    case 'scale':
      return typeof value === 'number' ? value * blow.by : [value]
    case 'repeat':
      return Array.isArray(value) ? Array(blow.times).fill(value).flat() : Array(blow.times).fill(value)
    case 'add':
      return isObject(value) ? { ...value, [blow.name]: blow.value } : { [blow.name]: value }
    case 'remove':
      return undefined
  }
}
