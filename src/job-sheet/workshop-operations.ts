import {
  type CagedDesign,
  type Design,
  type FullRingDesign,
  isCaged,
  isOfPlates,
} from '#shared/bearing/arrangements.ts'
import { plugReading } from '#shared/bearing/plug-reading.ts'
import { constructionOf } from '#shared/bearing/whole-year.ts'
import { PART_NAMES } from '#shared/bearing/wood-parts.ts'
import { nameOfSpecies } from '#shared/data/species.ts'
import { resolveMaking } from '#shared/making/defaults.ts'
import {
  type GaugeKit,
  gaugeKitOf,
  type PlateGaugeKit,
  type PlugToTurn,
  plateGaugeKitOf,
} from '#shared/making/gauge-kit.ts'
import { hasOneGrain } from '#shared/making/mounting.ts'
import type { RingStock } from '#shared/making/stock.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { gaugeNames, PLATE_GAUGE_NAMES, SIZES } from '#src/words/job-sheet/sizes.ts'
import * as words from '#src/words/job-sheet/workshop.ts'
import { flatSawnDoes } from '#src/words/summary.ts'
import {
  type AnyJob,
  arrangementOf,
  inBareWood,
  isRollingWood,
  type Operation,
  type Size,
  size,
  unitsOf,
} from './operation.ts'

/* Operations before the first cut and after the last one, whatever the bearing. Common practice, no source. */

/** What each part of wood is made from. */
export type PartStocks = Partial<Record<words.PlannedWood['part'], RingStock>>

/** Nothing is cut, and nothing read. */
const NO_CUT = { part: 'both', sizes: [], cautions: [], readings: [] } as const

export function chooseWood(job: AnyJob<Design>, stock: PartStocks): Operation {
  const { resolved } = job.design.bearing
  const { units, making = {} } = resolved.input
  const { woods = {} } = resolveMaking(making, units)
  const split = 'split' in resolved ? resolved.split : 'none'
  const alike = isOfPlates(job.design) ? 'plates' : split === 'inner-ring' ? 'innerRing' : 'outerRing'
  const planned = ([...PART_NAMES, 'cheeks'] as const).flatMap((part): words.PlannedWood[] => {
    const from = stock[part]
    if (from === undefined) return []
    const stated = part === 'cheeks' ? undefined : woods[part]
    const { species } = stated ?? {}
    return [
      {
        part,
        ...(species !== undefined && { species: nameOfSpecies(species) }),
        ...(stated && { construction: constructionOf(stated) }),
        blank: from.blank,
        board: itemAt(from.boards, 0),
      },
    ]
  })
  const lies = { isSplit: split !== 'none', hasGrain: hasOneGrain(woods[alike]) }
  const year = flatSawnDoes(job.design.bearing)
  const ofBalls = woods.balls && nameOfSpecies(woods.balls.species)
  const facts = { woods: planned, ofBalls, year, isRollingWood: isRollingWood(job) }
  return { ...words.wood(arrangementOf(job), lies, facts, units), ...NO_CUT, id: 'choose-wood' }
}

/** The operation that makes the gauges, before they are first used. */
export function makeGauges(job: AnyJob<Design>): Operation {
  const { design } = job
  const kit = isOfPlates(design) ? plateGaugeKitOf(design.bearing) : gaugeKitOf(design.bearing)
  const paper = 'dowels' in kit ? kit.dowels[0]?.paper : undefined
  const { tolerance: within, barWidth } = itemAt(kit.plugs, 0)
  const facts = {
    within,
    ...(barWidth !== undefined && { barWidth }),
    ...(paper !== undefined && { paper }),
    arePlugsNeeded: isCaged(design) || plugReading(design.bearing).decides,
    units: unitsOf(job),
  }
  return {
    ...words.gauges(arrangementOf(job), facts),
    id: 'make-gauges',
    part: 'both',
    sizes: [
      ...kit.plugs.map((plug) => plugSize(job, plug)),
      ...(barWidth === undefined ? [] : [{ name: SIZES.barWidth, value: barWidth }]),
      ...('profile' in kit ? plateKitSizes(kit) : ringKitSizes(kit)),
    ],
    cautions: ['turning', 'sawing', ...(hasProfile(kit) ? ['grinding' as const] : []), 'dust'],
    readings: [],
  }
}

/** Whether a scraper is ground to it. */
const hasProfile = (kit: GaugeKit | PlateGaugeKit): boolean => 'profile' in kit || kit.profiles.length > 0

const plugSize = (job: AnyJob<Design>, { tolerance, ...plug }: PlugToTurn): Size => ({
  ...plugToTry(job, plug),
  tolerance,
})

/** A plug as the gauge kit has it, which sizes it for bare wood. */
function plugToTry({ design, ...job }: AnyJob<Design>, { kind, diameter }: Omit<PlugToTurn, 'tolerance'>): Size {
  if (isCaged(design)) return inBareWood(size({ ...job, design }, 'plugDiameter', SIZES.plug), diameter)
  const [key, name] =
    kind === 'go' ? (['gauge.goDiameter', SIZES.goPlug] as const) : (['gauge.noGoDiameter', SIZES.noGoPlug] as const)
  return inBareWood(size({ ...job, design }, key, name), diameter)
}

/** The plugs of the kit, where they are tried. */
export const plugsToTry = (job: AnyJob<CagedDesign | FullRingDesign>): readonly Size[] =>
  gaugeKitOf(job.design.bearing).plugs.map((plug) => plugToTry(job, plug))

/** Profile, depth block and circle of the groove of both plates. */
const plateKitSizes = ({ profile, depthBlock, circle }: PlateGaugeKit): readonly Size[] => [
  { name: PLATE_GAUGE_NAMES.radius, value: profile.radius, byCaliper: true },
  { name: PLATE_GAUGE_NAMES.depth, value: profile.depth, byCaliper: true },
  { name: PLATE_GAUGE_NAMES.step, value: depthBlock.step, byCaliper: true },
  { name: PLATE_GAUGE_NAMES.circle, value: circle.fromBore, byCaliper: true },
]

/** Profiles, set-blocks and dowels, those of each raceway together. */
const ringKitSizes = ({ profiles, setBlocks, dowels }: GaugeKit): readonly Size[] =>
  (['outerRing', 'innerRing'] as const).flatMap((ring) => {
    const names = gaugeNames(ring, profiles.length > 0 ? 'groove' : 'track')
    return [
      ...profiles
        .filter((profile) => profile.ring === ring)
        .flatMap(({ radius, depth, stopDepth }) => [
          { name: names.radius, value: radius, byCaliper: true },
          { name: names.depth, value: depth, stopAt: stopDepth, byCaliper: true },
        ]),
      ...setBlocks
        .filter((block) => block.ring === ring)
        .map(({ at, length }) => ({ name: names[at], value: length, byCaliper: true })),
      ...dowels
        .filter((dowel) => dowel.ring === ring)
        .map(({ diameter }) => ({ name: names.dowel, value: diameter, byCaliper: true })),
    ]
  })

export const care = (job: AnyJob<Design>, closing?: words.Closing): Operation => ({
  ...words.care(arrangementOf(job), closing, job.design.bearing.resolved.input.balls.material === 'steel'),
  ...NO_CUT,
  id: 'care',
  cautions: ['finish'],
})
