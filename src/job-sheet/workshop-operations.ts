import { type CagedDesign, type Design, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import { type GaugeKit, gaugeKitOf, type PlugToTurn, plugsToTurn } from '#shared/making/gauge-kit.ts'
import { mm } from '#shared/units/length.ts'
import { gaugeNames, SIZES } from '#src/words/job-sheet/sizes.ts'
import * as words from '#src/words/job-sheet/workshop.ts'
import { type AnyJob, arrangementOf, type Operation, type Size, size, unitsOf } from './operation.ts'

/* Operations before the first cut and after the last one, whatever the bearing. Common practice, no source. */

/** Nothing is cut, and nothing read. */
const NO_CUT = { part: 'both', sizes: [], cautions: [], readings: [] } as const

export const chooseWood = (job: AnyJob<Design>): Operation => ({
  ...words.wood(arrangementOf(job)),
  ...NO_CUT,
  id: 'choose-wood',
})

/** How far the one plug of a cage may be off: it has no band. Common practice, no source. */
const PLUG_ERROR = mm(0.05)

const NO_GAUGES: Omit<GaugeKit, 'plugs'> = { profiles: [], setBlocks: [], dowels: [] }

/** The operation that makes the gauges, before they are first used. */
export function makeGauges(job: AnyJob<Design>): Operation {
  const { design } = job
  const kit = isOfPlates(design) ? NO_GAUGES : gaugeKitOf(design.bearing)
  const plugs = isCaged(design) ? [] : plugsToTurn(design.bearing.gauge)
  const facts = {
    within: plugs[0]?.tolerance ?? PLUG_ERROR,
    hasSetBlocks: kit.setBlocks.length > 0,
    ...(kit.dowels[0] && { paper: kit.dowels[0].paper }),
    units: unitsOf(job),
  }
  return {
    ...words.gauges(arrangementOf(job), facts),
    id: 'make-gauges',
    part: 'both',
    sizes: [
      ...(isCaged(design)
        ? [{ ...size({ ...job, design }, 'plugDiameter', SIZES.plug), tolerance: PLUG_ERROR }]
        : plugs.map((plug) => plugSize({ ...job, design }, plug))),
      ...kitSizes(kit),
    ],
    cautions: ['turning', 'sawing', 'dust'],
    readings: [],
  }
}

const plugSize = (job: AnyJob<Exclude<Design, CagedDesign>>, { kind, tolerance }: PlugToTurn): Size => ({
  ...(kind === 'go' ? size(job, 'gauge.goDiameter', SIZES.goPlug) : size(job, 'gauge.noGoDiameter', SIZES.noGoPlug)),
  tolerance,
})

/** Profiles, set-blocks and dowels, those of each groove together. */
const kitSizes = ({ profiles, setBlocks, dowels }: Omit<GaugeKit, 'plugs'>): readonly Size[] =>
  profiles.flatMap(({ ring, radius, depth, stopDepth }) => {
    const names = gaugeNames(ring)
    return [
      { name: names.radius, value: radius, byCaliper: true },
      { name: names.depth, value: depth, stopAt: stopDepth, byCaliper: true },
      ...setBlocks
        .filter((block) => block.ring === ring)
        .map(({ at, length }) => ({ name: names[at], value: length, byCaliper: true })),
      ...dowels
        .filter((dowel) => dowel.ring === ring)
        .map(({ diameter }) => ({ name: names.dowel, value: diameter, byCaliper: true })),
    ]
  })

export const care = (job: AnyJob<Design>): Operation => ({ ...words.care(arrangementOf(job)), ...NO_CUT, id: 'care' })
