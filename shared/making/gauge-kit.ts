import { cutTo } from '#shared/bearing/dimensions.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { grooveStopShort } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/*
 * The gauges that are made before they are first used, and the dowel that carries the abrasive. What they check is the
 * design's; how true they must be is common practice, no source.
 */

/** A turned disc. */
export interface PlugToTurn {
  readonly kind: 'go' | 'no-go'
  readonly diameter: Mm
  /** How far off it may be either way: a twentieth of the way from go to no-go. */
  readonly tolerance: Mm
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
  /** The bottom of the groove where the sharp tool stops, and where it is done. */
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

export interface GaugeKit {
  readonly plugs: readonly PlugToTurn[]
  readonly profiles: readonly ProfileToCut[]
  readonly setBlocks: readonly SetBlock[]
  readonly dowels: readonly AbrasiveDowel[]
}

/** Two plugs share a tenth of the band (ten percent rule of gauge makers); either way, for wood: common practice, no source. */
const OF_BAND = 1 / 20
/** Paper of 80 grit with its backing: common practice, no source. */
const PAPER = mm(0.5)

/** @param bearing two rings: what checks a groove is sized for bare wood, before any finish */
export function gaugeKitOf(bearing: RingPair & { readonly gauge?: Plugs }): GaugeKit {
  const { gauge, resolved } = bearing
  const isGrooved = resolved.traits.raceway === 'groove'
  const rings = isGrooved ? (['outerRing', 'innerRing'] as const) : []
  return {
    plugs: gauge === undefined ? [] : plugsToTurn(gauge),
    profiles: rings.map((ring) => profileOf(ring, bearing)),
    setBlocks: rings.flatMap((ring) => setBlocksOf(ring, bearing)),
    dowels: rings.flatMap((ring) => dowelOf(ring, bearing)),
  }
}

/** A plug that goes in, and one that does not. */
export function plugsToTurn({ goDiameter, noGoDiameter }: Plugs): readonly PlugToTurn[] {
  const tolerance = mm(OF_BAND * Math.abs(noGoDiameter - goDiameter))
  return [
    { kind: 'go', diameter: goDiameter, tolerance },
    { kind: 'no-go', diameter: noGoDiameter, tolerance },
  ]
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

/** Across the bottoms of a groove, as it is cut before any finish. */
function setBlocksOf(ring: RingName, bearing: RingPair): readonly SetBlock[] {
  const { grooveBottomDiameter, grooveDepth } = bearing[ring]
  const towards = ring === 'outerRing' ? -2 : 2
  const done = cutTo(grooveBottomDiameter, ring === 'outerRing' ? 'hole' : 'outside', bearing.resolved)
  return [
    { ring, at: 'stop', length: mm(done + towards * grooveStopShort(grooveDepth)) },
    { ring, at: 'done', length: done },
  ]
}

/** Nothing where the groove is too small for a dowel and paper. */
function dowelOf(ring: RingName, bearing: RingPair): readonly AbrasiveDowel[] {
  const diameter = 2 * (radiusOf(ring, bearing) - PAPER)
  return diameter >= 2 * PAPER ? [{ ring, diameter: mm(diameter), paper: PAPER }] : []
}
