import { expect, test } from 'vitest'
import { post, problemIn } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const WOODS = {
  outerRing: { construction: 'segmented', species: 'maple-sugar' },
  innerRing: { construction: 'quarter-sawn', species: 'cherry-black' },
}
const CLIMATE = {
  today: { temperature: 20, relativeHumidity: 50 },
  temperature: { min: 17, max: 25 },
  relativeHumidity: { min: 30, max: 65 },
}

/** Balls so large that the width they take by default could not be sent. */
const LARGEST = { units: 'mm', balls: { count: 10, diameter: 9_000, material: 'glass' }, bore: 12 }

// Found by fuzzing: the answers gave back an input that the service itself would have turned away.
test.each([
  ['/v1/design', LARGEST, '/width'],
  [
    '/v1/tolerance-check',
    { design: LARGEST, contributors: { ballDiameter: { kind: 'normal', standardDeviation: 1 } } },
    '/design/width',
  ],
  ['/v1/seasonal-fit', { design: { ...LARGEST, making: { woods: WOODS, climate: CLIMATE } } }, '/design/width'],
])('%s gives back only an input that can be sent again', async (path, body, at) => {
  const { errors = [] } = problemIn(await post(`${await sharedApp()}${path}`, body), 422)
  expect(errors).toEqual([{ path: at, message: expect.stringContaining('is outside the range allowed') }])
})

// The limits are those of the input's units, whatever unit a text names: what is given back is a number in them.
test.each([
  ['mm', '394 in', 'must be from 0 to 10000 mm'],
  ['in', '254001 mm', 'must be from 0 to 10000 in'],
])('in %s, %s is beyond what can be sent', async (units, sawKerf, message) => {
  const body = { units, balls: { count: 10, diameter: '16 mm' }, bore: '12 mm', making: { allowances: { sawKerf } } }
  const { errors = [] } = problemIn(await post(`${await sharedApp()}/v1/design`, body), 400)
  expect(errors).toEqual([{ path: '/making/allowances/sawKerf', message: `"${sawKerf}" ${message}` }])
})

test.each([
  ['Tide\u0007clock', 'must be text in one line: character 5 is a control character (U+0007)'],
  ['Tide clock\nhour wheel', 'must be text in one line: character 11 is a control character (U+000A)'],
  ['🕰\u202eTide', 'must be text in one line: character 2 is a control character (U+202E)'],
  [' Tide clock', 'must not begin with a space'],
])('a name that no sheet can carry, %j: what is wrong with it', async (name, message) => {
  const body = { ...LARGEST, balls: { count: 10, diameter: 16 }, making: { name } }
  const { errors = [] } = problemIn(await post(`${await sharedApp()}/v1/design`, body), 400)
  expect(errors).toEqual([{ path: '/making/name', message }])
})
