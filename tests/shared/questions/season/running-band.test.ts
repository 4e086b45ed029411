import { describe, expect, test } from 'vitest'
import type { Trouble } from '#shared/movement/fit.ts'
import { inAir, type WoodState } from '#shared/movement/states.ts'
import { runningBand } from '#shared/questions/season/running-band.ts'

const TEMPERATURE = 20
const madeAt = (relativeHumidity: number) => inAir('today', { temperature: TEMPERATURE, relativeHumidity })
const humidityOf = ({ relativeHumidity = Number.NaN }: WoodState) => relativeHumidity

/** A bearing that is stopped by these troubles in these stretches of humidity. */
const stoppedIn =
  (...stretches: readonly (readonly [from: number, to: number, trouble: Trouble])[]) =>
  (state: WoodState): readonly Trouble[] =>
    stretches.flatMap(([from, to, trouble]) => (humidityOf(state) >= from && humidityOf(state) <= to ? [trouble] : []))

/** A step of 5 %, halved 14 times. */
const EXACT = 5 / 2 ** 14

describe('the band reaches to where trouble begins, and says which', () => {
  test.each([
    [50, 31.7, 72.3],
    [50, 48.9, 50.4],
    [33, 0.2, 99.9],
    // the steps from 52 % upwards end in a short one
    [52, 3, 98.5],
  ])('made at %s %%: from %s to %s %%', (today, low, high) => {
    const stops = stoppedIn([0, low, 'balls-bind'], [high, 100, 'rings-bind'])
    const band = runningBand(madeAt(today), stops)
    expect(band?.temperature).toBe(TEMPERATURE)
    expect(band?.low.relativeHumidity).toBeWithin(EXACT, low)
    expect(band?.low.relativeHumidity).toBeGreaterThan(low)
    expect(band?.high.relativeHumidity).toBeWithin(EXACT, high)
    expect(band?.high.relativeHumidity).toBeLessThan(high)
    expect(band?.low.stoppedBy).toEqual(['balls-bind'])
    expect(band?.high.stoppedBy).toEqual(['rings-bind'])
    for (const end of [band?.low, band?.high])
      expect(end?.moistureContent).toBe(madeAt(end?.relativeHumidity ?? Number.NaN).moistureContent)
  })
})

test('where nothing stops it the band is all air, without a cause', () => {
  const band = runningBand(madeAt(50), () => [])
  expect(band?.low).toEqual({ relativeHumidity: 0, moistureContent: madeAt(0).moistureContent, stoppedBy: [] })
  expect(band?.high).toEqual({ relativeHumidity: 100, moistureContent: madeAt(100).moistureContent, stoppedBy: [] })
})

test('trouble that comes and goes ends the band where it first comes, however well it runs beyond', () => {
  const band = runningBand(madeAt(52), stoppedIn([20, 26, 'balls-bind'], [96.5, 97.5, 'rings-bind']))
  expect(band?.low.relativeHumidity).toBeWithin(EXACT, 26)
  expect(band?.high.relativeHumidity).toBeWithin(EXACT, 96.5)
})

test('a bearing that does not run today has no band', () => {
  expect(runningBand(madeAt(50), stoppedIn([50, 50, 'lands-rub']))).toBeUndefined()
})

test('wood damper than any air is judged from saturated air down', () => {
  const { relativeHumidity: _none, ...soaked } = madeAt(100)
  const band = runningBand(soaked, stoppedIn([0, 40, 'balls-bind']))
  expect(band?.high).toMatchObject({ relativeHumidity: 100, stoppedBy: [] })
  expect(band?.low.relativeHumidity).toBeWithin(EXACT, 40)
})
