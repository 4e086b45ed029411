import { describe, expect, test } from 'vitest'
import type { DesignInput } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { CONFIDENCE, plugReading } from '#shared/bearing/plug-reading.ts'
import { fittedOf } from '#shared/questions/fit/arrangements/all.ts'
import { fitOf } from '#shared/questions/fit/fit.ts'
import { mm } from '#shared/units/length.ts'
import { uniforms } from '#tests/support/chance.ts'
import { anyDesigned } from '#tests/support/designed.ts'
import { errorToCome, PLUG, TOOLS } from '#tests/support/fit-workshop.ts'
import { gapsAtPlug, outcomesBetweenPlugs } from '#tests/support/plug-trials.ts'

const KINDS = ['radial', 'thrust'] as const
const of = (arrangement: (typeof KINDS)[number], count: number, diameter: number, scatter: number): DesignInput => ({
  arrangement,
  units: 'mm',
  balls: { count, diameter: mm(diameter), material: 'glass', standardDeviation: mm(scatter) },
  bore: mm(1),
  ...(arrangement === 'radial' ? { split: 'none' as const } : {}),
})

function ringOf(input: DesignInput): BallRing {
  const { bearing } = anyDesigned(input)
  if (!('gauge' in bearing)) throw new RangeError('input must give a full ring')
  return bearing
}

const RINGS = KINDS.flatMap((kind) =>
  [
    [3, 20, 0.1],
    [5, 20, 0.16],
    [12, 16, 0.03],
    [14, 14, 0.1],
    [40, 10, 0.08],
  ].map(([count = 0, diameter = 0, scatter = 0]) => ({ kind, count, diameter, scatter })),
)
const TRIALS = 1500

describe.each(RINGS)('$count balls of $diameter mm that scatter by $scatter mm, $kind', (row) => {
  const bearing = ringOf(of(row.kind, row.count, row.diameter, row.scatter))
  const { gauge, resolved } = bearing
  const reading = plugReading(bearing)

  test.each([
    ['go', gauge.goDiameter, reading.whenGoEnters],
    ['no-go', gauge.noGoDiameter, reading.whenNoGoRefuses],
  ] as const)('the gap where %s just enters is that of exact trials', (_, plug, { mean, standardDeviation }) => {
    const trials = gapsAtPlug(bearing, plug, TRIALS, 7)
    expect(mean).toBeWithin((4 * trials.standardDeviation) / Math.sqrt(TRIALS), trials.mean)
    // A lot that may scatter three times as much has long tails: its deviation is known to some 5 % by so many trials.
    expect(standardDeviation).toBeWithin(0.12 * trials.standardDeviation, trials.standardDeviation)
  })

  test('so are the chances between the two plugs', () => {
    const trials = outcomesBetweenPlugs(bearing, resolved.assembly.assemblyGap, TRIALS, 11)
    for (const name of ['tooTight', 'inBand', 'tooDeep'] as const)
      expect(reading.probability?.[name]).toBeWithin(4 * Math.sqrt(0.25 / TRIALS), trials[name])
  })
})

test('equal balls: go enters at the gap that it stands for, and only the feel of the plug spreads it', () => {
  const bearing = ringOf(of('radial', 14, 14, 0))
  const { whenGoEnters, whenNoGoRefuses } = plugReading(bearing)
  expect(whenGoEnters.mean).toBeWithin(1e-9, bearing.resolved.assembly.assemblyGap)
  expect(whenNoGoRefuses.mean).toBeWithin(1e-9, bearing.resolved.maxBallGap)
  expect(whenGoEnters.standardDeviation).toBeWithin(1e-3, (bearing.gapPerPitchRadius / 2) * 0.05)
})

test('plugs that leave no room between them decide nothing', () => {
  const bearing = ringOf({ ...of('radial', 14, 14, 0), ballGap: mm(0.1), maxBallGap: mm(0.2) } as DesignInput)
  expect(plugReading(bearing)).toMatchObject({ decides: false })
  expect(plugReading(bearing).probability).toBeUndefined()
})

/** Bearings of all sizes, mostly with balls so even that plugs may decide. */
const random = Array.from({ length: 150 }, (_, seed) => {
  const uniform = uniforms(seed + 1)
  const [count, diameter] = [3 + Math.floor(30 * uniform()), 8 + 22 * uniform()]
  return of(uniform() < 0.5 ? 'radial' : 'thrust', count, diameter, diameter * 10 ** (-4 + 2 * uniform()))
})

describe('random bearings', () => {
  const decided = random.filter((input) => plugReading(ringOf(input)).decides)

  test('there are some whose plugs decide, and some whose plugs do not', () => {
    expect(decided.length).toBeGreaterThan(10)
    expect(decided.length).toBeLessThan(random.length - 10)
  })

  test('plugs never call finished what has a chance below the accepted one', () => {
    for (const input of decided) {
      const bearing = ringOf(input)
      const trials = 600
      const { inBand, tooDeep } = outcomesBetweenPlugs(bearing, bearing.resolved.assembly.assemblyGap, trials, 3)
      const beyondChance = 3 * Math.sqrt((CONFIDENCE * (1 - CONFIDENCE)) / trials)
      expect(inBand / (inBand + tooDeep)).toBeGreaterThanOrEqual(CONFIDENCE - beyondChance)
    }
  })

  test('fit correction, told the same, sees the same chance, and stops where the plugs decide', () => {
    for (const input of random.filter(({ arrangement }) => arrangement === 'radial').slice(0, 60)) {
      const made = anyDesigned(input)
      const bearing = ringOf(input)
      const { probability, decides } = plugReading(bearing)
      if (probability === undefined) continue
      const setup = fittedOf(input).setupOf(made.bearing, 'outer')
      if (!setup.ok) throw new Error(JSON.stringify(setup.error))
      const { subject, band } = setup.value
      const answer = fitOf({
        subject,
        target: { ...band, overshootRisk: 0.05, finishAllowance: 0 },
        readings: [
          { kind: 'plug', diameter: bearing.gauge.goDiameter, result: 'enters', error: PLUG },
          { kind: 'plug', diameter: bearing.gauge.noGoDiameter, result: 'refuses', error: PLUG },
          { kind: 'last-ball-in' },
        ],
        earlier: [],
        tools: TOOLS,
        errorToCome,
      })
      if (!answer.ok) throw new Error(answer.error)
      // Fit correction expects a groove to be short of its design rather than past it, so it sees a little less of the upper end;
      // and it knows the loss of play by three moments, plugs by two.
      const { inBand, tooDeep } = probability
      expect(answer.value.probability.inBand).toBeWithin(0.035, inBand / (inBand + tooDeep))
      if (decides) expect(answer.value).toMatchObject({ action: 'stop', reason: 'in-band' })
    }
  })
})
