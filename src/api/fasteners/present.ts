import type { Static } from 'typebox'
import type { SourceId } from '#shared/data/sources.ts'
import { clearanceDrill, SCREW_LENGTHS, WOOD_SCREWS, type WoodScrew as WoodScrewRow } from '#shared/data/wood-screws.ts'
import { inches, type Units } from '#shared/units/length.ts'
import { type ShownLength, show, toMm } from '#src/api/length.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import type { DrilledHole, FastenersRequest, FastenersResponse, WoodScrew } from './schema.ts'

const USED: readonly SourceId[] = ['asme-b18.6.1', 'wood-screw-holes', 'trade']

export function toFastenersResponse({ units, gauge, maxHeadDiameter }: FastenersRequest): FastenersResponse {
  const widest = maxHeadDiameter === undefined ? undefined : toMm(maxHeadDiameter, units)
  const screws = WOOD_SCREWS.filter(
    (screw) =>
      (gauge === undefined || screw.gauge === gauge) &&
      (widest === undefined || inches(screw.head ?? Number.NaN) <= widest),
  )
  return {
    units,
    screws: screws.map((screw) => toScrew(screw, units)),
    lengths: SCREW_LENGTHS.map((length) => show(inches(length), units)),
    sources: USED.map(toSource),
  }
}

function toScrew(screw: WoodScrewRow, units: Units): Static<typeof WoodScrew> {
  const size = (length: number | undefined): ShownLength | undefined =>
    length === undefined ? undefined : show(inches(length), units)
  const hole = (drill: string | undefined): Static<typeof DrilledHole> | undefined =>
    drill === undefined ? undefined : { drill, diameter: show(toMm(drill, 'in'), units) }
  return present<Static<typeof WoodScrew>>({
    gauge: screw.gauge,
    diameter: show(inches(screw.diameter), units),
    threadsPerInch: screw.threadsPerInch,
    headDiameter: size(screw.head),
    rootDiameter: size(screw.root),
    clearanceHole: hole(clearanceDrill(screw)),
    softwoodPilot: hole(screw.softwoodPilot),
    hardwoodPilot: hole(screw.hardwoodPilot),
    sources: screw.root === undefined ? ['asme-b18.6.1'] : ['asme-b18.6.1', 'wood-screw-holes'],
  })
}
