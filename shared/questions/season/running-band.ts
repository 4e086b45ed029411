import type { Trouble } from '#shared/movement/fit.ts'
import { inAir, type WoodState } from '#shared/movement/states.ts'
import { endByHalving } from '#shared/numbers/halving.ts'

/** An end of the band in which the bearing runs, and what stops it beyond; without a cause nothing does. */
export interface BandEnd {
  readonly relativeHumidity: number
  readonly moistureContent: number
  readonly stoppedBy: readonly Trouble[]
}

/** Round today's moisture, at one temperature. */
export interface RunningBand {
  readonly temperature: number
  readonly low: BandEnd
  readonly high: BandEnd
}

/** The troubles that stop the bearing in such air; empty if it runs. */
export type Stops = (state: WoodState) => readonly Trouble[]

/** Steps of humidity in which trouble is looked for [%], and halvings that then close in on its beginning. */
const STEP = 5
const HALVINGS = 14

/**
 * The humidities, either side of today's, within which the bearing runs all the way. Trouble is looked for in steps; one
 * that came and went within a step would be missed, but all sizes are nearly straight lines over the moisture.
 *
 * @returns undefined where it does not even run today
 */
export function runningBand(today: WoodState, stops: Stops): RunningBand | undefined {
  if (stops(today).length > 0) return undefined
  const { temperature } = today
  const at = (relativeHumidity: number): WoodState => inAir('', { temperature, relativeHumidity })
  const from = today.relativeHumidity ?? 100
  return { temperature, low: endOf(at, stops, from, 0), high: endOf(at, stops, from, 100) }
}

function endOf(at: (relativeHumidity: number) => WoodState, stops: Stops, from: number, to: number): BandEnd {
  const steps = Math.ceil(Math.abs(to - from) / STEP)
  let good = from
  for (let step = 1; step <= steps; step++) {
    const next = step === steps ? to : from + Math.sign(to - from) * STEP * step
    const causes = stops(at(next))
    if (causes.length > 0) return beginning(at, stops, good, next)
    good = next
  }
  return { ...ended(at, good), stoppedBy: [] }
}

function beginning(at: (relativeHumidity: number) => WoodState, stops: Stops, good: number, bad: number): BandEnd {
  const [runs, stands] = endByHalving((humidity) => stops(at(humidity)).length === 0, good, bad, HALVINGS)
  return { ...ended(at, runs), stoppedBy: stops(at(stands)) }
}

const ended = (at: (relativeHumidity: number) => WoodState, relativeHumidity: number) => ({
  relativeHumidity,
  moistureContent: at(relativeHumidity).moistureContent,
})
