import type { RingName } from '#shared/bearing/refusal.ts'
import { type RingPair, shoulder } from '#shared/bearing/ring-pair.ts'
import { screwWall } from '#shared/bearing/screw-wall.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { roundedDown, roundedUp } from '#shared/units/rounded.ts'
import type { ResolvedMaking } from './defaults.ts'
import { type Drill, type KnownScrew, screwsToChoose } from './screws.ts'

/** The ring that comes apart at mid groove, and what holds its halves together. */
export interface SplitRing {
  readonly ring: RingName
  /** From one side of the ring: the plane through the middle of the groove. */
  readonly partingPlane: Mm
  /** Diameter of the circle on which the screws stand: midway between groove bottom and bore, or outside. */
  readonly screwCircle: Mm
  /** Wood at the parting plane, from groove bottom to bore or outside. */
  readonly wall: Mm
  readonly screws?: Screws
  readonly dowels?: Dowels
  /** Why there are no screws, even of the gauge asked for, or why there are too many. */
  readonly faults: readonly ScrewFault[]
}

/** Wood screws, and the holes for them. */
interface ScrewHoles {
  readonly size: KnownScrew['size']
  /** As it is asked for: `No. 8`, `4 mm`. */
  readonly name: string
  readonly count: number
  readonly length: Mm
  readonly shankDiameter: Mm
  readonly headDiameter: Mm
  /** In the piece with the heads, and in the other. */
  readonly clearance: Drill
  readonly pilot: Drill
  readonly pilotDepth: Mm
  readonly countersinkDepth: Mm
}

export interface Screws extends ScrewHoles {
  /** Wood each side of the thread at the parting plane. */
  readonly besideThread: Mm
  /** Wood beside the head, away from the groove (to the bore or the outside) and towards it. */
  readonly besideHead: Mm
  readonly besideHeadTowardsGroove: Mm
  /** How deep a hole as wide as the head is bored before the countersink: 0 where the head lies flush with the side. */
  readonly counterboreDepth: Mm
  /** Straight from one screw to the next. */
  readonly spacing: Mm
}

export interface Dowels {
  readonly count: number
  readonly diameter: Mm
  readonly length: Mm
  readonly depthEachHalf: Mm
  readonly besideDowel: Mm
}

/** The screws that hold each cheek to the outer ring, on their circle in the middle of its wood. */
export interface CheekScrews extends ScrewHoles {
  readonly screwCircle: Mm
  readonly faults: readonly ScrewFault[]
}

export type ScrewFault =
  /** The wall is too thin for the screw; with a bore of `bore`, or an outside of `outside`, it is not. */
  | {
      readonly code: 'wall-too-thin'
      readonly screw: string
      readonly wall: Mm
      readonly least: Mm
      readonly bore?: Mm
      readonly outside?: Mm
    }
  /** No length that is sold both stays inside and holds; in a ring of the width `clearing`, a wider one, one does. */
  | { readonly code: 'no-screw-length'; readonly screw: string; readonly width: Mm; readonly clearing?: Mm }
  | { readonly code: 'screws-crowd'; readonly count: number; readonly most: number }

/**
 * Common practice, no source: three shanks of thread in the far half, the head sunk for it down to a quarter of the width; the
 * point stays 1/16 in or 1.5 mm inside; two heads from screw to screw.
 */
const HOLD = 3
const POINT_ROOM: Readonly<Record<Units, Mm>> = { in: inches(1 / 16), mm: mm(1.5) }
const SPACING_IN_HEADS = 2
/** Four screws hold a small ring; a larger one takes more, so that the joint stays shut between them. */
const COUNTS = [
  { upTo: 80, count: 4 },
  { upTo: 200, count: 6 },
  { upTo: Number.POSITIVE_INFINITY, count: 8 },
] as const
const countRound = (circle: Mm): number => COUNTS.find(({ upTo }) => circle <= upTo)?.count ?? 8

/** Radii of the wood between which the screws stand, at the parting plane, and the land on the other side of it. */
interface Wood {
  readonly ring: RingName
  readonly inside: number
  readonly outside: number
  readonly land: number
  readonly width: Mm
  readonly units: Units
  /** From a side of the ring to where the groove begins. */
  readonly shoulder: number
}

