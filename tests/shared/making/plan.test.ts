import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type FullRingBearing, fullRingsOf } from '#shared/bearing/arrangements.ts'
import type { MountingInput } from '#shared/bearing/mounting-input.ts'
import { DRIVES, HOLDS, SHAFT_MATERIALS, TURNING_RINGS } from '#shared/bearing/mounting-input.ts'
import { gaugeKitOf } from '#shared/making/gauge-kit.ts'
import { mountingFaults, mountingOf } from '#shared/making/mounting.ts'
import { mm } from '#shared/units/length.ts'
import { present } from '#src/api/optional.ts'
import { between, likelyInput } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'

const some = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })
const length = between(1, 60).map((size) => mm(size))
const mountings = fc
  .record({
    shaft: some(
      fc
        .record({
          diameter: some(length),
          material: some(fc.constantFrom(...SHAFT_MATERIALS)),
          hold: some(fc.constantFrom(...HOLDS)),
        })
        .map((shaft) => present<NonNullable<MountingInput['shaft']>>(shaft)),
    ),
    housing: some(
      fc
        .record({ thickness: some(length), hold: some(fc.constantFrom(...HOLDS)) })
        .map((housing) => present<NonNullable<MountingInput['housing']>>(housing)),
    ),
    turns: some(fc.constantFrom(...TURNING_RINGS)),
    drive: some(fc.constantFrom(...DRIVES)),
  })
  .map((mounting) => present<MountingInput>(mounting))

const made = (input: Parameters<typeof fullRingsOf>[0]): FullRingBearing | undefined => {
  const result = fullRingsOf(input)
  return result.ok ? result.value : undefined
}

test('a mounting keeps to what was asked, and what it fills in, asked for again, is the same', () => {
  fc.assert(
    fc.property(likelyInput, mountings, (input, mounting) => {
      const bearing = made({ ...input, making: { mounting } })
      if (bearing === undefined) return
      const plan = mountingOf(bearing)
      const { shaft, housing, drive, turns } = plan
      // The bore has one place: the design.
      expect(shaft.seatDiameter).toBeWithin(1e-9, bearing.innerRing.boreDiameter + 2 * bearing.resolved.finishAllowance)
      expect(shaft.shaftDiameter).toBe(mounting.shaft?.diameter ?? shaft.shaftDiameter)
      expect(shaft.hold).toBe(mounting.shaft?.hold ?? 'glued')
      expect(housing === undefined).toBe(turns === 'outer-ring')
      expect(drive !== undefined).toBe(turns === 'outer-ring')
      for (const { play } of [shaft, ...(housing ? [housing] : [])]) {
        expect(play.min).toBeLessThanOrEqual(play.made)
        expect(play.max).toBeGreaterThanOrEqual(play.made)
      }
      if (housing !== undefined) {
        expect(housing.seatDepth).toBeLessThanOrEqual(housing.thickness + 1e-9)
        expect(housing.shoulderHole).toBeLessThan(bearing.outerRing.outsideDiameter)
        expect(housing.leastWidth).toBeGreaterThan(housing.seatDiameter)
      }
      const sizes = { ...plan, shaft: { ...shaft, play: 0 }, ...(housing && { housing: { ...housing, play: 0 } }) }
      expect(numberLeaves(sizes).filter(([, value]) => !(value >= 0))).toEqual([])
      // A handle or a hub's screw stays inside the wall.
      if (drive?.holeDiameter !== undefined && bearing.outerRing.wall > 6) {
        expect(drive.circle + drive.holeDiameter).toBeLessThan(bearing.outerRing.outsideDiameter)
        expect(drive.circle - drive.holeDiameter).toBeGreaterThan(bearing.outerRing.grooveBottomDiameter)
      }
      // What a fault asks for clears it.
      for (const fault of mountingFaults(plan, bearing)) {
        if (fault.code !== 'housing-thin') continue
        const thicker = made({
          ...input,
          making: { mounting: { ...mounting, housing: { ...mounting.housing, thickness: fault.least } } },
        })
        expect(thicker && mountingFaults(mountingOf(thicker), thicker).map(({ code }) => code)).not.toContain(
          'housing-thin',
        )
      }
    }),
  )
})

test('gauges stand for the design: no wood is gone at the stop, and a wrapped dowel has the radius of its groove', () => {
  fc.assert(
    fc.property(likelyInput, (input) => {
      const bearing = made(input)
      if (bearing === undefined) return
      const kit = gaugeKitOf(bearing)
      const [go, noGo] = kit.plugs
      const film = bearing.resolved.finishAllowance
      const { goDiameter, noGoDiameter } = bearing.gauge
      expect([go?.diameter, noGo?.diameter]).toEqual([goDiameter + 2 * film, noGoDiameter + 2 * film])
      for (const ring of ['outerRing', 'innerRing'] as const) {
        const [stop, done] = kit.setBlocks.filter((block) => block.ring === ring)
        const bottom = bearing[ring].grooveBottomDiameter
        const isOuter = ring === 'outerRing'
        expect(done?.length).toBeWithin(1e-9, bottom + (isOuter ? 2 : -2) * film)
        // The outer groove opens as it is cut, the inner one closes: the stop comes first.
        expect(Math.sign((done?.length ?? 0) - (stop?.length ?? 0))).toBe(isOuter ? 1 : -1)
        const profile = kit.profiles.find((each) => each.ring === ring)
        expect(profile?.radius).toBeWithin(1e-9, bearing[ring].grooveRadius + film)
        expect(profile?.stopDepth).toBeLessThan(profile?.depth ?? 0)
        expect(profile?.stopDepth).toBeGreaterThanOrEqual((profile?.depth ?? 0) / 2)
        for (const dowel of kit.dowels.filter((each) => each.ring === ring))
          expect(dowel.diameter / 2 + dowel.paper).toBeWithin(1e-9, bearing[ring].grooveRadius + film)
      }
    }),
  )
})
