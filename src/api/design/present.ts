import type { ArrangementName, InputByArrangement, RadialBearing } from '#shared/bearing/arrangements.ts'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { FullRings } from '#shared/bearing/full-rings.ts'
import type { SettledBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import { DESIGN_SOURCES } from '#shared/data/sources.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { toAssumptions } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { toDesignRequest } from '#src/api/design-input.ts'
import { toDimension } from '#src/api/dimension.ts'
import { show } from '#src/api/length.ts'
import { toSource } from '#src/api/source.ts'
import { toWarning } from '#src/api/warning.ts'
import { type GaugeFacts, gaugeNote, radialSteps } from '#src/words/assembly.ts'
import { termsOf } from '#src/words/terms.ts'
import type { RadialDesignResponse } from './schema.ts'

const USED = DESIGN_SOURCES.map(toSource)

/** A design in the caller's units and in words. */
export function toRadialDesignResponse(design: DesignOf<RadialBearing>): RadialDesignResponse {
  const { bearing } = design
  return {
    ...toAsked('radial', bearing.settled.input, bearing.settled.assumed),
    ...toBallRing(bearing, bearing.settled.assembly.assemblyGap),
    gapPerGrooveDepth: bearing.gapPerGrooveDepth,
    gapPerBallDiameter: bearing.gapPerBallDiameter,
    ...toRings(bearing),
    ...toLands(bearing),
    ...toPlay(bearing),
    gauge: toGauge(bearing),
    assembly: toAssembly(bearing),
    ...toNotes(design),
  }
}

export function toAsked<Name extends ArrangementName>(
  arrangement: Name,
  resolved: InputByArrangement[Name],
  assumed: readonly string[],
) {
  const input = toDesignRequest<Name>(resolved)
  return { arrangement, units: resolved.units, input, assumed: toAssumptions(assumed, arrangement, input) }
}

export function toBallRing(ring: BallRing, assemblyGap: Mm) {
  const { settled } = ring
  const size = (length: Mm) => show(length, settled.input.units)
  return {
    ballDiameter: size(settled.ballDiameter),
    closedPitchRadius: size(ring.closedPitchRadius),
    pitchRadius: size(ring.pitchRadius),
    pitchDiameter: size(mm(2 * ring.pitchRadius)),
    ballGap: size(ring.ballGap),
    assemblyGap: size(assemblyGap),
    gapPerPitchRadius: ring.gapPerPitchRadius,
  }
}

export function toRings({ settled, outerRing, innerRing }: RingPair) {
  const { units } = settled.input
  return {
    outerRing: { outsideDiameter: show(outerRing.outsideDiameter, units), ...toRing(outerRing, units) },
    innerRing: { boreDiameter: show(innerRing.boreDiameter, units), ...toRing(innerRing, units) },
  }
}

export function toLands({ settled, landGap, leastLandGap }: RingPair) {
  const { units } = settled.input
  return { landGap: show(landGap, units), leastLandGap: show(leastLandGap, units) }
}

export function toPlay({ settled, radialInternalClearance, axialPlay, tilt }: RingPair) {
  const { units } = settled.input
  return { radialInternalClearance: show(radialInternalClearance, units), axialPlay: show(axialPlay, units), tilt }
}

type Noted = DesignOf<{ readonly settled: SettledBalls }>

export function toNotes({ bearing, dimensions, warnings }: Noted) {
  const { input } = bearing.settled
  const terms = termsOf(input)
  return {
    dimensions: dimensions.map((row) => toDimension(row, input.units, terms)),
    warnings: warnings.map((warning) => toWarning(warning, input.units, terms)),
    cautions: cautionsOf(bearing.settled),
    sources: USED,
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

export function toGauge({ gauge, settled }: BallRing): RadialDesignResponse['gauge'] {
  const { units } = settled.input
  const facts: GaugeFacts = {
    ballDiameter: settled.ballDiameter,
    gapPerBallDiameter: gauge.gapPerBallDiameterAtPlug,
    ...beforeFinish(settled),
  }
  return {
    nominalDiameter: show(gauge.nominalDiameter, units),
    goDiameter: show(gauge.goDiameter, units),
    noGoDiameter: show(gauge.noGoDiameter, units),
    gapPerBallDiameter: gauge.gapPerBallDiameterAtPlug,
    note: gaugeNote(facts, units, termsOf(settled.input)),
  }
}

/** A film on a ring's groove brings its balls in; on a plate's it lifts them. */
const beforeFinish = ({ finishAllowance, traits }: SettledBalls): Pick<GaugeFacts, 'largerBeforeFinish'> =>
  finishAllowance === 0 || traits.members === 'plates' ? {} : { largerBeforeFinish: mm(2 * finishAllowance) }

function toAssembly({ assembly, eccentricFilling, settled }: FullRings): RadialDesignResponse['assembly'] {
  const { units } = settled.input
  const { easiestWay, waysIn } = assembly
  const { split } = settled
  return {
    split,
    easiestWay,
    waysIn: { fromInside: show(waysIn.fromInside, units), overLand: show(waysIn.overLand, units) },
    eccentricFilling: { mostBalls: eccentricFilling.mostBalls, roomBetweenLands: eccentricFilling.roomBetweenLands },
    steps: radialSteps(easiestWay, split),
  }
}
