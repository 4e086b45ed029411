import type { Static } from 'typebox'
import type { GaugeKit as CoreKit } from '#shared/making/gauge-kit.ts'
import type { Units } from '#shared/units/length.ts'
import { show } from '#src/api/length.ts'
import { dowelSentence, plugSentence, profileSentence, setBlockSentence } from '#src/words/gauge-kit.ts'
import type { Terms } from '#src/words/terms.ts'
import type { GaugeKit } from './making-schema.ts'

/** The gauges to make, in the caller's units and in words. */
export const toGaugeKit = (
  { plugs, profiles, setBlocks, dowels }: CoreKit,
  units: Units,
  terms: Terms,
): Static<typeof GaugeKit> => ({
  plugs: plugs.map((plug) => ({
    ...plug,
    diameter: show(plug.diameter, units),
    tolerance: show(plug.tolerance, units),
    message: plugSentence(plug, units),
  })),
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
