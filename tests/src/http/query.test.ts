import { describe, expect, test } from 'vitest'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { IMPOSSIBLE_BORE, probeRoute } from '#tests/support/probe-route.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

async function probe(query: string) {
  const at = await sharedApp({ route: probeRoute })
  return ask(`${at}/test/probe?${query}`)
}

test('a query is the body that it stands for', async () => {
  const answer = await probe(
    'units=in&balls.count=12&balls.diameter=5/8&balls.material=glass&balls.diameters=0.62,5/8,%C2%BD%E2%80%B3' +
      '&bore=1+3/16&ring.engagement=0.25&ring.roundTo=null&split=true',
  )
  expect(JSON.parse(answer.text)).toEqual({
    input: {
      units: 'in',
      balls: { count: 12, diameter: '5/8', material: 'glass', diameters: ['0.62', '5/8', '½″'] },
      bore: '1 3/16',
      ring: { engagement: 0.25, roundTo: null },
      split: true,
    },
  })
})

describe('numbers are read strictly', () => {
  test.each([
    '',
    ' ',
    '+12',
    '012',
    '1e1',
    '0x0C',
    '12.',
    '.5',
    '1_2',
    'Infinity',
    'NaN',
    '１２',
    '9'.repeat(41),
    'null',
  ])('"%s" is none', async (text) => {
    const faults = faultsIn(await probe(QUERY.replace('count=12', `count=${encodeURIComponent(text)}`)))
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatch(/^\/balls\/count: must be a whole number from 3 to 200; ".*" was given$/)
  })

  test('then held to their range as in a body', async () => {
    expect(faultsIn(await probe(QUERY.replace('count=12', 'count=2.5')))).toEqual([
      '/balls/count: must be a whole number from 3 to 200; 2.5 was given',
    ])
  })
})

describe('names', () => {
  test.each([
    ['bals.count=3', '/bals/count: Unknown name "bals.count". Did you mean "balls.count"?'],
    ['wheels=4', /^\/wheels: Unknown name "wheels"\. Known names: units, balls.count, /],
    ['bore=12', '/bore: "bore" is given twice'],
    ['balls=3', /^\/balls: "balls" has several parts: give balls.count, balls.diameter/],
    ['bore.mm=3', /^\/bore\/mm: Unknown name "bore.mm"/],
    ['balls.count.x=3', /^\/balls\/count\/x: /],
    ['scatter.kind=normal', /^\/scatter\/kind: /],
    ['__proto__=3', /^\/__proto__: /],
    ['__proto__.bore=3', /^\/__proto__\/bore: /],
    ['balls.__proto__=3', /^\/balls\/__proto__: /],
    ['constructor=3', /^\/constructor: /],
    ['constructor.prototype.bore=3', /^\/constructor\/prototype\/bore: /],
    ['balls[count]=3', /^\/balls\[count\]: /],
    ['=3', /^\/: Unknown name ""/],
    ['split=1', '/split: must be true or false; "1" was given'],
  ])('%s', async (more, fault) => {
    const faults = faultsIn(await probe(`${QUERY}&${more}`))
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatch(fault)
    expect(Object.prototype).not.toHaveProperty('bore')
  })
})

test('all faults come at once, those of the schema too', async () => {
  const faults = faultsIn(
    await probe('units=ft&balls.count=two&balls.diamter=16&ring.engagement=9&balls.diameters=1,,3'),
  )
  expect(faults.map((fault) => fault.split(':')[0]).toSorted()).toEqual(
    [
      '/balls/count',
      '/balls/diameter',
      '/balls/diamter',
      '/balls/diameters/1',
      '/bore',
      '/ring/engagement',
      '/units',
    ].toSorted(),
  )
})

test('a bad % stays as it is, and is refused by what it stands for', async () => {
  expect(faultsIn(await probe(QUERY.replace('bore=12', 'bore=%zz')))[0]).toMatch(/^\/bore: "%zz" is not a length/)
})

test('no query at all misses what a body would miss', async () => {
  expect(faultsIn(await probe(''))).toEqual([
    '/units: "units" is missing',
    '/balls: "balls" is missing',
    '/bore: "bore" is missing',
  ])
})

test('the same input gives the same answer, whichever way it comes', async () => {
  const at = await sharedApp({ route: probeRoute })
  const body = { units: 'mm', balls: { count: 12, diameter: '16' }, bore: '12' }
  expect((await ask(`${at}/test/probe?${QUERY}`)).text).toBe((await post(`${at}/test/probe`, body)).text)
})

test('what cannot exist cannot exist by query either', async () => {
  problemIn(await probe(QUERY.replace('bore=12', `bore=${IMPOSSIBLE_BORE}`)), 422)
})
