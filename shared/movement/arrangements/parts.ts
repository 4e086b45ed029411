/*
 * Parts and clearances of arrangements, one row each. An arrangement names its own.
 */

/** The direction in which a field of the design gives more room, by as much as it is changed. */
type Cure = 1 | -1

interface Room {
  /** The trouble if there is no room. */
  readonly trouble: string
  /** Whether that stops the bearing. */
  readonly stops: boolean
  /** The field of the design that it depends on. */
  readonly path: string
  readonly cure?: Cure
}

/** Room that must not be used up, beside gap and play. */
export const ROOMS = {
  leastLandGap: { trouble: 'lands-rub', stops: true, path: '/outerRing' },
  endPlay: { trouble: 'ends-bind', stops: true, path: '/balls/length', cure: -1 },
  cageClearance: { trouble: 'cage-rubs', stops: true, path: '/cage/landClearance', cure: 1 },
  pocketClearance: { trouble: 'pockets-bind', stops: true, path: '/cage/pocketClearance', cure: 1 },
  flankRoom: { trouble: 'balls-climb', stops: false, path: '/groove' },
} as const satisfies Readonly<Record<string, Room>>
export type RoomName = keyof typeof ROOMS
export type RoomTrouble = (typeof ROOMS)[RoomName]['trouble']
export const ROOM_ROWS = Object.entries(ROOMS) as readonly (readonly [RoomName, Room & { trouble: RoomTrouble }])[]
