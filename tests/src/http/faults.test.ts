import { expect, test } from 'vitest'
import { faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const LENGTH = 'must be a length above 0 and at most 10000, such as 16 or "5/8"'

const balls = (change: object) => ({ ...PROBE, balls: { ...PROBE.balls, ...change } })

const more = (change: object) => ({ ...PROBE, more: [change] })

test.each([
  // types
  ['text for a number', balls({ count: '12' }), '/balls/count: must be a whole number from 3 to 200; "12" was given'],
  ['true for a number', balls({ count: true }), '/balls/count: must be a whole number from 3 to 200; true was given'],
  ['null for a number', balls({ count: null }), '/balls/count: must be a whole number from 3 to 200; null was given'],
  ['a list for a length', { ...PROBE, bore: [1, 2] }, `/bore: ${LENGTH}; a list with 2 entries was given`],
  ['an object for a length', { ...PROBE, bore: { mm: 1 } }, `/bore: ${LENGTH}; an object was given`],
  ['a number for an object', { ...PROBE, balls: 12 }, '/balls: must be an object, written { … }; 12 was given'],
  ['a number for a list', balls({ diameters: 16 }), '/balls/diameters: must be a list, written [ … ]; 16 was given'],
  ['a text for true', { ...PROBE, split: 'yes' }, '/split: must be true or false; "yes" was given'],
  // ranges
  ['2 balls', balls({ count: 2 }), '/balls/count: must be a whole number from 3 to 200; 2 was given'],
  ['2.5 balls', balls({ count: 2.5 }), '/balls/count: must be a whole number from 3 to 200; 2.5 was given'],
  ['1e9 balls', balls({ count: 1e9 }), '/balls/count: must be a whole number from 3 to 200; 1000000000 was given'],
  ['no bore', { ...PROBE, bore: 0 }, `/bore: ${LENGTH}; 0 was given`],
  ['a bore below 0', { ...PROBE, bore: -3 }, `/bore: ${LENGTH}; -3 was given`],
  ['a bore of 1e308', { ...PROBE, bore: 1e308 }, `/bore: ${LENGTH}; 1e+308 was given`],
  // lengths as texts: one fault each, though the size, the form and the range may all be wrong
  ['a comma', { ...PROBE, bore: '1,250' }, /^\/bore: "1,250" .*comma/],
  ['nothing', { ...PROBE, bore: '' }, /^\/bore: "" is empty/],
  ['a divisor of 0', { ...PROBE, bore: '1 3/0' }, /^\/bore: "1 3\/0" divides by 0/],
  ['0 as a text', { ...PROBE, bore: '0' }, /^\/bore: "0" /],
  ['1e308 as a text', { ...PROBE, bore: '1e308' }, /^\/bore: "1e308" /],
  ['NaN as a text', { ...PROBE, bore: 'NaN' }, /^\/bore: "NaN" is not a length/],
  ['Infinity as a text', { ...PROBE, bore: '-Infinity' }, /^\/bore: "-Infinity" /],
  [
    'a hundred slashes',
    { ...PROBE, bore: `1${'/2'.repeat(100)}` },
    /^\/bore: "1(\/2){19}\/…" has more than 40 characters/,
  ],
  ['signs that hide', { ...PROBE, bore: '5/8\u202E\u0000' }, /^\/bore: "5\/8\uFFFD\uFFFD" /],
  // choices
  ['an unknown unit', { ...PROBE, units: 'cm' }, '/units: must be one of "in" or "mm"; "cm" was given'],
  ['a slip', balls({ material: 'gless' }), /"gless" was given\. Did you mean "glass"\?$/],
  ['an unknown variant', { ...PROBE, scatter: { kind: 'nrmal' } }, /^\/scatter\/kind: .*\. Did you mean "normal"\?$/],
  ['no variant', { ...PROBE, scatter: {} }, /^\/scatter\/kind: "kind" is missing$/],
  ['inside a variant', { ...PROBE, scatter: { kind: 'normal' } }, /^\/scatter\/standardDeviation: .* is missing$/],
  // names
  ['a misspelt name', { ...PROBE, boer: 1 }, '/boer: Unknown name "boer". Did you mean "bore"?'],
  ['an unknown name', { ...PROBE, colour: 1 }, /^\/colour: Unknown name "colour"\. Known names: units, balls, bore/],
  ['a hostile name', { ...PROBE, 'a/b~\n': 1 }, /^\/a~1b~0\n: Unknown name "a\/b~\uFFFD"/],
  ['constructor', { ...PROBE, constructor: 1 }, /^\/constructor: Unknown name "constructor"/],
  ['a missing name', { units: 'mm', balls: PROBE.balls }, '/bore: "bore" is missing'],
  // lists
  ['too few', balls({ diameters: [1] }), '/balls/diameters: must have at least 3 entries; it has 1'],
  ['one of many', balls({ diameters: [1, 2, -3] }), `/balls/diameters/2: ${LENGTH}; -3 was given`],
  ['a list of lists', { ...PROBE, more: [[]] }, /^\/more\/0: must be an object, written/],
  ['twice the same', more({ tags: ['a', 'b', 'a'] }), '/more/0/tags: must not have the same entry twice'],
  // what no bearing has yet
  ['a short text', more({ note: 'a' }), '/more/0/note: must have at least 2 characters; it has 1'],
  ['a long text', more({ note: 'abcdef' }), '/more/0/note: must have at most 5 characters; it has 6'],
  ['between two steps', more({ step: 0.7 }), '/more/0/step: must be a multiple of 0.5; 0.7 was given'],
  ['the only choice', more({ one: 'two' }), '/more/0/one: must be "one"; "two" was given'],
  ['too small for a number', more({ c: -1 }), '/more/0/c: must be a number of at least 0; -1 was given'],
  ['none of two kinds', more({ some: 3 }), '/more/0/some: must be an object, written { … }, or null; 3 was given'],
  [
    'inside one of two kinds',
    more({ some: { part: 0 } }),
    '/more/0/some/part: must be a number of at least 1; 0 was given',
  ],
  // one or the other
  ['two of three', more({ a: 1, c: 1 }), '/more/0: give either "a" or "c", not both'],
  ['three of three', more({ a: 1, b: 1, c: 1 }), '/more/0: give only one of "a", "b", "c"'],
  [
    'both of a pair',
    { ...PROBE, ring: { engagement: 0.2, grooveDepth: 3 } },
    '/ring: give either "engagement" or "grooveDepth", not both',
  ],
])('%s: one fault, in words', async (_name, body, fault) => {
  const at = await sharedApp({ route: probeRoute })
  const faults = faultsIn(await post(`${at}/test/probe`, body))
  expect(faults).toHaveLength(1)
  expect(faults[0]).toMatch(fault)
})

test('all faults come at once', async () => {
  const at = await sharedApp({ route: probeRoute })
  const ring = { engagement: 1, grooveDepth: 0, outsideDiameter: 70, wall: 1 }
  const body = { units: 'ft', balls: { count: 2, diamter: 16 }, bore: -1, ring, extra: 1 }
  const paths = faultsIn(await post(`${at}/test/probe`, body)).map((fault) => fault.split(':')[0])
  expect(paths.toSorted()).toEqual(
    [
      ...['/balls/count', '/balls/diameter', '/balls/diamter', '/bore', '/extra'],
      ...['/ring', '/ring', '/ring/engagement', '/ring/grooveDepth', '/units'],
    ].toSorted(),
  )
})

/** A problem in figures: how many faults it tells, and how many more it speaks of. */
async function told(body: object): Promise<readonly [errors: number | undefined, more: number | undefined]> {
  const problem = problemIn(await post(`${await sharedApp({ route: probeRoute })}/test/probe`, body), 400)
  const all = (problem.errors ?? []).length + (problem.moreErrors ?? 0)
  const errors = `${all} ${all === 1 ? 'error' : 'errors'}`
  const count = problem.moreErrors === undefined ? errors : `at least ${errors}`
  expect(problem.detail).toBe(`The request has ${count}: see \`errors\`.`)
  return [problem.errors?.length, problem.moreErrors]
}

test.each([
  ['fifty wrong entries', balls({ diameters: Array(50).fill(0) }), 50, undefined],
  ['fifty-one', balls({ diameters: Array(51).fill(0) }), 50, 1],
  ['as many as there may be', balls({ diameters: Array(200).fill(0) }), 50, 150],
  [
    'more than there may be: one fault, and no entry is looked at',
    balls({ diameters: Array(60_000).fill(0) }),
    1,
    undefined,
  ],
  ['unknown names', { ...PROBE, ...numbered(1_900) }, 50, 1_850],
  ['more names than any input has: one fault', { ...PROBE, ...numbered(2_000) }, 1, undefined],
  ['unknown names inside one of two kinds', more({ some: numbered(1_000) }), 50, 950],
])(
  'no more than fifty faults are told, and how many more there are at least: %s',
  async (_name, body, errors, moreErrors) => {
    expect(await told(body)).toEqual([errors, moreErrors])
  },
)

function numbered(count: number): object {
  return Object.fromEntries(Array.from({ length: count }, (_, index) => [`bor${index}`, 0]))
}

test('a fault of a size does not hide the others, nor a fault of the one what the other has', async () => {
  const at = await sharedApp({ route: probeRoute })
  const body = { ...balls({ diameters: Array(201).fill(0) }), bore: -1, more: [{ step: 0.7 }, { some: 3 }] }
  const paths = faultsIn(await post(`${at}/test/probe`, body)).map((fault) => fault.split(':')[0])
  expect(paths).toEqual(['/balls/diameters', '/bore', '/more/0/step', '/more/1/some'])
})

test('what was given is not turned into what was not: every value comes through as it came', async () => {
  const at = await sharedApp({ route: probeRoute })
  const body = { ...balls({ diameters: ['5/8', 16, '1 3/16'] }), ring: { roundTo: null }, split: false }
  expect(JSON.parse((await post(`${at}/test/probe`, body)).text)).toEqual({ input: body })
})
