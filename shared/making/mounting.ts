import { cutTo } from '#shared/bearing/dimensions.ts'
import type { WoodInput } from '#shared/bearing/making-input.ts'
import { type Hold, type MountingInput, turningRing } from '#shared/bearing/mounting-input.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { wholeWood } from '#shared/bearing/whole-year.ts'
import { segmentWood } from '#shared/data/segment-woods.ts'
import { isSpecies } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT } from '#shared/data/wood-movement.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import { stepDown } from '#shared/units/step.ts'
import { segmentedMovement } from '#shared/wood/segmented-movement.ts'
import { type MoistureRange, UNSTATED_WOOD, unstatedMoisture } from '#shared/wood/unstated.ts'
import { boardSize } from './board-size.ts'

/*
 * The bore on its shaft and the outside in its housing: sizes to cut, what holds them, and what the season does. All fits and
 * least sizes are common practice, no source.
 */

/** The play of a seat, in diameter, below 0 where it is tight: as it is cut, and the ends of it through the year. */
export interface SeatPlay {
  readonly made: Mm
  readonly min: Mm
  readonly max: Mm
}

/** A pin, a key or screws that hold a seat. */
export interface Holder {
  readonly kind: 'pin' | 'key' | 'screws' | 'retaining-ring'
  readonly count: number
  /** Of a pin or of the shank of a screw; the width of a key. */
  readonly diameter: Mm
  /** Of the circle on which they stand; absent of what goes through the shaft. */
  readonly circle?: Mm
  /** Along a pin or a screw; along the axis of a key or a retaining ring. */
  readonly length: Mm
}

interface Seat {
  readonly hold: Hold
  /** The hole to cut, before any finish. */
  readonly seatDiameter: Mm
  readonly play: SeatPlay
  readonly holder?: Holder
}

export interface ShaftSeat extends Seat {
  readonly shaftDiameter: Mm
  /** The bore, with any finish on it, that this shaft and this hold ask for. */
  readonly boreNeeded: Mm
  readonly material: NonNullable<NonNullable<MountingInput['shaft']>['material']>
  /** Of a shaft of wood, where it is stated. */
  readonly species?: string
  /** Wood from the bore to the groove, and the least that this hold wants. */
  readonly wood: Mm
  readonly leastWood: Mm
}

export interface HousingSeat extends Seat {
  /** Of the board, and of the seat in it. */
  readonly thickness: Mm
  readonly seatDepth: Mm
  /** Wood round the seat, at the least, and the smallest board across that leaves it. */
  readonly leastWood: Mm
  readonly leastWidth: Mm
  /** The hole behind the seat, which leaves a shoulder for the ring's wall to lie on. */
  readonly shoulderHole: Mm
  /** Whether the ring has one grain, to lie along that of the board. */
  readonly hasGrain: boolean
  /** The board's wood, where it is stated. */
  readonly species?: string
}

/** What turns an outer ring: a handle in its wall, or a hub screwed to its side. */
export interface DriveSeat {
  readonly kind: NonNullable<MountingInput['drive']>
  readonly circle: Mm
  readonly count: number
  /** Of the handle's or each screw's hole. Absent where the wall is too thin for any. */
  readonly holeDiameter?: Mm
  readonly depth: Mm
}

export interface Mounting {
  readonly turns: NonNullable<MountingInput['turns']>
  readonly shaft: ShaftSeat
  readonly housing?: HousingSeat
  readonly drive?: DriveSeat
}

/** How much wider than what sits in it a hole is cut [mm]: a hole of the same size slides on, a press fit holds by its squeeze. */
export const WIDER: Readonly<Record<Hold, number>> = {
  glued: 0,
  pressed: -0.1,
  keyed: 0,
  pinned: 0,
  screwed: 0,
  retained: 0.1,
}

const USUAL_HOLD: Hold = 'glued'
/** A thicker bar of steel weighs kilograms, and wood is turned to fit instead. Common practice, no source. */
const THICKEST_BAR = mm(50)
export const usualMaterial = (shaft: Mm): NonNullable<NonNullable<MountingInput['shaft']>['material']> =>
  shaft > THICKEST_BAR ? 'wood' : 'steel'
