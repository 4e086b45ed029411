import fc from 'fast-check'
import type { CagedInput } from '#shared/bearing/arrangements/caged/input.ts'
import type { RadialInput } from '#shared/bearing/arrangements/radial/input.ts'
import type { RollerInput } from '#shared/bearing/arrangements/roller/input.ts'
import type { ThrustInput } from '#shared/bearing/arrangements/thrust/input.ts'
import { BALL_MATERIALS, SHOP_DENOMINATORS, SPLITS } from '#shared/bearing/fields.ts'
import { lengthOf, type Mm, mm, type Units } from '#shared/units/length.ts'

/** A bearing with nothing to warn of: twelve balls of 16 mm round a bore of 12 mm. */
export const PLAIN: RadialInput = { units: 'mm', balls: { count: 12, diameter: mm(16) }, bore: mm(12) }

/** The same ring of dowels, between plain tracks. */
export const ROLLERS: RollerInput = { ...PLAIN, arrangement: 'roller' }

/** The same ring of balls, between plates. */
export const PLATES: ThrustInput = { ...PLAIN, arrangement: 'thrust' }

/** Nine of those balls in a cage. */
export const CAGED: CagedInput = { ...PLAIN, arrangement: 'caged', balls: { count: 9, diameter: mm(16) } }

export const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })

/** As many small ones as large ones. */
export const magnitude = (min: number, max: number): fc.Arbitrary<number> =>
  between(Math.log(min), Math.log(max)).map((power) => Math.min(max, Math.max(min, Math.exp(power))))

export const units = fc.constantFrom<Units>('in', 'mm')
export const ballCount = fc.oneof(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 3, max: 200 }))

const some = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(arbitrary, { nil: undefined })

/** What a fast-check record left undefined is left out, as the core's optional fields are. */
function present<T extends object>(fields: { readonly [Name in keyof T]-?: T[Name] | undefined }): T {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T
}

type Ring = NonNullable<RadialInput['innerRing']>
type Groove = NonNullable<RadialInput['groove']>

/** A groove said in each of the three ways, for balls of a diameter. */
const groove = (diameter: number, conformity: fc.Arbitrary<number>): fc.Arbitrary<Groove> =>
  fc.oneof(
    conformity.map((f): Groove => ({ conformity: f })),
    conformity.map((f): Groove => ({ grooveRadius: mm(f * diameter) })),
    conformity.map((f): Groove => ({ cutterDiameter: mm(2 * f * diameter) })),
  )

const ring = (diameter: number, depth: fc.Arbitrary<number>, own: fc.Arbitrary<Groove>): fc.Arbitrary<Ring> =>
  fc
    .record({ depth: some(depth), inUnits: fc.boolean(), groove: some(own) })
    .map(({ depth: of, inUnits, groove: arc }) =>
      present<Ring>({
        engagement: inUnits ? undefined : of,
        grooveDepth: inUnits && of !== undefined ? mm(of * diameter) : undefined,
        groove: arc,
      }),
    )

/** Room inside the balls of a closed ring, from which a bore may be taken. */
const insideOf = (diameter: number, count: number): number => diameter / Math.sin(Math.PI / count) - diameter

/** Bearings that someone might turn: most of them can be made. Both units, every way to say a size. */
export const likelyInput: fc.Arbitrary<RadialInput> = fc
  .record({ units, count: ballCount, diameter: magnitude(3, 60) })
  .chain(({ units: said, count, diameter }) => {
    const of = (min: number, max: number): fc.Arbitrary<Mm> => between(min, max).map((share) => mm(share * diameter))
    const arc = groove(diameter, fc.oneof(between(0.5, 0.6), between(0.4, 0.8)))
    return fc
      .record({
        material: some(fc.constantFrom(...BALL_MATERIALS)),
        bore: between(0.05, 0.8).map((share) => mm(share * insideOf(diameter, count))),
        outer: some(ring(diameter, between(0.1, 0.35), arc)),
        wall: some(of(0.1, 1)),
        roundTo: some(fc.constantFrom(null, mm(5), mm(6.35))),
        inner: some(ring(diameter, between(0.2, 0.48), arc)),
        groove: some(arc),
        ballGap: some(of(0, 0.4)),
        minBallGap: some(of(0, 0.05)),
        play: some(of(0, 0.1)),
        finish: some(of(0, 0.02)),
        width: some(of(0.8, 2)),
        split: some(fc.constantFrom(...SPLITS)),
        shopDenominator: said === 'in' ? some(fc.constantFrom(...SHOP_DENOMINATORS)) : fc.constant(undefined),
      })
      .map(({ material, bore, outer, wall, roundTo, inner, groove: both, play, finish, ...rest }) =>
        present<RadialInput>({
          units: said,
          arrangement: undefined,
          making: undefined,
          seasoned: undefined,
          balls: present<RadialInput['balls']>({
            count,
            diameter: mm(diameter),
            material,
            standardDeviation: undefined,
            diameters: undefined,
          }),
          bore,
          outerRing: present<NonNullable<RadialInput['outerRing']>>({
            engagement: outer?.engagement,
            grooveDepth: outer?.grooveDepth,
            groove: outer?.groove,
            wall,
            roundOutsideDiameterTo: roundTo,
            outsideDiameter: undefined,
          }),
          innerRing: inner,
          groove: both,
          ballGap: rest.ballGap,
          minBallGap: rest.minBallGap,
          maxBallGap: undefined,
          radialInternalClearance: play,
          finishAllowance: finish,
          width: rest.width,
          split: rest.split,
          shopDenominator: rest.shopDenominator,
        }),
      )
  })

