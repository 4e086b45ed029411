import type { Static } from 'typebox'
import type { GaugeKit as CoreKit, PlateGaugeKit as CorePlateKit } from '#shared/making/gauge-kit.ts'
import type { Units } from '#shared/units/length.ts'
import { show } from '#src/api/length.ts'
import { dowelSentence, plugSentence, profileSentence, setBlockSentence } from '#src/words/gauge-kit.ts'
import type { Terms } from '#src/words/terms.ts'
import type { GaugeKit, PlateGaugeKit } from './making-schema.ts'

/** The gauges to make, in the caller's units and in words. */
export const toGaugeKit = (
  { plugs, profiles, setBlocks, dowels }: CoreKit,
  units: Units,
  terms: Terms,
): Static<typeof GaugeKit> => ({
  plugs: toPlugs(plugs, units),
  profiles: profiles.map((profile) => ({
    ring: profile.ring,
    radius: show(profile.radius, units),
    stopDepth: show(profile.stopDepth, units),
    depth: show(profile.depth, units),
    message: profileSentence(profile, units),
  })),
  setBlocks: setBlocks.map((block) => ({
    ...block,
    length: show(block.length, units),
    message: setBlockSentence(block, units, terms),
  })),
  dowels: dowels.map((dowel) => ({
    ...dowel,
    diameter: show(dowel.diameter, units),
    paper: show(dowel.paper, units),
    message: dowelSentence(dowel, units),
  })),
})

const toPlugs = (plugs: CoreKit['plugs'], units: Units) =>
  plugs.map((plug) => ({
    ...plug,
    diameter: show(plug.diameter, units),
    tolerance: show(plug.tolerance, units),
    message: plugSentence(plug, units),
  }))

/** The gauges of plates. */
export const toPlateGaugeKit = (
  { plugs, profile, depthBlock, circle }: CorePlateKit,
  units: Units,
): Static<typeof PlateGaugeKit> => ({
  plugs: toPlugs(plugs, units),
  profile: { radius: show(profile.radius, units), depth: show(profile.depth, units) },
  depthBlock: { step: show(depthBlock.step, units) },
  circle: { fromBore: show(circle.fromBore, units) },
})