/** No pin or screw is thinner or thicker, nor thicker than a fourth of the shaft or a third of the wood that it goes through [mm]. */
const THINNEST_PIN = 2
const THICKEST_PIN = 10
const OF_SHAFT = 1 / 4
const OF_WOOD = 1 / 3
/** Pins and drills are sold by such steps. */
const PIN_STEP: Readonly<Record<Units, Mm>> = { in: inches(1 / 32), mm: mm(0.5) }
const pin = (most: number, units: Units): Mm => mm(Math.max(THINNEST_PIN, stepDown(most, PIN_STEP[units])))

/** Least wood round a seat [mm], and as a share of what sits in it: a press fit splits less. */
export const LEAST_WOOD = mm(3)
const LEAST_SHARE: Readonly<Record<Hold, number>> = {
  glued: 1 / 8,
  pressed: 1 / 4,
  keyed: 1 / 3,
  pinned: 1 / 4,
  screwed: 1 / 4,
  retained: 1 / 8,
}
/** Round a housing's seat there is at least as much wood as in the ring's own wall, and this [mm]. */
const LEAST_ROUND = 10
const LEAST_SHOULDER = 3

/** A bore this much off what its shaft asks for is as good [mm]. */
const OFF_BORE = 0.05

/** Why a mounting may fail. */
export type MountingFault =
  /** The bore does not go with the shaft: `needed` does. */
  | { readonly code: 'shaft-does-not-fit'; readonly shaft: Mm; readonly bore: Mm; readonly needed: Mm }
  | { readonly code: 'wood-round-shaft-thin'; readonly wood: Mm; readonly least: Mm }
  /** The housing's board leaves no seat as wide as the ring with a shoulder behind it. */
  | { readonly code: 'housing-thin'; readonly thickness: Mm; readonly least: Mm }
  | { readonly code: 'no-room-for-handle'; readonly wall: Mm; readonly least: Mm }
  /** No screw through a plate both clears its groove and holds in its board. */
  | { readonly code: 'no-plate-screws' }

/** What is wrong with a mounting. */
export function mountingFaults(
  { shaft, housing, drive }: Mounting,
  { outerRing, innerRing, resolved }: RingPair,
): readonly MountingFault[] {
  const faults: MountingFault[] = [...misfits(shaft, innerRing.boreDiameter)]
  const least = mm(resolved.width / 2)
  if (housing !== undefined && housing.thickness < least)
    faults.push({ code: 'housing-thin', thickness: housing.thickness, least })
  if (drive !== undefined && drive.holeDiameter === undefined)
    faults.push({ code: 'no-room-for-handle', wall: outerRing.wall, least: mm(THINNEST_PIN / OF_WOOD) })
  return faults
}

type Fitted = Pick<ShaftSeat, 'shaftDiameter' | 'boreNeeded' | 'wood' | 'leastWood'>

/** What is wrong between a shaft and its bore. */
export function misfits({ shaftDiameter, boreNeeded, wood, leastWood }: Fitted, bore: Mm): readonly MountingFault[] {
  const fits = Math.abs(bore - boreNeeded) <= OFF_BORE
  return [
    ...(fits ? [] : [{ code: 'shaft-does-not-fit', shaft: shaftDiameter, bore, needed: boreNeeded } as const]),
    ...(wood >= leastWood ? [] : [{ code: 'wood-round-shaft-thin', wood, least: leastWood } as const]),
  ]
}

/** How a bearing of two rings is mounted, and what the moisture of a year does to its seats. */
export function mountingOf(bearing: RingPair, moisture: MoistureRange = unstatedMoisture()): Mounting {
  const { units, making = {} } = bearing.resolved.input
  const { mounting = {}, woods = {} } = making
  const turns = turningRing(mounting)
  const { innerRing, outerRing } = bearing
  const bored = acrossOf(woods.innerRing, ringAt(innerRing.boreDiameter, innerRing.landDiameter, 'inside'))
  const shaft = shaftSeat(bearing, mounting.shaft ?? {}, bored, moisture)
  if (turns === 'outer-ring') return { turns, shaft, drive: driveSeat(bearing, mounting.drive ?? 'crank') }
  const { housing = {} } = mounting
  const ring = acrossOf(woods.outerRing, ringAt(outerRing.landDiameter, outerRing.outsideDiameter, 'outside'))
  const hasGrain = hasOneGrain(woods.outerRing)
  // A board of the same wood lies with its grain along that of the ring, cut as the ring is.
  const { species, construction } = woods.outerRing ?? {}
  const alike = { ...(species && { species }), ...(hasGrain && construction && { construction }) }
  const board = acrossOf(housing.species === undefined ? alike : { species: housing.species })
  const seat = housingSeat(bearing, housing, { ring, board }, moisture)
  return {
    turns,
    shaft,
    housing: {
      ...seat,
      ...(housing.species && { species: housing.species }),
      hasGrain,
      seatDiameter: rounded(seat.seatDiameter, units),
    },
  }
}

