import { expect, test } from 'vitest'
import { post, problemIn } from '#tests/support/ask.ts'
import { startedApp } from '#tests/support/started-app.ts'

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
    '/v1/design',
    { ...LARGEST, balls: { count: 10, diameter: 16 }, making: { allowances: { sawKerf: '394 in' } } },
    '/making/allowances/sawKerf',
  ],
  [
    '/v1/tolerance-check',
    { design: LARGEST, contributors: { ballDiameter: { kind: 'normal', standardDeviation: 1 } } },
    '/design/width',
  ],
  ['/v1/seasonal-fit', { design: { ...LARGEST, making: { woods: WOODS, climate: CLIMATE } } }, '/design/width'],
])('%s gives back only an input that can be sent again', async (path, body, at) => {
  const { errors = [] } = problemIn(await post(`${await startedApp()}${path}`, body), 422)
  expect(errors).toEqual([{ path: at, message: expect.stringContaining('is outside the range allowed') }])
})
