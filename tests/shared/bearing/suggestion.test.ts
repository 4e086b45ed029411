import { expect, test } from 'vitest'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import { mm } from '#shared/units/length.ts'
import { PLAIN } from '#tests/support/inputs.ts'
import { taking } from '#tests/support/taking.ts'

/** What a caller does: the value put where the pointer says, over the JSON. */
function put(input: RadialInput, path: string, value: unknown): unknown {
  const copy: unknown = JSON.parse(JSON.stringify(input))
  const names = path.slice(1).split('/')
  let at = copy
  names.forEach((name, depth) => {
    if (typeof at !== 'object' || at === null) throw new Error(`no branch at ${path}`)
    const next: unknown = depth === names.length - 1 ? value : (Object.getOwnPropertyDescriptor(at, name)?.value ?? {})
    Object.defineProperty(at, name, { value: next, enumerable: true, writable: true, configurable: true })
    at = next
  })
  return copy
}

const LENGTHS = [
  '/bore',
  '/ballGap',
  '/radialInternalClearance',
  '/width',
  '/outerRing/wall',
  '/outerRing/outsideDiameter',
  '/outerRing/grooveDepth',
  '/innerRing/grooveDepth',
  '/groove/grooveRadius',
  '/groove/cutterDiameter',
  '/outerRing/groove/grooveRadius',
  '/outerRing/groove/cutterDiameter',
  '/innerRing/groove/grooveRadius',
  '/innerRing/groove/cutterDiameter',
]
const NUMBERS = [
  '/balls/count',
  '/shopDenominator',
  '/outerRing/engagement',
  '/innerRing/engagement',
  '/groove/conformity',
  '/outerRing/groove/conformity',
  '/innerRing/groove/conformity',
]
const SUGGESTIONS: readonly Suggestion[] = [
  ...LENGTHS.map((path): Suggestion => ({ path, kind: 'length', value: mm(9) })),
  ...NUMBERS.map((path): Suggestion => ({ path, kind: 'number', value: 8 })),
  { path: '/split', kind: 'choice', value: 'outer-ring' },
]

test.each(SUGGESTIONS)('$path: as if put there in the JSON', (suggestion) => {
  expect(taking(PLAIN, suggestion)).toEqual(put(PLAIN, suggestion.path, suggestion.value))
  const said: RadialInput = { ...PLAIN, outerRing: { wall: mm(12) }, innerRing: { engagement: 0.3 } }
  expect(taking(said, suggestion)).toEqual(put(said, suggestion.path, suggestion.value))
})

test.each<Suggestion>([
  { path: '/balls/length', kind: 'length', value: mm(9) },
  { path: '/bore', kind: 'number', value: 9 },
  { path: '/bore', kind: 'choice', value: 'none' },
  { path: '/split', kind: 'number', value: 9 },
  { path: '', kind: 'number', value: 9 },
])('$path as a $kind: refused, as a bug of ours', (suggestion) => {
  expect(() => taking(PLAIN, suggestion)).toThrow(RangeError)
})