/** Anything that the edge lets through, sensible or not: lengths of 0.001 to 10 000 in either unit, gaps of three balls. */
export const anyInput: fc.Arbitrary<RadialInput> = fc
  .record({ units, count: fc.integer({ min: 3, max: 200 }), size: magnitude(0.001, 10_000) })
  .chain(({ units: said, count, size }) => {
    const diameter = lengthOf(size, said)
    const length = magnitude(0.001, 10_000).map((value) => lengthOf(value, said))
    const orNone = fc.oneof(
      fc.constant(mm(0)),
      length,
      between(0, 0.2).map((share) => mm(share * diameter)),
    )
    const gap = between(0, 3).map((balls) => mm(balls * diameter))
    const arc = fc.oneof(
      groove(diameter, between(0.3, 2)),
      length.map((grooveRadius): Groove => ({ grooveRadius })),
    )
    const wild = fc.oneof(
      ring(diameter, between(0.01, 0.9), arc),
      length.map((grooveDepth): Ring => ({ grooveDepth })),
    )
    return fc
      .record({
        material: some(fc.constantFrom(...BALL_MATERIALS)),
        diameters: fc.option(fc.array(length, { minLength: 3, maxLength: 210 }), { nil: undefined, freq: 8 }),
        bore: fc.oneof(
          length,
          between(0.01, 1).map((share) => mm(share * insideOf(diameter, count))),
        ),
        outer: some(wild),
        outside: fc.oneof(
          fc.constant({}),
          fc.record({ wall: orNone }),
          fc.record({ wall: orNone, roundOutsideDiameterTo: fc.option(length, { nil: null }) }),
          fc.record({ outsideDiameter: length }),
        ),
        inner: some(wild),
        groove: some(arc),
        ballGap: some(gap),
        minBallGap: some(gap),
        maxBallGap: some(gap),
        radialInternalClearance: some(orNone),
        finishAllowance: some(orNone),
        width: some(length),
        split: some(fc.constantFrom(...SPLITS)),
        shopDenominator: said === 'in' ? some(fc.constantFrom(...SHOP_DENOMINATORS)) : fc.constant(undefined),
      })
      .map(({ material, diameters, bore, outer, outside, inner, groove: both, ...rest }) =>
        present<RadialInput>({
          units: said,
          arrangement: undefined,
          making: undefined,
          seasoned: undefined,
          balls: present<RadialInput['balls']>({
            count,
            diameter,
            material,
            standardDeviation: undefined,
            diameters,
          }),
          bore,
          outerRing: { ...outer, ...outside },
          innerRing: inner,
          groove: both,
          ...rest,
        }),
      )
  })

/** Rollers that someone might turn rings for: what a ring of balls has, less its grooves, the rollers short or long. */
export const likelyRollers: fc.Arbitrary<RollerInput> = fc
  .tuple(likelyInput, some(between(0.3, 0.95)))
  .map(([{ innerRing: _, groove: __, split: ___, outerRing, ...input }, share]) => {
    const { engagement: _e, grooveDepth: _d, groove: _g, ...outside } = outerRing ?? {}
    const width = input.width ?? mm(2 * input.balls.diameter)
    const length = share === undefined ? {} : { length: mm(share * width) }
    return { ...input, arrangement: 'roller', balls: { ...input.balls, ...length }, outerRing: outside, width }
  })

/** Turntables that someone might turn: grooves, gaps and films as of rings, the plates thin or thick. */
export const likelyPlates: fc.Arbitrary<ThrustInput> = fc
  .tuple(likelyInput, some(between(0.4, 2)))
  .map(([{ innerRing: _, outerRing, radialInternalClearance: __, width: ___, split: ____, ...input }, share]) => {
    const { groove: _g, ...plates } = outerRing ?? {}
    const thickness = share === undefined ? {} : { thickness: mm(share * input.balls.diameter) }
    return { ...input, arrangement: 'thrust', plates: { ...plates, ...thickness } }
  })

/** Caged bearings that someone might turn: rings as of a full one, few balls or many, the cage said in every way. */
export const likelyCaged: fc.Arbitrary<CagedInput> = fc
  .tuple(
    likelyInput,
    fc.record({ count: fc.integer({ min: 3, max: 40 }), inner: between(0.1, 0.35), web: some(between(0.05, 2)) }),
    fc.record({
      pitch: some(between(1.2, 3)),
      pocket: some(between(0, 0.2)),
      land: some(between(0, 0.15)),
      wide: some(between(1.1, 2)),
    }),
  )
  .map(
    ([
      { ballGap: _g, minBallGap: _m, maxBallGap: _x, ...input },
      { count, inner, web },
      { pitch, pocket, land, wide },
    ]) => {
      const { diameter } = input.balls
      const size = (share: number | undefined): Mm | undefined =>
        share === undefined ? undefined : mm(share * diameter)
      const even = diameter / Math.sin(Math.PI / count)
      return {
        ...input,
        arrangement: 'caged',
        balls: { ...input.balls, count },
        bore: mm(0.2 * diameter),
        innerRing: { engagement: inner },
        cage: present<NonNullable<CagedInput['cage']>>({
          web: pitch === undefined ? size(web) : undefined,
          pitchDiameter: pitch === undefined ? undefined : mm(pitch * even),
          pocketClearance: size(pocket),
          landClearance: size(land),
          width: size(wide),
        }),
      }
    },
  )
