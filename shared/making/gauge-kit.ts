import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { plugBeforeFinish } from '#shared/bearing/before-finish.ts'
import { cutTo } from '#shared/bearing/dimensions.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { grooveStopShort, trackStopShort } from '#shared/making/cutting-allowances.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { stepUp } from '#shared/units/step.ts'

/*
 * The gauges that are made before they are first used, and the dowel that carries the abrasive. What they check is the
 * design's; how true they must be is common practice, no source.
 */

/** A turned disc, or a bar in its place. */
export interface PlugToTurn {
  /** `snug`: the one plug of balls in a cage, which just enters. */
  readonly kind: 'go' | 'no-go' | 'snug'
  readonly diameter: Mm
  /** How far off it may be either way: a twentieth of the way from go to no-go. */
  readonly tolerance: Mm
  /** Least width of a bar across the circle, along the grain, with ends rounded to it. Left out for a disc. */
  readonly barWidth?: Mm
}

/** A card or a scraper that has the section of a groove. */
export interface ProfileToCut {
  readonly ring: RingName
  readonly radius: Mm
  /** From the shoulders to the tip: where the sharp tool stops, and where the groove is done. */
  readonly stopDepth: Mm
  readonly depth: Mm
}

/** A strip of wood cut to a length: the caliper is set to it. */
export interface SetBlock {
  readonly ring: RingName
  /** Across the raceway where the sharp tool stops, and where it is done. */
  readonly at: 'stop' | 'done'
  readonly length: Mm
}

/** A dowel that, wrapped once in abrasive paper, has the radius of a groove. */
export interface AbrasiveDowel {
  readonly ring: RingName
  readonly diameter: Mm
  readonly paper: Mm
}

interface Plugs {
  readonly goDiameter: Mm
  readonly noGoDiameter: Mm
}

/** What checks the raceways of two rings. */
export interface GaugeKit {
  readonly plugs: readonly PlugToTurn[]
  readonly profiles: readonly ProfileToCut[]
  readonly setBlocks: readonly SetBlock[]
  readonly dowels: readonly AbrasiveDowel[]
}

/** What checks the groove of both plates. */
export interface PlateGaugeKit {
  readonly plugs: readonly PlugToTurn[]
  readonly profile: Pick<ProfileToCut, 'radius' | 'depth'>
  /** A block with a step as high as the groove is deep: the rod of the caliper is set to it. */
  readonly depthBlock: { readonly step: Mm }
  /** A card that lies against the wall of the bore: from there to the lowest line of the groove. */
  readonly circle: { readonly fromBore: Mm }
}

/** Two plugs share a tenth of the band (ten percent rule of gauge makers); either way, for wood: common practice, no source. */
const OF_BAND = 1 / 20
/** How far off a plug may be that has no band. */
const SNUG_ERROR = mm(0.05)
/** A disc so wide moves across its grain by more than it may be off, and few lathes turn it. Common practice, no source. */
const WIDEST_DISC = mm(150)
/** Width of a bar over the way from ball to ball, so that each end always meets one; what a hand holds; and a round figure. */
const BAR_WIDTH = 1.25
const LEAST_BAR_WIDTH = mm(20)
const BAR_STEP: Readonly<Record<Units, Mm>> = { in: inches(1 / 8), mm: mm(1) }
/** Paper of 80 grit with its backing: common practice, no source. */
const PAPER = mm(0.5)

const RINGS = ['outerRing', 'innerRing'] as const

interface Gauged extends RingPair {
  readonly gauge?: Plugs
  /** Of balls in a cage. */
  readonly plugDiameter?: Mm
}

