import type { Hold } from '#shared/bearing/mounting-input.ts'
import { isSpecies, SPECIES } from '#shared/data/species.ts'
import type { DriveSeat, HousingSeat, MountingFault, ShaftSeat } from '#shared/making/mounting.ts'
import type { BoardSeats, PinSeat } from '#shared/making/plate-mounting.ts'
import type { CheekScrews } from '#shared/making/split-ring.ts'
import { hasBit } from '#shared/making/work-holding.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { boardFigure, differenceFigure, figure } from './figure.ts'
import type { Terms } from './terms.ts'
import { nameInSentence } from './wood-name.ts'

/* How a bearing is held on its shaft and in its housing. */

/** How a seat is held, in a word. */
export const HELD: Readonly<Record<Hold, string>> = {
  glued: 'glued',
  pressed: 'pressed',
  keyed: 'keyed',
  pinned: 'pinned',
  screwed: 'screwed',
  retained: 'held by rings of wood',
}

/** The wood of a shaft or a board, where it is stated. */
const ofSpecies = (species: string | undefined): string =>
  species !== undefined && isSpecies(species) ? ` (${nameInSentence(SPECIES[species].name)})` : ''

type Size = (length: Mm) => string
const sizeIn =
  (units: Units): Size =>
  (length) =>
    figure(length, units)

/** What to do about a seat that comes loose in one season: what goes through it holds it all the same. */
const WHERE_LOOSE: Readonly<Record<Hold, string>> = {
  glued: ' Only the glue holds it while it is loose: try it by hand then, and glue it again if it moves.',
  pressed: ' Nothing holds it while it is loose: glue it as well, or pin it.',
  keyed: '',
  pinned: '',
  screwed: '',
  retained: '',
}

/** The effect of the season on a seat. */
function through({ play, hold }: Pick<ShaftSeat, 'play' | 'hold'>, where: string, units: Units): string {
  const state = (length: Mm): string =>
    length < 0 ? `${differenceFigure(mm(-length), units)} tight` : `${differenceFigure(length, units)} loose`
  return play.min === play.max
    ? 'The season leaves the fit as it is.'
    : `Through the year the ring is from ${state(play.min)} to ${state(play.max)} ${where}.${play.max > 0 ? WHERE_LOOSE[hold] : ''}`
}

/** The sentence about a ring that is bored for its shaft. */
export const shaftSentence = (seat: ShaftSeat, units: Units, terms: Terms): string =>
  `Bore the ring to ${figure(seat.seatDiameter, units)}. ${onShaftSentence(seat, units, terms)}`

/** The same of a ring that has been bored. */
export function onShaftSentence(seat: ShaftSeat, units: Units, { raceway }: Terms): string {
  const size = sizeIn(units)
  const { hold, material, species, shaftDiameter, holder } = seat
  const shaft = `${material} shaft of ${size(shaftDiameter)}${ofSpecies(species)}`
  const across = holder === undefined ? '' : size(holder.diameter)
  const long = holder === undefined ? '' : size(holder.length)
  const how: Readonly<Record<ShaftSeat['hold'], string>> = {
    glued: `Glue it on the ${shaft} with epoxy: roughen the shaft, and keep glue away from the ${raceway.one}.`,
    pressed: `Press it on the ${shaft}: chamfer the end of the shaft, and press on the whole side of the ring.`,
    keyed: `Cut a keyway ${across} wide in bore and ${shaft}, half as deep in each, and fit a square key ${long} long.`,
    pinned: `Drill ${across} across through the ring beside its ${raceway.one}, clear of any screws, and through the ${shaft}, and drive in a pin ${long} long.`,
    screwed: `Drive one screw of ${across} through the wall beside the ${raceway.one}, clear of any others, into a dimple in the ${shaft}.`,
    retained: `Slide it on the ${shaft} between two rings of wood, ${across} across and ${long} thick, each pinned to the shaft.`,
  }
  return `${how[hold]} ${through(seat, 'on the shaft', units)}`
}

const alongGrain = ({ hasGrain }: { readonly hasGrain: boolean }): string =>
  hasGrain ? ', with its grain along the grain of the board' : ''

export function housingSentence(seat: HousingSeat, units: Units): string {
  const size = sizeIn(units)
  const { hold, seatDiameter, seatDepth, thickness, shoulderHole, leastWidth, species, holder } = seat
  const across = holder === undefined ? '' : size(holder.diameter)
  const long = holder === undefined ? '' : size(holder.length)
  const circle = holder?.circle === undefined ? '' : size(holder.circle)
  const how: Readonly<Record<HousingSeat['hold'], string>> = {
    glued: `Glue the ring in${alongGrain(seat)}.`,
    pressed: `Press the ring in${alongGrain(seat)}.`,
    keyed: `Cut a keyway ${across} wide across the seam, half as deep in ring and board, and fit a square key ${long} long.`,
    pinned: `Drill for ${holder?.count} pins of ${across}, ${long} deep, on the seam (a circle of ${circle}).`,
    screwed: `Hold it with ${holder?.count} screws of ${across} beside the seam, on a circle of ${circle}, and washers that reach over the wall.`,
    retained: `Screw a ring of wood over it${holder?.count === 2 ? ' on either side, each' : ','} ${long} thick, with a hole of ${across}.`,
  }
  const deep =
    seatDepth < thickness
      ? `${size(seatDepth)} deep, and then a hole of ${size(shoulderHole)} behind it`
      : 'through the board'
  return `Cut a seat of ${size(seatDiameter)} ${deep}, in a board${ofSpecies(species)} at least ${size(leastWidth)} across. ${how[hold]} ${through(seat, 'in its seat', units)}`
}

