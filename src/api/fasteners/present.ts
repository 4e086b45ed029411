import type { Static } from 'typebox'
import {
  METRIC_SCREW_LENGTHS,
  METRIC_WOOD_SCREWS,
  type MetricWoodScrew,
  metricClearance,
  metricPilot,
} from '#shared/data/metric-wood-screws.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { clearanceDrill, SCREW_LENGTHS, WOOD_SCREWS, type WoodScrew as WoodScrewRow } from '#shared/data/wood-screws.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { show, toMm } from '#src/api/length.ts'
import { shownBy } from '#src/api/schema.ts'
import { toSource } from '#src/api/source.ts'
import { DrilledHole, type FastenersRequest, type FastenersResponse, WoodScrew } from './schema.ts'

type Shown = Static<typeof WoodScrew>
/** A row of either table, in the core's millimetres. */
interface Screw extends Pick<Shown, 'system' | 'size' | 'gauge'> {
  readonly threadsPerInch?: number | undefined
  readonly metricDiameter?: number
  readonly diameter: Mm
  readonly headDiameter: Mm | undefined
  readonly rootDiameter: Mm | undefined
  readonly holes: { readonly [Name in 'clearanceHole' | 'softwoodPilot' | 'hardwoodPilot']: string | undefined }
  readonly sources: SourceId[]
}

const inInches = (name: string | undefined): string | undefined => (name === undefined ? undefined : `${name} in`)

const byGauge = (screw: WoodScrewRow): Screw => ({
  system: 'inch',
  size: `No. ${screw.gauge}`,
  gauge: screw.gauge,
  diameter: inches(screw.diameter),
  threadsPerInch: screw.threadsPerInch,
  headDiameter: screw.head === undefined ? undefined : inches(screw.head),
  rootDiameter: screw.root === undefined ? undefined : inches(screw.root),
  holes: {
    clearanceHole: inInches(clearanceDrill(screw)),
    softwoodPilot: inInches(screw.softwoodPilot),
    hardwoodPilot: inInches(screw.hardwoodPilot),
  },
  sources: screw.root === undefined ? ['asme-b18.6.1'] : ['asme-b18.6.1', 'wood-screw-holes'],
})

const byDiameter = (screw: MetricWoodScrew): Screw => ({
  system: 'metric',
  size: `${screw.diameter} mm`,
  metricDiameter: screw.diameter,
  diameter: mm(screw.diameter),
  headDiameter: mm(screw.head),
  rootDiameter: mm(screw.core),
  holes: {
    clearanceHole: `${metricClearance(screw)} mm`,
    softwoodPilot: `${metricPilot(screw, 'softwood')} mm`,
    hardwoodPilot: `${metricPilot(screw, 'hardwood')} mm`,
  },
  sources: ['gbt-922', 'din-97', 'wood-screw-holes', 'trade'],
})

const SCREWS: readonly Screw[] = [...WOOD_SCREWS.map(byGauge), ...METRIC_WOOD_SCREWS.map(byDiameter)]

export function toFastenersResponse(query: FastenersRequest): FastenersResponse {
  const { units, system, gauge, metricDiameter, maxHeadDiameter } = query
  const widest = maxHeadDiameter === undefined ? undefined : toMm(maxHeadDiameter, units)
  const screws = SCREWS.filter(
    (screw) =>
      (system === undefined || screw.system === system) &&
      (gauge === undefined || screw.gauge === gauge) &&
      (metricDiameter === undefined || screw.metricDiameter === metricDiameter) &&
      (widest === undefined || (screw.headDiameter ?? Number.NaN) <= widest),
  )
  const used = new Set<SourceId>([...screws.flatMap(({ sources }) => sources), 'trade'])
  return {
    units,
    screws: screws.map((screw) => toScrew(screw, units)),
    lengths: SCREW_LENGTHS.map((length) => show(inches(length), units)),
    metricLengths: METRIC_SCREW_LENGTHS.map((length) => show(mm(length), units)),
    sources: [...used].map(toSource),
  }
}

function toScrew({ holes, ...screw }: Screw, units: Units): Shown {
  const drilled = Object.entries(holes).flatMap(([name, drill]) =>
    drill === undefined ? [] : [[name, shownBy(DrilledHole, { drill, diameter: toMm(drill, units) }, units)]],
  )
  return shownBy(WoodScrew, { ...screw, ...Object.fromEntries(drilled) }, units)
}