/** @param bearing two rings: what checks a raceway is sized for bare wood, before any finish */
export function gaugeKitOf(bearing: Gauged): GaugeKit {
  const { gauge, plugDiameter, resolved } = bearing
  const bare = (plug: PlugToTurn): PlugToTurn => ({ ...plug, diameter: plugBeforeFinish(plug.diameter, resolved) })
  const grooved = resolved.traits.raceway === 'groove' ? RINGS : []
  return {
    plugs: [
      ...(gauge === undefined ? [] : plugsToTurn(gauge, resolved.input)),
      ...(plugDiameter === undefined
        ? []
        : [
            {
              kind: 'snug',
              diameter: plugDiameter,
              tolerance: SNUG_ERROR,
              ...barFor(plugDiameter, resolved.input),
            } as const,
          ]),
    ].map(bare),
    profiles: grooved.map((ring) => profileOf(ring, bearing)),
    setBlocks: RINGS.flatMap((ring) => setBlocksOf(ring, bearing)),
    dowels: grooved.flatMap((ring) => dowelOf(ring, bearing)),
  }
}

/** @param bearing plates: the groove is sized for bare wood, before any finish, as all that is cut */
export function plateGaugeKitOf({ gauge, plate, pitchRadius, resolved }: ThrustBearing): PlateGaugeKit {
  const bore = cutTo(plate.boreDiameter, 'hole', resolved)
  return {
    plugs: plugsToTurn(gauge, resolved.input),
    profile: { radius: cutTo(plate.grooveRadius, 'arc', resolved), depth: plate.grooveDepth },
    depthBlock: { step: plate.grooveDepth },
    circle: { fromBore: mm(pitchRadius - bore / 2) },
  }
}

interface BallsIn {
  readonly units: Units
  readonly balls: { readonly count: number }
}

/** A plug that goes in, and one that does not: both discs, or both bars. */
export function plugsToTurn({ goDiameter, noGoDiameter }: Plugs, ring: BallsIn): readonly PlugToTurn[] {
  const tolerance = mm(OF_BAND * Math.abs(noGoDiameter - goDiameter))
  const bar = barFor(mm(Math.max(goDiameter, noGoDiameter)), ring)
  return [
    { kind: 'go', diameter: goDiameter, tolerance, ...bar },
    { kind: 'no-go', diameter: noGoDiameter, tolerance, ...bar },
  ]
}

/** The balls touch the plug D sin(π / Z) apart. Where few large ones do, a bar would be half a disc: that stays a disc. */
function barFor(diameter: Mm, { units, balls }: BallsIn): Pick<PlugToTurn, 'barWidth'> {
  const least = Math.max(LEAST_BAR_WIDTH, BAR_WIDTH * diameter * Math.sin(Math.PI / balls.count))
  const barWidth = stepUp(least, BAR_STEP[units])
  return diameter > WIDEST_DISC && barWidth <= diameter / 2 ? { barWidth } : {}
}

const profileOf = (ring: RingName, bearing: RingPair): ProfileToCut => {
  const { grooveDepth } = bearing[ring]
  return {
    ring,
    radius: radiusOf(ring, bearing),
    stopDepth: mm(grooveDepth - grooveStopShort(grooveDepth)),
    depth: grooveDepth,
  }
}

/** Of a groove as it is cut, before any finish. */
const radiusOf = (ring: RingName, bearing: RingPair): Mm => cutTo(bearing[ring].grooveRadius, 'arc', bearing.resolved)

/** Across the bottoms of a groove or across a track, as it is cut before any finish. */
function setBlocksOf(ring: RingName, { resolved, ...bearing }: RingPair): readonly SetBlock[] {
  const { grooveBottomDiameter, grooveDepth } = bearing[ring]
  const towards = ring === 'outerRing' ? -2 : 2
  const done = cutTo(grooveBottomDiameter, ring === 'outerRing' ? 'hole' : 'outside', resolved)
  const short =
    resolved.traits.raceway === 'groove'
      ? grooveStopShort(grooveDepth)
      : trackStopShort(resolved.ballDiameter, resolved.input.units)
  return [
    { ring, at: 'stop', length: mm(done + towards * short) },
    { ring, at: 'done', length: done },
  ]
}

/** Nothing where the groove is too small for a dowel and paper. */
function dowelOf(ring: RingName, bearing: RingPair): readonly AbrasiveDowel[] {
  const diameter = 2 * (radiusOf(ring, bearing) - PAPER)
  return diameter >= 2 * PAPER ? [{ ring, diameter: mm(diameter), paper: PAPER }] : []
}
