import type { ArrangementName, InputByArrangement, RadialBearing } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import { DESIGN_SOURCES } from '#shared/data/sources.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { toAssumptions } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toDimension } from '#src/api/dimension.ts'
import { show } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { toSource } from '#src/api/source.ts'
import { toWarning } from '#src/api/warning.ts'
import { type GaugeFacts, gaugeNote, radialSteps } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'
import { termsOf } from '#src/words/terms.ts'
import type { RadialDesignResponse } from './schema.ts'
import type { StockAnswer } from './stock.ts'
import type { Stock } from './stock-schema.ts'

const USED = DESIGN_SOURCES.map(toSource)

/** A design in the caller's units and in words. */
export function toRadialDesignResponse(
  design: DesignOf<RadialBearing>,
  stock?: StockAnswer<Stock>,
): RadialDesignResponse {
  const { bearing } = design
  return answer(
    { ...toAsked('radial', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerGrooveDepth: showNumber(bearing.gapPerGrooveDepth),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      ...toRings(bearing),
      ...toLands(bearing),
      ...toPlay(bearing),
      gauge: toGauge(bearing),
      assembly: toAssembly(bearing),
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

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

export function toGauge({ gauge, resolved }: BallRing): RadialDesignResponse['gauge'] {
  const { units } = resolved.input
  const facts: GaugeFacts = {
    ballDiameter: resolved.ballDiameter,
    gapPerBallDiameter: gauge.gapPerBallDiameterAtPlug,
    ...beforeFinish(resolved),
  }
  return {
    nominalDiameter: show(gauge.nominalDiameter, units),
    goDiameter: show(gauge.goDiameter, units),
    noGoDiameter: show(gauge.noGoDiameter, units),
    gapPerBallDiameterAtPlug: showNumber(gauge.gapPerBallDiameterAtPlug),
    note: gaugeNote(facts, units, termsOf(resolved.input)),
  }
}

/** A film on a ring's groove brings its balls in; on a plate's it lifts them. */
const beforeFinish = ({ finishAllowance, traits }: ResolvedBalls): Pick<GaugeFacts, 'largerBeforeFinish'> =>
  finishAllowance === 0 || traits.members === 'plates' ? {} : { largerBeforeFinish: mm(2 * finishAllowance) }

function toAssembly({ assembly, eccentricFilling, resolved }: RadialBearing): RadialDesignResponse['assembly'] {
  const { units } = resolved.input
  const { easiestWay } = assembly
  const { split, waysIn } = resolved
  return {
    split,
    easiestWay,
    waysIn: { fromInside: show(waysIn.fromInside, units), overLand: show(waysIn.overLand, units) },
    eccentricFilling: { mostBalls: eccentricFilling.mostBalls, roomBetweenLands: eccentricFilling.roomBetweenLands },
    steps: radialSteps(easiestWay, split),
  }
}
