import fc from 'fast-check'
import { expect, test } from 'vitest'
import { plugDiameter, plugGauge } from '#shared/geometry/gauge.ts'
import {
  ballGap,
  closedPitchRadius,
  gapPerBallDiameterAtPitchRadius,
  gapPerPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { ballCentres } from '#tests/support/ball-centres.ts'
import { ballCount, between, magnitude } from '#tests/support/inputs.ts'

const gaugeAt = (pitchRadius: Mm, ballDiameter: Mm, count: number, min: number, max: number) =>
  plugGauge(
    { pitchRadius, ballDiameter, ballCount: count },
    { go: mm(min), noGo: mm(max) },
    {
      gapPerPitchRadius: gapPerPitchRadius(pitchRadius, ballDiameter, count),
      gapPerBallDiameterAtPitchRadius: gapPerBallDiameterAtPitchRadius(pitchRadius, ballDiameter, count),
    },
  )

test('the plug touches every ball from inside: by coordinates', () => {
  fc.assert(
    fc.property(between(0, 0.9), ballCount, (gap, count) => {
      const pitchRadius = pitchRadiusForGap(mm(gap), mm(1), count)
      for (const [, y, z] of ballCentres(pitchRadius, 1, count)) {
        expect(Math.hypot(y, z) - 0.5).toBeWithin(1e-12 * count, plugDiameter(pitchRadius, mm(1)) / 2)
      }
    }),
  )
})

test('go and no-go are the plugs of the rings with their gaps', () => {
  fc.assert(
    fc.property(magnitude(0.01, 1000), ballCount, between(0, 0.4), between(0.4, 0.9), (ball, count, min, max) => {
      const pitchRadius = pitchRadiusForGap(mm(0.4 * ball), mm(ball), count)
      const { goDiameter, nominalDiameter, noGoDiameter } = gaugeAt(
        pitchRadius,
        mm(ball),
        count,
        min * ball,
        max * ball,
      )
      const gapOf = (plug: Mm) => ballGap(mm((plug + ball) / 2), mm(ball), count)
      expect(gapOf(goDiameter)).toBeWithin(1e-11 * count * ball, min * ball)
      expect(gapOf(nominalDiameter)).toBeWithin(1e-11 * count * ball, 0.4 * ball)
      expect(gapOf(noGoDiameter)).toBeWithin(1e-11 * count * ball, max * ball)
      // gaps that differ by less than the gap's own rounding have the same plug, but for its last digit
      expect(goDiameter).toBeLessThanOrEqual(nominalDiameter * (1 + 1e-14))
      expect(noGoDiameter).toBeGreaterThanOrEqual(nominalDiameter * (1 - 1e-14))
    }),
  )
})

test('at a fixed plug and exact closure the gap moves by −Z (1 − sin(π/Z)) per ball diameter', () => {
  for (let count = 3; count <= 200; count++) {
    const { gapPerBallDiameterAtPlug } = gaugeAt(closedPitchRadius(mm(16), count), mm(16), count, 0, 1)
    expect(gapPerBallDiameterAtPlug).toBeWithin(1e-12 * count, -count * (1 - Math.sin(Math.PI / count)))
  }
})

test('and elsewhere as a difference of gaps round the same plug says', () => {
  fc.assert(
    fc.property(between(0, 0.8), ballCount, (gap, count) => {
      const pitchRadius = pitchRadiusForGap(mm(gap), mm(1), count)
      const plug = plugDiameter(pitchRadius, mm(1))
      const gapWith = (ball: number) => ballGap(mm((plug + ball) / 2), mm(ball), count)
      const step = 1e-6 / count
      const { gapPerBallDiameterAtPlug } = gaugeAt(pitchRadius, mm(1), count, 0, 0.9)
      expect(gapPerBallDiameterAtPlug).toBeWithin(
        1e-6 * count * count,
        (gapWith(1 + step) - gapWith(1 - step)) / (2 * step),
      )
    }),
  )
})
