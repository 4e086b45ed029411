import type { Static } from 'typebox'
import type { GaugeKit as CoreKit, PlateGaugeKit as CorePlateKit } from '#shared/making/gauge-kit.ts'
import type { Units } from '#shared/units/length.ts'
import { shownBy } from '#src/api/schema.ts'
import { dowelSentence, plugSentence, profileSentence, setBlockSentence } from '#src/words/gauge-kit.ts'
import type { Terms } from '#src/words/terms.ts'
import { GaugeKit, PlateGaugeKit } from './making-schema.ts'

/** The gauges to make, in the caller's units and in words. */
export const toGaugeKit = (
  { plugs, profiles, setBlocks, dowels }: CoreKit,
  units: Units,
  terms: Terms,
): Static<typeof GaugeKit> =>
  shownBy(
    GaugeKit,
    {
      plugs: withWords(plugs, units),
      profiles: profiles.map((profile) => ({ ...profile, message: profileSentence(profile, units) })),
      setBlocks: setBlocks.map((block) => ({ ...block, message: setBlockSentence(block, units, terms) })),
      dowels: dowels.map((dowel) => ({ ...dowel, message: dowelSentence(dowel, units) })),
    },
    units,
  )

const withWords = (plugs: CoreKit['plugs'], units: Units) =>
  plugs.map((plug) => ({ ...plug, message: plugSentence(plug, units) }))

/** The same of a turntable. */
export const toPlateGaugeKit = (kit: CorePlateKit, units: Units): Static<typeof PlateGaugeKit> =>
  shownBy(PlateGaugeKit, { ...kit, plugs: withWords(kit.plugs, units) }, units)
