import type { CagedBearing, RollerBearing, ThrustBearing } from '#shared/bearing/arrangements.ts'
import type { WoodInput } from '#shared/bearing/making-input.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { segmentsOf } from '#shared/geometry/segments.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { type Allowed, type Blank, blanksOf, discBlank, ringBlank } from './blanks.ts'
import { type BoardOption, boardOptions, type GluedUp } from './boards.ts'
import { type ResolvedMaking, resolveMaking } from './defaults.ts'
import { type Nesting, nestingOf } from './nesting.ts'
import { bladesFor, type EntryHole, entryHole } from './sawing.ts'
import { type CheekScrews, cheekScrewsOf, type SplitRing, splitRing } from './split-ring.ts'
import { type Mandrel, mandrelFor, stubBoltFor, type Turning, turningOf } from './work-holding.ts'

/** Two rings, with whatever else is turned for them. */
export interface StockedRings extends RingPair {
  readonly cheeks?: RollerBearing['cheeks']
  readonly cage?: CagedBearing['cage']
}

/** A ring from the board to the lathe. */
export interface RingStock {
  readonly blank: Blank
  /** Glued face to face, of the first of the boards. */
  readonly layers: number
  /** The part of its thickness that comes off each side. */
  readonly sideAllowance: Mm
  /** The least planing first. */
  readonly boards: readonly BoardOption[]
  readonly blades: readonly string[]
  readonly turning: Turning
  readonly segments?: GluedUp & {
    /** In all, in every half, layer and board across. */
    readonly pieces: number
    /** Thickness of a layer: of one piece of the ring, of as many layers as the first of the boards takes. */
    readonly layer: Mm
    /** Length of the strips that all pieces of the ring come from, for as many layers as the first of the boards has. */
    readonly stockLength: Mm
  }
}

export interface Stock {
  readonly resolved: ResolvedMaking
  readonly outerRing: RingStock
  readonly innerRing: RingStock
  readonly cheeks?: RingStock
  readonly cage?: RingStock
  /** Where a core comes out of the outer ring: one of segments has its hole. */
  readonly nesting?: Nesting
  /** Whether a core comes out of the outer ring in one piece: it has room for a blade's hole. */
  readonly hasCore: boolean
  /** Where a saw cuts the core out. */
  readonly entryHole?: EntryHole
  readonly split?: SplitRing
  readonly cheekScrews?: CheekScrews
  readonly mandrel?: Mandrel
}

/** The same of two plates. */
export interface PlateStock {
  readonly resolved: ResolvedMaking
  readonly plates: RingStock
  readonly mandrel?: Mandrel
}

/** The stock of a bearing: boards, blanks, saw cuts, screws of a split ring, and work holding. */
export function stockOf(bearing: StockedRings): Stock {
  const { cheeks, cage, landGap } = bearing
  const { units, making = {} } = bearing.resolved.input
  const resolved = resolveMaking(making, units)
  const allowed: Allowed = { stock: resolved, film: bearing.resolved }
  const { woods = {} } = resolved
  const sawn = blanksOf(bearing, allowed)
  const blanks = { ...sawn, outerRing: withItsHole(sawn.outerRing, woods.outerRing) }
  const hole = entryHole(blanks.outerRing, blanks.innerRing, resolved)
  const split = splitRing(bearing, resolved)
  const cheekScrews = cheekScrewsOf(bearing, resolved)
  const mandrel = mandrelFor(bearing.innerRing.boreDiameter, units)
  const disc = (circle: Mm, hole: Mm, thickness: Mm): RingStock =>
    ringStock(discBlank(circle, hole, thickness, allowed), resolved, units)
  return {
    resolved,
    outerRing: ringStock(blanks.outerRing, resolved, units, woods.outerRing),
    innerRing: ringStock(blanks.innerRing, resolved, units, woods.innerRing),
    ...(cheeks && { cheeks: disc(cheeks.outsideDiameter, cheeks.holeDiameter, cheeks.thickness) }),
    ...(cage && {
      cage: ringStock(
        withItsHole(ringBlank(cage.outsideDiameter, cage.boreDiameter, cage.width, cage.pieces, allowed), woods.cage),
        resolved,
        units,
        woods.cage,
      ),
    }),
    ...(woods.outerRing?.segments === undefined && {
      nesting: nestingOf(blanks.outerRing, blanks.innerRing, landGap, resolved),
    }),
    hasCore: hole !== undefined,
    ...(hole === undefined || resolved.method !== 'saw-and-lathe' ? {} : { entryHole: hole }),
    ...(split === undefined ? {} : { split }),
    ...(cheekScrews === undefined ? {} : { cheekScrews }),
    ...(mandrel === undefined ? {} : { mandrel }),
  }
}

/** The same of a turntable: neither is there a ring to nest in the other, nor one that comes apart. */
export function plateStockOf({ plate, resolved: bearing }: ThrustBearing): PlateStock {
  const { units, making = {} } = bearing.input
  const resolved = resolveMaking(making, units)
  const mandrel = stubBoltFor(plate.boreDiameter, units)
  const { outsideDiameter, boreDiameter, thickness } = plate
  const blank = discBlank(outsideDiameter, boreDiameter, thickness, { stock: resolved, film: bearing })
  return {
    resolved,
    plates: ringStock(blank, resolved, units, resolved.woods?.plates),
    ...(mandrel === undefined ? {} : { mandrel }),
  }
}

/** A ring glued up of segments has its hole from the start: nothing is sawn out of it. */
function withItsHole(blank: Blank, wood: WoodInput | undefined): Blank {
  const { roughHole: _, ...hollow } = blank
  return wood?.segments === undefined ? blank : hollow
}

/** @param wood of the part, as a resolved plan has it */
function ringStock(blank: Blank, stock: ResolvedMaking, units: Units, wood: WoodInput | undefined = {}): RingStock {
  const { segments } = wood
  const glued = segments === undefined ? undefined : gluedUp(blank, segments.count, stock)
  const boards = boardOptions(blank, stock, units, glued)
  return {
    blank,
    layers: itemAt(boards, 0).layers,
    sideAllowance: stock.allowances.side,
    boards,
    blades: bladesFor(blank.roughCircle),
    turning: turningOf(blank, stock),
    ...(glued === undefined ? {} : { segments: cutFrom(itemAt(boards, 0), blank, glued) }),
  }
}

const cutFrom = ({ layers, across, length }: BoardOption, { pieces, thickness }: Blank, glued: GluedUp) => ({
  ...glued,
  layer: mm(thickness / layers),
  pieces: pieces * layers * across * glued.count,
  stockLength: length,
})

/** The rough ring must lie in the glued-up one: so the lathe finds its allowance all round, in a drilled bore too. */
function gluedUp(blank: Blank, count: number, { allowances: { turning } }: ResolvedMaking): GluedUp {
  const hole = Math.max(0, blank.cutHole - 2 * turning)
  return { count, ...segmentsOf({ outerRadius: mm(blank.roughCircle / 2), innerRadius: mm(hole / 2), count }) }
}