/** @returns undefined where no ring comes apart */
export function splitRing(bearing: RingPair, stock: ResolvedMaking): SplitRing | undefined {
  const wood = woodOf(bearing)
  if (wood === undefined) return undefined
  const wall = mm(wood.outside - wood.inside)
  const circle = mm(wood.inside + wood.outside)
  const candidates = screwsToChoose(stock.screws, wood.units).toReversed()
  const [chosen] = candidates.flatMap((screw) => {
    const reach = reachOf(screw, wood)
    return reach === undefined || faultsOf(screw, wood).length > 0 ? [] : [{ screw, reach }]
  })
  const [smallest] = candidates.slice(-1)
  const count = stock.screws?.count ?? countRound(circle)
  const screws = chosen && screwsOf(holesOf(chosen.screw, count, stock), chosen.reach, wood)
  const dowels = dowelsOf(wood, circle, count)
  return {
    ring: wood.ring,
    partingPlane: mm(wood.width / 2),
    screwCircle: circle,
    wall,
    ...(screws === undefined ? {} : { screws }),
    ...(dowels === undefined ? {} : { dowels }),
    faults: screws ? crowding(screws, circle) : smallest ? faultsOf(smallest, wood) : [],
  }
}

function woodOf(bearing: RingPair): Wood | undefined {
  const { innerRing: inner, outerRing: outer, resolved } = bearing
  switch (resolved.split) {
    case 'inner-ring':
      return woodBetween(bearing, 'innerRing', inner.boreDiameter, inner.grooveBottomDiameter)
    case 'outer-ring':
      return woodBetween(bearing, 'outerRing', outer.grooveBottomDiameter, outer.outsideDiameter)
    case 'none':
      return undefined
    default:
      return resolved.split satisfies never
  }
}

const woodBetween = (bearing: RingPair, ring: RingName, inside: Mm, outside: Mm): Wood => ({
  ring,
  inside: inside / 2,
  outside: outside / 2,
  land: bearing[ring].landDiameter / 2,
  width: bearing.resolved.width,
  units: bearing.resolved.input.units,
  shoulder: shoulder(bearing, ring),
})

const WITHIN = 1e-9

function faultsOf(screw: KnownScrew, wood: Wood): readonly ScrewFault[] {
  const { units } = wood
  const wall = mm(wood.outside - wood.inside)
  const least = screwWall(screw)
  const faults: ScrewFault[] = []
  if (wall < least - WITHIN) {
    const cleared =
      wood.ring === 'outerRing'
        ? { outside: roundedUp(mm(2 * (wood.inside + least)), units) }
        : wood.outside > least
          ? { bore: roundedDown(mm(2 * (wood.outside - least)), units) }
          : {}
    faults.push({ code: 'wall-too-thin', screw: screw.name, wall, least: roundedUp(least, units), ...cleared })
  }
  if (reachOf(screw, wood) === undefined) {
    const clearing = clearingWidth(screw, wood)
    const cleared = clearing === undefined ? {} : { clearing }
    faults.push({ code: 'no-screw-length', screw: screw.name, width: wood.width, ...cleared })
  }
  return faults
}

/** A screw that is sold, and how deep its head is sunk for it to hold. */
interface Reach {
  readonly length: Mm
  readonly sunk: Mm
}

/** The longest screw that is sold whose point stays inside, its head sunk until it holds, if wood enough is left below. */
function reachOf(screw: KnownScrew, { width, units }: Pick<Wood, 'width' | 'units'>): Reach | undefined {
  const room = POINT_ROOM[units]
  const [length] = screw.lengths.filter((sold) => sold <= width - room + WITHIN).slice(-1)
  if (length === undefined) return undefined
  const sunk = Math.max(0, width / 2 + HOLD * screw.shank - length)
  const isInside = length + sunk <= width - room + WITHIN
  const leavesWood = sunk === 0 || sunk + screw.headDepth <= width / 4
  return isInside && leavesWood ? { length, sunk: mm(sunk) } : undefined
}

/** The next wider ring in which a screw that is sold holds with its head flush: as wide as it is long, with room for its point. */
function clearingWidth(
  { shank, lengths }: KnownScrew,
  { width, units }: Pick<Wood, 'width' | 'units'>,
): Mm | undefined {
  const widths = lengths
    .map((length) => ({ length, wider: Math.max(width, length + POINT_ROOM[units]) }))
    .filter(({ length, wider }) => length - wider / 2 >= HOLD * shank)
    .map(({ wider }) => wider)
  return widths.length === 0 ? undefined : mm(Math.min(...widths))
}

const holesOf = (screw: KnownScrew, count: number, { lumber }: ResolvedMaking) => ({
  size: screw.size,
  name: screw.name,
  count,
  shankDiameter: screw.shank,
  headDiameter: screw.head,
  clearance: screw.clearance,
  pilot: screw.pilots[lumber],
  countersinkDepth: screw.headDepth,
})

/**
 * The screws that hold each cheek to the outer ring, in the middle of its wood. Those of one cheek stand between those of the other.
 *
 * @returns undefined where there are no cheeks, or no such screw
 */
