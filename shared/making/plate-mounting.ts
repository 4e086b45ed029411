import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { cutTo } from '#shared/bearing/dimensions.ts'
import type { MakingInput } from '#shared/bearing/making-input.ts'
import type { PinHold, PlateHold } from '#shared/bearing/mounting-input.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { stepDown, stepUp } from '#shared/units/step.ts'
import { type MoistureRange, unstatedMoisture } from '#shared/wood/unstated.ts'
import { resolveMaking } from './defaults.ts'
import {
  acrossOf,
  hasOneGrain,
  inShaft,
  LEAST_WOOD,
  type MountingFault,
  misfits,
  playWith,
  ringAt,
  type SeatPlay,
  usualMaterial,
  WIDER,
} from './mounting.ts'
import { type CheekScrews, screwsThrough } from './split-ring.ts'
import { requestedSize } from './whole-plan.ts'

/*
 * A turntable between two boards: a pin or a bolt through the middle, and what holds each plate to its board. The balls centre
 * the upper plate; the pin only keeps it from being pushed off, and must not touch it. All sizes are common practice, no source.
 */

/** The pin in the bore of the lower plate, and the hole round it in the upper one. */
export interface PinSeat {
  readonly hold: PinHold
  readonly material: NonNullable<NonNullable<NonNullable<MakingInput['mounting']>['shaft']>['material']>
  /** Of a pin of wood, where it is stated. */
  readonly species?: string
  readonly shaftDiameter: Mm
  /** The bore of the lower plate, as it is cut before any finish, and the one that this pin asks for. */
  readonly seatDiameter: Mm
  readonly boreNeeded: Mm
  readonly play: SeatPlay
  readonly upperHole: Mm
  readonly upperPlay: SeatPlay
  readonly length: Mm
  /** From the hole of the upper plate to its groove, and the least of it. */
  readonly wood: Mm
  readonly leastWood: Mm
}

/** The boards below and above. */
export interface BoardSeats {
  readonly hold: PlateHold
  readonly thickness: Mm
  /** Whether the plates have one grain, to lie along that of the boards. */
  readonly hasGrain: boolean
}

export interface PlateMounting {
  readonly pin: PinSeat
  readonly boards: BoardSeats
  /** Through each plate into its board, heads in the face with the groove. */
  readonly screws?: CheekScrews
}

/** How much wider than the pin the upper hole is at the least, all year. */
const CLEARANCE: Readonly<Record<Units, Mm>> = { in: inches(1 / 32), mm: mm(1) }
/** Drills and pins come in such steps. */
const STEP: Readonly<Record<Units, Mm>> = { in: inches(1 / 32), mm: mm(0.5) }
/** And takes no more than this part of the wood from the bore to the groove. */
const OF_INNER_WALL = 1 / 2
/** The pin ends this part of a plate below the board on top. */
const SHORT = 1 / 4
/** Of a bolt: two washers and two nuts, in its diameters. */
const NUTS = 2.5

/** How a turntable is mounted, and what the moisture of a year does to its pin. */
export function plateMountingOf(bearing: ThrustBearing, moisture: MoistureRange = unstatedMoisture()): PlateMounting {
  const { input } = bearing.resolved
  const { mounting = {}, screws: screwsRequest } = input.making ?? {}
  const thickness = mounting.housing?.thickness ?? bearing.plate.thickness
  const fitting = screwsOf(bearing, thickness)
  const hold = (mounting.housing?.hold as PlateHold | undefined) ?? (fitting ? 'screwed' : 'glued')
  const isScrewed = hold === 'screwed' || screwsRequest !== undefined
  return {
    pin: pinSeat(bearing, thickness, moisture),
    boards: { hold, thickness, hasGrain: hasOneGrain(input.making?.woods?.plates) },
    ...(isScrewed && fitting && { screws: fitting }),
  }
}

function pinSeat({ plate, height, resolved }: ThrustBearing, board: Mm, moisture: MoistureRange): PinSeat {
  const { units, making = {} } = resolved.input
  const { diameter, material: stated, species, hold: shaftHold = 'glued' } = making.mounting?.shaft ?? {}
  const hold = shaftHold as PinHold
  const bore = plate.boreDiameter
  // A bolt goes through a hole of its size.
  const wider = hold === 'retained' ? 0 : WIDER[hold]
  const shaft = diameter ?? rounded(mm(Math.max(bore - wider, bore / 2)), units)
  // No nut goes on a bolt of wood.
  const material = stated ?? (hold === 'retained' ? 'steel' : usualMaterial(shaft))
  const inside = material === 'wood' ? acrossOf(species === undefined ? {} : { species }) : 0
  const playIn = (hole: number) =>
    playWith(
      inShaft(acrossOf(making.woods?.plates, ringAt(plate.boreDiameter, plate.outsideDiameter, 'inside')), inside),
      hole - shaft,
      hole,
      moisture,
    )
  const step = STEP[units]
  const clear = shaft + CLEARANCE[units]
  const closing = (hole: number) => playIn(hole).made - playIn(hole).min
  // A wider hole closes by more.
  const clearing = Math.max(bore, stepUp(mm(clear + closing(clear + closing(clear))), step))
  const upperHole = mm(Math.min(clearing, bore + 2 * OF_INNER_WALL * plate.innerWall))
  const bolt = stepUp(mm(board + height + NUTS * shaft), step)
  const pin = stepDown(mm(height - SHORT * plate.thickness), step)
  return {
    hold,
    material,
    ...(species !== undefined && { species }),
    shaftDiameter: shaft,
    seatDiameter: cutTo(bore, 'hole', resolved),
    boreNeeded: rounded(mm(shaft + wider), units),
    play: playIn(bore),
    upperHole,
    upperPlay: playIn(upperHole),
    length: mm(hold === 'retained' ? bolt : Math.max(pin, plate.thickness)),
    wood: mm(plate.innerWall - (upperHole - bore) / 2),
    leastWood: LEAST_WOOD,
  }
}

/** In the middle of the wood outside of the groove, where they hold the board best, else inside of it. */
function screwsOf({ plate, resolved }: ThrustBearing, board: Mm): CheekScrews | undefined {
  const { units, making = {} } = resolved.input
  const { wall, innerWall, outsideDiameter, boreDiameter, thickness } = plate
  const stock = resolveMaking(making, units)
  const through = (wood: Mm, circle: number) =>
    screwsThrough({ thickness, into: board, wall: wood, circle: mm(circle), isHeadSunkBeside: true }, stock, units)
  return through(wall, outsideDiameter - wall) ?? through(innerWall, boreDiameter + innerWall)
}

/** Faults of the mounting of a turntable. */
export function plateMountingFaults(
  { pin, boards, screws }: PlateMounting,
  { plate }: ThrustBearing,
): readonly MountingFault[] {
  return [
    ...misfits(pin, plate.boreDiameter),
    ...(boards.hold === 'screwed' && screws === undefined ? [{ code: 'no-plate-screws' } as const] : []),
  ]
}

/** The plan of a turntable with all that was found filled in: asked for again, it finds the same. */
export function wholePlatePlan(
  bearing: ThrustBearing,
  { pin, boards: { thickness, hold: held }, screws }: PlateMounting = plateMountingOf(bearing),
): MakingInput {
  const { making = {} } = bearing.resolved.input
  const { shaft, housing } = making.mounting ?? {}
  const { shaftDiameter: diameter, material, hold } = pin
  return {
    ...making,
    ...(screws && { screws: { count: screws.count, ...requestedSize(screws) } }),
    mounting: { shaft: { ...shaft, diameter, material, hold }, housing: { ...housing, thickness, hold: held } },
  }
}
