import type { Lumber, MakingInput } from '#shared/bearing/making-input.ts'
import { SMALLEST_GAUGE } from '#shared/bearing/screw-wall.ts'
import {
  METRIC_HEAD_ANGLE,
  METRIC_SCREW_LENGTHS,
  METRIC_WOOD_SCREWS,
  metricClearance,
  metricPilot,
} from '#shared/data/metric-wood-screws.ts'
import { clearanceDrill, drillDiameter, FLAT_HEAD_ANGLE, SCREW_LENGTHS, WOOD_SCREWS } from '#shared/data/wood-screws.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'

/** A drill as the shop names it, and its diameter. */
export interface Drill {
  readonly name: string
  readonly diameter: Mm
}

/** A wood screw of which head and holes are known: by its gauge, in inches, or by its diameter, in millimetres. */
export interface KnownScrew {
  readonly size: { readonly gauge: number } | { readonly diameter: Mm }
  /** As it is asked for: `No. 8`, `4 mm`. */
  readonly name: string
  readonly shank: Mm
  readonly head: Mm
  /** How deep the countersink of its flat head is. */
  readonly headDepth: Mm
  readonly clearance: Drill
  readonly pilots: Readonly<Record<Lumber, Drill>>
  /** That are sold, ascending. */
  readonly lengths: readonly Mm[]
}

const depthOf = (head: number, shank: number, angle: number): Mm =>
  mm((head - shank) / 2 / Math.tan(((angle / 2) * Math.PI) / 180))

const inInches = (name: string): Drill => ({ name: `${name} in`, diameter: drillDiameter(name) })
const inMillimetres = (size: number): Drill => ({ name: `${size} mm`, diameter: mm(size) })

const BY_GAUGE: readonly KnownScrew[] = WOOD_SCREWS.flatMap((screw) => {
  const { gauge, diameter, head, softwoodPilot, hardwoodPilot } = screw
  const clearance = clearanceDrill(screw)
  if (gauge < SMALLEST_GAUGE || head === undefined || clearance === undefined) return []
  if (softwoodPilot === undefined || hardwoodPilot === undefined) return []
  return {
    size: { gauge },
    name: `No. ${gauge}`,
    shank: inches(diameter),
    head: inches(head),
    headDepth: depthOf(inches(head), inches(diameter), FLAT_HEAD_ANGLE),
    clearance: inInches(clearance),
    pilots: { softwood: inInches(softwoodPilot), hardwood: inInches(hardwoodPilot) },
    lengths: SCREW_LENGTHS.map(inches),
  }
})

const BY_DIAMETER: readonly KnownScrew[] = METRIC_WOOD_SCREWS.map((screw) => ({
  size: { diameter: mm(screw.diameter) },
  name: `${screw.diameter} mm`,
  shank: mm(screw.diameter),
  head: mm(screw.head),
  headDepth: depthOf(screw.head, screw.diameter, METRIC_HEAD_ANGLE),
  clearance: inMillimetres(metricClearance(screw)),
  pilots: {
    softwood: inMillimetres(metricPilot(screw, 'softwood')),
    hardwood: inMillimetres(metricPilot(screw, 'hardwood')),
  },
  lengths: METRIC_SCREW_LENGTHS.map(mm),
}))

/** Gauges and diameters [mm] that may be asked for. */
export const SCREW_GAUGES: readonly number[] = BY_GAUGE.flatMap(({ size }) => ('gauge' in size ? [size.gauge] : []))
export const SCREW_DIAMETERS: readonly number[] = METRIC_WOOD_SCREWS.map(({ diameter }) => diameter)

/** The name of the screw that was asked for. */
export const requestedScrew = (request: MakingInput['screws']): string | undefined =>
  request?.gauge === undefined && request?.metricDiameter === undefined
    ? undefined
    : screwsToChoose(request, 'mm')[0]?.name

/** The screws to choose from, the thinnest first: the one that was asked for, else all that are sold in these units. */
export function screwsToChoose(request: MakingInput['screws'], units: Units): readonly KnownScrew[] {
  if (request?.gauge !== undefined)
    return BY_GAUGE.filter(({ size }) => 'gauge' in size && size.gauge === request.gauge)
  if (request?.metricDiameter !== undefined)
    return BY_DIAMETER.filter(({ size }) => 'diameter' in size && size.diameter === request.metricDiameter)
  return units === 'in' ? BY_GAUGE : BY_DIAMETER
}