/** A cylinder of a part: its hole, or its outside. */
interface Cylinder {
  readonly part: { readonly innerRadius: Mm; readonly outerRadius: Mm }
  readonly at: 'inside' | 'outside'
}

/**
 * Change across the grain per % of moisture, per size: the larger of both ways where the board is flat-sawn. A ring of
 * segments changes by what its hoop lets its cylinder change, all round alike.
 */
export function acrossOf(stated: WoodInput = {}, cylinder?: Cylinder): number {
  const { species, construction = 'flat-sawn', segments } = wholeWood(stated)
  if (construction === 'cross-laminated-ply') return ALONG_THE_GRAIN.perPercent
  const known = species !== undefined && isSpecies(species) && MOVEMENT[species] !== undefined ? species : UNSTATED_WOOD
  const face = construction.endsWith('quarter-sawn') ? 'radial' : 'tangential'
  const across = MOVEMENT[known]?.[face] ?? ALONG_THE_GRAIN.perPercent
  if (segments === undefined || cylinder === undefined) return across
  const { part, at } = cylinder
  const move = segmentedMovement({ ...part, count: segments.count, wood: segmentWood(known, face).plane })
  return move({ along: ALONG_THE_GRAIN.perPercent, across })[at].mean
}

/** Whether a part comes from a board and has one grain, to be laid along that of another. */
export const hasOneGrain = (stated: WoodInput = {}): boolean => {
  const { construction, segments } = wholeWood(stated)
  return segments === undefined && construction !== 'cross-laminated-ply'
}

export const ringAt = (inside: Mm, outside: Mm, at: Cylinder['at']): Cylinder => ({
  part: { innerRadius: mm(inside / 2), outerRadius: mm(outside / 2) },
  at,
})

/** A bore in a board moves along its grain and across it; a shaft of wood moves across its own, the other way more or less. */
export const inShaft = (ring: number, shaft: number): readonly number[] =>
  [ring, ALONG_THE_GRAIN.perPercent].flatMap((bore) => [
    bore - shaft,
    bore - Math.min(shaft, ALONG_THE_GRAIN.perPercent),
  ])

/**
 * The play of a seat through the year.
 *
 * @param rates by how much more the hole changes than what sits in it, per size and per % of moisture, on each diameter that counts
 */
export function playWith(
  rates: readonly number[],
  made: number,
  diameter: number,
  { today, min, max }: MoistureRange,
): SeatPlay {
  const changes = [min - today, max - today].flatMap((change) => rates.map((rate) => rate * change * diameter))
  return { made: mm(made), min: mm(made + Math.min(0, ...changes)), max: mm(made + Math.max(0, ...changes)) }
}

function shaftSeat(
  { innerRing, resolved }: RingPair,
  { diameter, material: stated, species, hold = USUAL_HOLD }: NonNullable<MountingInput['shaft']>,
  ring: number,
  moisture: MoistureRange,
): ShaftSeat {
  const { units } = resolved.input
  // The bore is the design's: a shaft that is not stated is made to fit it.
  const seat = innerRing.boreDiameter
  const shaft = diameter ?? rounded(mm(Math.max(seat - WIDER[hold], seat / 2)), units)
  const material = stated ?? usualMaterial(shaft)
  const inside = material === 'wood' ? acrossOf(species === undefined ? {} : { species }) : 0
  const wood = innerRing.wall
  const holder = shaftHolder(hold, shaft, wood, resolved)
  return {
    hold,
    material,
    ...(species !== undefined && { species }),
    shaftDiameter: shaft,
    seatDiameter: cutTo(seat, 'hole', resolved),
    play: playWith(inShaft(ring, inside), seat - shaft, seat, moisture),
    boreNeeded: rounded(mm(shaft + WIDER[hold]), units),
    wood,
    leastWood: mm(Math.max(LEAST_WOOD, LEAST_SHARE[hold] * shaft)),
    ...(holder === undefined ? {} : { holder }),
  }
}

