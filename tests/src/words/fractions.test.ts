import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inches } from '#shared/units/length.ts'
import { figure } from '#src/words/figure.ts'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/* A maker who works in inches reads fractions: what a rule shows is not written as a decimal. */

/** The size to which a caliper is set has all of its digits, fraction or not. */
const CALIPER = /^\d*\.\d\d0$/

const BEARING = {
  units: 'in',
  balls: { count: 10, diameter: '5/8', material: 'glass' },
  bore: '1/2',
  ballGap: '3/64',
  maxBallGap: '1/8',
}
const MADE = {
  ...BEARING,
  making: {
    woods: { outerRing: { species: 'maple-sugar' }, innerRing: { species: 'maple-sugar' } },
    climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 35, max: 60 } },
    mounting: { shaft: { diameter: '1/2' } },
  },
}
const FIT = { design: BEARING, ring: 'outer' }
const QUESTIONS: readonly (readonly [path: string, body: object])[] = [
  ['design', MADE],
  ['design', { ...BEARING, bore: '2 1/2' }],
  ['design', { ...BEARING, ballGap: '1/4' }],
  ['job-sheet', MADE],
  ['seasonal-fit', { design: MADE }],
  ['load-check', { design: BEARING, radialLoad: 4 }],
  [
    'tolerance-check',
    { design: BEARING, contributors: { outerGrooveBottomRadius: { kind: 'uniform', plusMinus: '1/64' } } },
  ],
  ['ball-selection', { design: BEARING, measured: Array.from({ length: 11 }, () => '5/8'), goal: 'close-groove' }],
  ['fit-correction', { ...FIT, readings: [{ kind: 'last-ball-opening', value: '1/2' }] }],
  [
    'fit-correction',
    {
      ...FIT,
      readings: [{ kind: 'ball-gap', value: '3/8' }],
      ballsOnHand: [
        { diameter: '21/32', quantity: 12 },
        { diameter: '11/16', quantity: 3 },
      ],
    },
  ],
]

/** All texts of an answer but what was sent. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, inner]) => (name === 'input' ? [] : textsIn(inner)))
}

test.each(QUESTIONS)('no text of %s writes as a decimal what a rule shows', async (path, body) => {
  const { text } = await post(`${await sharedApp()}/v1/${path}`, body)
  const texts = textsIn(JSON.parse(text))
  expect(texts.join()).toMatch(/\d in\b/)
  const decimals = texts.flatMap((each) =>
    Array.from(each.matchAll(/(\d*\.\d+) in\b/g), ([, size = '']) => ({ size, each })),
  )
  expect(decimals.filter(({ size }) => Number.isInteger(Number(size) * 64) && !CALIPER.test(size))).toEqual([])
})

test('a length on the rule is its fraction, and any other has its decimals', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 3, max: 6 }), (steps, power) => {
      const parts = 2 ** power
      expect(figure(inches(steps / parts), 'in')).toMatch(/^(\d+|(\d+ )?\d+\/\d+) in$/)
      expect(figure(inches(steps / parts + 0.003), 'in')).toMatch(/^\d*\.\d+ in$/)
    }),
  )
  expect(figure(inches(0.625), 'in')).toBe('5/8 in')
  expect(figure(inches(-0.625), 'in')).toBe('−5/8 in')
})
