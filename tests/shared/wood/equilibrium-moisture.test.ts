import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  equilibriumMoisture,
  knownTemperature,
  relativeHumidityFor,
  TEMPERATURES,
} from '#shared/wood/equilibrium-moisture.ts'
import { between } from '#tests/support/inputs.ts'

const temperature = between(TEMPERATURES.least, TEMPERATURES.most)
const humidity = between(0, 100)

test('there and back', () => {
  fc.assert(
    fc.property(temperature, humidity, (at, relativeHumidity) => {
      const moisture = equilibriumMoisture({ temperature: at, relativeHumidity })
      expect(relativeHumidityFor(moisture, at)).toBeWithin(1e-8, relativeHumidity)
    }),
  )
})

test('dry air leaves no water, and more humidity always more moisture', () => {
  fc.assert(
    fc.property(temperature, humidity, humidity, (at, one, other) => {
      expect(equilibriumMoisture({ temperature: at, relativeHumidity: 0 })).toBe(0)
      const [drier, damper] = [Math.min(one, other), Math.max(one, other)]
      const [less, more] = [drier, damper].map((h) => equilibriumMoisture({ temperature: at, relativeHumidity: h }))
      expect(more).toBeGreaterThanOrEqual(less ?? Number.NaN)
    }),
  )
})

test('no air gives more than fibre saturation, about 30 % (Wood Handbook, chapter 4)', () => {
  for (let at: number = TEMPERATURES.least; at <= TEMPERATURES.most; at += 0.5)
    expect(equilibriumMoisture({ temperature: at, relativeHumidity: 100 })).toBeLessThan(30)
  expect(equilibriumMoisture({ temperature: 20, relativeHumidity: 100 })).toBeWithin(2, 29)
})

test('more moisture than damp air gives has no humidity', () => {
  expect(relativeHumidityFor(30, 20)).toBeUndefined()
})

test.each([
  [{ temperature: -1.2, relativeHumidity: 50 }, 'temperature'],
  [{ temperature: 72, relativeHumidity: 50 }, 'temperature'],
  [{ temperature: 20, relativeHumidity: 100.1 }, 'relativeHumidity'],
  [{ temperature: 20, relativeHumidity: Number.NaN }, 'relativeHumidity'],
])('%j is a bug of ours', (air, name) => {
  expect(() => equilibriumMoisture(air)).toThrow(new RegExp(`^${name} must`))
})

test('colder and hotter than its table the nearest temperature stands for the air: 30 and 160 degrees F', () => {
  expect(knownTemperature(-30)).toBeWithin(1e-12, -10 / 9)
  expect(knownTemperature(20)).toBe(20)
  expect(knownTemperature(90)).toBeWithin(1e-12, 640 / 9)
})