export function cheekScrewsOf(
  {
    cheeks,
    outerRing,
    resolved,
  }: Pick<RingPair, 'outerRing' | 'resolved'> & { readonly cheeks?: { readonly thickness: Mm } },
  stock: ResolvedMaking,
): CheekScrews | undefined {
  if (cheeks === undefined) return undefined
  const { width: into, wall, grooveBottomDiameter, outsideDiameter } = outerRing
  const circle = mm((grooveBottomDiameter + outsideDiameter) / 2)
  return screwsThrough({ thickness: cheeks.thickness, into, wall, circle }, stock, resolved.input.units)
}

/** A disc that is screwed to what lies under it. */
interface ScrewedOn {
  readonly thickness: Mm
  /** Thickness of what is under it. */
  readonly into: Mm
  /** Width of the wood that takes the screws, and the circle in its middle. */
  readonly wall: Mm
  readonly circle: Mm
  /** Whether the heads have no more wood beside them than that. */
  readonly isHeadSunkBeside?: boolean
}

/**
 * The thickest screw that leaves half of the disc under its head and as much wood as its shank is thick on both sides of it, of
 * the shortest length that holds in what is under it and stays inside.
 */
export function screwsThrough(
  { thickness, into, wall, circle, isHeadSunkBeside = false }: ScrewedOn,
  stock: ResolvedMaking,
  units: Units,
): CheekScrews | undefined {
  const fitting = screwsToChoose(stock.screws, units).flatMap((screw) => {
    const [length] = screw.lengths.filter((sold) => sold - thickness >= HOLD * screw.shank - WITHIN)
    return length !== undefined &&
      length - thickness <= into - POINT_ROOM[units] + WITHIN &&
      screw.headDepth <= thickness / 2 &&
      wall >= (isHeadSunkBeside ? screwWall(screw) : 3 * screw.shank)
      ? [{ screw, length }]
      : []
  })
  const [chosen] = fitting.slice(-1)
  if (chosen === undefined) return undefined
  const { screw, length } = chosen
  const holes = holesOf(screw, stock.screws?.count ?? countRound(circle), stock)
  return {
    ...holes,
    screwCircle: circle,
    length,
    pilotDepth: mm(length - thickness),
    faults: crowding({ ...holes, spacing: spacingOf(circle, holes.count) }, circle),
  }
}

function screwsOf(holes: ReturnType<typeof holesOf>, { length, sunk }: Reach, wood: Wood): Screws {
  const { shankDiameter, headDiameter, count } = holes
  const middle = (wood.inside + wood.outside) / 2
  const half = (wood.outside - wood.inside) / 2
  // A head that ends above the groove has the whole side of the ring beside it; a deeper one only the wall.
  const towardsLand = sunk + holes.countersinkDepth <= wood.shoulder ? Math.abs(wood.land - middle) : half
  return {
    ...holes,
    length,
    besideThread: mm(half - shankDiameter / 2),
    besideHead: mm(half - headDiameter / 2),
    besideHeadTowardsGroove: mm(towardsLand - headDiameter / 2),
    pilotDepth: mm(length + sunk - wood.width / 2),
    counterboreDepth: sunk,
    spacing: spacingOf(mm(2 * middle), count),
  }
}

const spacingOf = (circle: Mm, count: number): Mm => mm(circle * Math.sin(Math.PI / count))

type Spaced = Pick<Screws, 'count' | 'spacing' | 'headDiameter'>

function crowding({ count, spacing, headDiameter }: Spaced, circle: Mm): readonly ScrewFault[] {
  const least = SPACING_IN_HEADS * headDiameter
  if (spacing >= least) return []
  return [{ code: 'screws-crowd', count, most: mostRound(circle, least) }]
}

/** So many stand no nearer than that to each other. */
const mostRound = (circle: Mm, least: number): number =>
  least < circle ? Math.floor(Math.PI / Math.asin(least / circle)) : 1

/** Dowels that are sold: common practice, no source. */
const DOWELS: Readonly<Record<Units, readonly Mm[]>> = {
  in: [1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2].map(inches),
  mm: [3, 4, 5, 6, 8, 10, 12].map(mm),
}
/** Wood left at the bottom of a dowel's hole, and in all for the glue: common practice, no source. */
const DOWEL_FLOOR = mm(3)
const GLUE_ROOM = mm(1)

/** The thickest dowel with as much wood beside it as it is thick itself; of more than usual as many as leave that between two. */
function dowelsOf({ inside, outside, width, units }: Wood, circle: Mm, count: number): Dowels | undefined {
  const wall = outside - inside
  const depth = width / 2 - DOWEL_FLOOR
  const [diameter] = DOWELS[units].filter((dowel) => 3 * dowel <= wall && dowel <= depth).slice(-1)
  if (diameter === undefined) return undefined
  return {
    count: Math.min(count, Math.max(countRound(circle), mostRound(circle, 2 * diameter))),
    diameter,
    length: mm(2 * depth - GLUE_ROOM),
    depthEachHalf: mm(depth),
    besideDowel: mm((wall - diameter) / 2),
  }
}