/** A pin through ring and shaft beside the groove, a key as wide as a fourth of the shaft, or a ring of wood at the side. */
function shaftHolder(
  hold: Hold,
  shaft: Mm,
  wood: Mm,
  { width, input: { units } }: RingPair['resolved'],
): Holder | undefined {
  const most = Math.min(OF_SHAFT * shaft, OF_WOOD * wood)
  const across = pin(Math.min(most, THICKEST_PIN), units)
  switch (hold) {
    case 'keyed':
      return { kind: 'key', count: 1, diameter: pin(most, units), length: width }
    case 'pinned':
      return { kind: 'pin', count: 1, diameter: across, length: mm(shaft + 2 * wood) }
    case 'screwed':
      return { kind: 'screws', count: 1, diameter: across, length: mm(wood + across) }
    case 'retained':
      return {
        kind: 'retaining-ring',
        count: 2,
        diameter: mm(shaft + 2 * wood),
        length: mm(Math.max(LEAST_SHOULDER, width / 4)),
      }
    default:
      return undefined
  }
}

function housingSeat(
  { outerRing, resolved }: RingPair,
  { thickness = resolved.width, hold = USUAL_HOLD }: NonNullable<MountingInput['housing']>,
  { ring, board }: { readonly ring: number; readonly board: number },
  moisture: MoistureRange,
): Omit<HousingSeat, 'hasGrain' | 'species'> {
  const { outsideDiameter, wall, grooveBottomDiameter } = outerRing
  const { units } = resolved.input
  const leastWood = Math.max(LEAST_ROUND, wall)
  // A seat with a shoulder behind it where the board is thick enough for one, else through the board.
  const deep = thickness >= resolved.width + LEAST_SHOULDER ? resolved.width : thickness
  const seat = outsideDiameter + WIDER[hold]
  // What is held by rings of wood needs one on each side where no shoulder is behind it.
  const sides = deep < thickness ? 1 : 2
  const holder = housingHolder(hold, outsideDiameter, { groove: grooveBottomDiameter, wall, sides }, resolved)
  return {
    hold,
    seatDiameter: mm(seat),
    play: playWith([board - ring, 0], WIDER[hold], seat, moisture),
    thickness,
    seatDepth: deep,
    leastWood: mm(leastWood),
    leastWidth: boardSize(seat + 2 * leastWood, units),
    shoulderHole: mm((grooveBottomDiameter + outsideDiameter) / 2),
    ...(holder === undefined ? {} : { holder }),
  }
}

const HOLDERS_ROUND = 3

/** Pins or screws at the seam, half in the ring's wall; a key; or a ring of wood over it. */
function housingHolder(
  hold: Hold,
  outside: Mm,
  { groove, wall, sides }: { readonly groove: Mm; readonly wall: Mm; readonly sides: 1 | 2 },
  { width, input: { units } }: RingPair['resolved'],
): Holder | undefined {
  const across = pin(Math.min(OF_WOOD * wall, 6), units)
  switch (hold) {
    case 'keyed':
      return { kind: 'key', count: 1, diameter: across, circle: outside, length: width }
    case 'pinned':
      return { kind: 'pin', count: HOLDERS_ROUND, diameter: across, circle: outside, length: mm(width / 2) }
    case 'screwed':
      return {
        kind: 'screws',
        count: HOLDERS_ROUND,
        diameter: across,
        circle: mm(outside + 2 * across),
        length: mm(3 * across),
      }
    case 'retained':
      return {
        kind: 'retaining-ring',
        count: sides,
        diameter: mm((groove + outside) / 2),
        length: mm(Math.max(LEAST_SHOULDER, width / 4)),
      }
    default:
      return undefined
  }
}

function driveSeat({ outerRing, resolved }: RingPair, kind: DriveSeat['kind']): DriveSeat {
  const { outsideDiameter, grooveBottomDiameter, wall } = outerRing
  const hole = OF_WOOD * wall
  return {
    kind,
    circle: mm((grooveBottomDiameter + outsideDiameter) / 2),
    count: kind === 'crank' ? 1 : HOLDERS_ROUND,
    ...(hole >= THINNEST_PIN ? { holeDiameter: pin(Math.min(hole, THICKEST_PIN), resolved.input.units) } : {}),
    depth: mm(resolved.width / 2),
  }
}
