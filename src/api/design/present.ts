import type { Static } from 'typebox'
import type { ArrangementName, InputByArrangement } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import { DESIGN_SOURCES } from '#shared/data/sources.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { toAssumptions } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toDimension } from '#src/api/dimension.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { toSource } from '#src/api/source.ts'
import { toWarning } from '#src/api/warning.ts'
import { type GaugeFacts, gaugeNote } from '#src/words/assembly.ts'
import { termsOf } from '#src/words/terms.ts'
import type { Gauge } from './schema.ts'
import type { StockAnswer } from './stock.ts'

const USED = DESIGN_SOURCES.map(toSource)

type Stocked = StockAnswer<unknown>

/** What was asked of a design, with every default filled in, and what was assumed. */
export function toAsked<Name extends ArrangementName>(
  arrangement: Name,
  { input: resolved, assumed }: { readonly input: InputByArrangement[Name]; readonly assumed: readonly string[] },
  stock?: Stocked,
) {
  const input = toDesignRequest<Name>(resolved)
  return {
    arrangement,
    units: resolved.units,
    input: stock === undefined ? input : { ...input, stock: stock.request },
    assumed: [...toAssumptions(assumed, arrangement, input), ...(stock?.assumed ?? [])],
  }
}

export function toBallRing(ring: BallRing) {
  const { resolved } = ring
  const size = (length: Mm) => show(length, resolved.input.units)
  return {
    ballDiameter: size(resolved.ballDiameter),
    closedPitchRadius: size(ring.closedPitchRadius),
    pitchRadius: size(ring.pitchRadius),
    pitchDiameter: size(mm(2 * ring.pitchRadius)),
    ballGap: size(ring.ballGap),
    assemblyGap: size(resolved.assembly.assemblyGap),
    gapPerPitchRadius: showNumber(ring.gapPerPitchRadius),
  }
}

export function toRings({ resolved, outerRing, innerRing }: RingPair) {
  const { units } = resolved.input
  return {
    outerRing: { outsideDiameter: show(outerRing.outsideDiameter, units), ...toRing(outerRing, units) },
    innerRing: { boreDiameter: show(innerRing.boreDiameter, units), ...toRing(innerRing, units) },
  }
}

export function toLands({ resolved, landGap, leastLandGap }: RingPair) {
  const { units } = resolved.input
  return { landGap: show(landGap, units), leastLandGap: show(leastLandGap, units) }
}

export function toPlay({ resolved, radialInternalClearance, axialPlay, tilt }: RingPair) {
  const { units } = resolved.input
  return {
    radialInternalClearance: show(radialInternalClearance, units),
    axialPlay: show(axialPlay, units),
    tilt: showNumber(tilt),
  }
}

type Noted = DesignOf<{ readonly resolved: ResolvedBalls }>

/** The table of what to cut, and where it comes from for whoever asked. */
export const toTable = <S>({ bearing, dimensions }: Noted, stock: StockAnswer<S> | undefined) => ({
  dimensions: dimensions.map((row) => toDimension(row, bearing.resolved.input.units, termsOf(bearing.resolved.input))),
  ...(stock === undefined ? {} : { stock: stock.stock }),
})

export function toNotes({ bearing, warnings }: Noted, stock?: Stocked) {
  const { units } = bearing.resolved.input
  return {
    warnings: [
      ...warnings.map((warning) => toWarning(warning, units, termsOf(bearing.resolved.input))),
      ...(stock?.warnings ?? []),
    ],
    cautions: cautionsOf(bearing.resolved),
    sources: stock === undefined ? USED : [...new Set([...DESIGN_SOURCES, ...stock.sources])].map(toSource),
  }
}

function toRing(ring: Ring, units: Units) {
  const size = (length: Mm) => show(length, units)
  return {
    landDiameter: size(ring.landDiameter),
    grooveBottomDiameter: size(ring.grooveBottomDiameter),
    grooveDepth: size(ring.grooveDepth),
    seatDepth: size(ring.seatDepth),
    grooveRadius: size(ring.grooveRadius),
    grooveWidth: size(ring.grooveWidth),
    wall: size(ring.wall),
    width: size(ring.width),
    seat: ring.seat,
  }
}

/** @param beforeFinish how much larger the plug is for grooves that still lack their finish, where that changes it */
export function toGauge(
  { gauge, resolved }: BallRing,
  beforeFinish: Pick<GaugeFacts, 'largerBeforeFinish'> = {},
): Static<typeof Gauge> {
  const { units } = resolved.input
  const facts: GaugeFacts = {
    ballDiameter: resolved.ballDiameter,
    gapPerBallDiameter: gauge.gapPerBallDiameterAtPlug,
    ...beforeFinish,
  }
  return {
    nominalDiameter: show(gauge.nominalDiameter, units),
    goDiameter: show(gauge.goDiameter, units),
    noGoDiameter: show(gauge.noGoDiameter, units),
    gapPerBallDiameterAtPlug: showNumber(gauge.gapPerBallDiameterAtPlug),
    note: gaugeNote(facts, units, termsOf(resolved.input)),
  }
}

/** A film on a ring's groove brings its balls in. */
export const beforeFinish = ({ finishAllowance }: ResolvedBalls): Pick<GaugeFacts, 'largerBeforeFinish'> =>
  finishAllowance === 0 ? {} : { largerBeforeFinish: mm(2 * finishAllowance) }