export function driveSentence({ kind, circle, count, holeDiameter, depth }: DriveSeat, units: Units): string {
  const size = sizeIn(units)
  if (holeDiameter === undefined)
    return `The wall is too thin for a hole: glue ${kind === 'crank' ? 'a handle' : 'a hub'} to the side of the outer ring.`
  return kind === 'crank'
    ? `Drill ${size(holeDiameter)} for a handle, ${size(depth)} deep, on a circle of ${size(circle)} in the side of the outer ring, clear of any screws or dowels.`
    : `Screw a hub to the side of the outer ring: ${count} holes of ${size(holeDiameter)}, ${size(depth)} deep, on a circle of ${size(circle)}, clear of any screws or dowels.`
}

/** Faults of a mounting. */
export function mountingWarning(fault: MountingFault, units: Units): string {
  const size = sizeIn(units)
  switch (fault.code) {
    case 'shaft-does-not-fit':
      return `A shaft of ${size(fault.shaft)} held this way needs a bore of ${size(fault.needed)}; the bore is ${size(fault.bore)}.`
    case 'wood-round-shaft-thin':
      return `${size(fault.wood)} of wood round the shaft is too little to hold it this way: leave ${size(fault.least)}, or hold it another way.`
    case 'housing-thin':
      return `A board of ${size(fault.thickness)} is too thin to seat the outer ring: take one of ${boardFigure(fault.least, units)} at least.`
    case 'no-room-for-handle':
      return `The wall of the outer ring, ${size(fault.wall)}, is too thin for a handle or screws: it needs ${size(fault.least)}.`
    case 'no-plate-screws':
      return 'No screw on sale both clears the groove and holds in the boards: glue the plates on, or take thicker boards.'
    default:
      return fault satisfies never
  }
}

const OPENED_BY_BIT =
  'A bit finds no centre in a hole: knock a plug of waste wood into the bore, mark the middle on it, clamp the plate on waste wood, and bore through the plug. A round file, evenly all round, does it too.'
const OPENED_BY_FILE = 'No bit is so wide: take a half-round file, evenly all round.'
/** What opens the upper plate. */
export const openedBy = ({ upperHole }: PinSeat): readonly string[] =>
  hasBit(upperHole) ? ['a bit for the upper bore or a round file', 'waste wood'] : ['half-round file']

/** Whether the upper plate was bored narrower than its hole round the pin has to be. */
export const isUpperOpened = ({ upperHole, seatDiameter }: PinSeat): boolean => upperHole > seatDiameter

/** The pin of a turntable, and the hole round it. */
export function pinSentence(pinSeat: PinSeat, units: Units): string {
  const size = sizeIn(units)
  const { hold, material, species, shaftDiameter, length, upperHole, upperPlay } = pinSeat
  const noun = hold === 'retained' ? 'bolt' : 'pin'
  const pin = `a ${material} ${noun} of ${size(shaftDiameter)}${ofSpecies(species)}, ${size(length)} long,`
  const how: Readonly<Record<PinSeat['hold'], string>> = {
    glued: `Glue ${pin} into the bore of the lower plate with epoxy, flush with its back.`,
    pressed: `Press ${pin} into the bore of the lower plate, flush with its back.`,
    retained: `Put ${pin} through the lower board and both plates, with washers and two nuts: lock them against each other where the upper plate still turns freely. The board on top needs a hole over the nuts.`,
  }
  const open = isUpperOpened(pinSeat)
    ? `Before its board goes on, open the bore of the upper plate to ${size(upperHole)}: the balls centre it, and the ${noun} never touches it. ${hasBit(upperHole) ? OPENED_BY_BIT : OPENED_BY_FILE}`
    : `Leave the bore of the upper plate as it is: the balls centre it, and the ${noun} never touches it.`
  return `${how[hold]} ${open} Through the year that hole is from ${size(upperPlay.min)} to ${size(upperPlay.max)} wider than the ${noun}.`
}

/** What holds each plate to its board. */
export function boardsSentence(boards: BoardSeats, screws: CheekScrews | undefined, units: Units): string {
  const { hold, thickness } = boards
  const size = sizeIn(units)
  const grain = alongGrain(boards)
  const how =
    screws === undefined
      ? `Glue the back of each plate to its board${grain}.`
      : `${hold === 'glued' ? 'Glue and screw' : 'Screw'} each plate to its board${grain}: ${screws.count} screws ${screws.name} × ${size(screws.length)} from the side with the groove, on a circle of ${size(screws.screwCircle)}, their heads below the face. Drill clearance holes of ${screws.clearance.name} through the plate and countersink them, and pilot holes of ${screws.pilot.name}, ${size(screws.pilotDepth)} deep, into the board: without them the plate splits.`
  return `Take boards at least ${size(thickness)} thick. ${how}`
}
