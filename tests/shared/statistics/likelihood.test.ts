import fc from 'fast-check'
import { expect, test } from 'vitest'
import { logReading, readingDeviation } from '#shared/statistics/likelihood.ts'

const graduation = fc.double({ min: 0.1, max: 2, noNaN: true })
const hand = fc.double({ min: 0.02, max: 1, noNaN: true })
const truth = fc.double({ min: -5, max: 5, noNaN: true })

test('the chances of all graduations that a rule can show add up to one', () => {
  fc.assert(
    fc.property(graduation, hand, truth, (step, standardUncertainty, there) => {
      const error = { graduation: step, standardUncertainty }
      const first = Math.round((there - 9 * standardUncertainty) / step) - 1
      const last = Math.round((there + 9 * standardUncertainty) / step) + 1
      let sum = 0
      for (let mark = first; mark <= last; mark++) sum += Math.exp(logReading(mark * step, there, error))
      expect(sum).toBeWithin(1e-12, 1)
    }),
  )
})

test('a rule with ever finer graduations reads like one without', () => {
  fc.assert(
    fc.property(hand, truth, fc.double({ min: -2, max: 2, noNaN: true }), (standardUncertainty, there, off) => {
      const step = standardUncertainty * 1e-3
      const reading = there + off * standardUncertainty
      const rounded = logReading(reading, there, { graduation: step, standardUncertainty })
      const plain = logReading(reading, there, { graduation: 0, standardUncertainty })
      expect(rounded - Math.log(step)).toBeWithin(1e-5, plain)
    }),
  )
})

test('a reading far off is unlikely, not impossible: its logarithm stays finite', () => {
  expect(logReading(100, 0, { graduation: 0.5, standardUncertainty: 0.1 })).toBeGreaterThan(-1e6)
  expect(logReading(100, 0, { graduation: 0.5, standardUncertainty: 0.1 })).toBeLessThan(-1e5)
})

test('rounding evenly by half a graduation either way deviates by graduation / √12 (GUM 4.3.7; from memory)', () => {
  expect(readingDeviation({ graduation: 0.5, standardUncertainty: 0 })).toBeWithin(1e-15, 0.5 / Math.sqrt(12))
})
