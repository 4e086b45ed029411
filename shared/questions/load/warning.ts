import type { PartName } from '#shared/bearing/refusal.ts'
import type { AnyInput, GroovedParts } from '#shared/bearing/resolve.ts'
import { groovePath } from '#shared/bearing/resolve.ts'
import type { Mm } from '#shared/units/length.ts'
import type { SpeedReason } from './checked-load.ts'
import type { PlateSpeedReason } from './checked-plate-load.ts'
import type { DentLimit, Limit } from './limits.ts'
import type { BallSeat, SeatLoad } from './seat-load.ts'
import type { SpeedLimit } from './speed-limits.ts'

export type LoadSpeedReason = SpeedReason | PlateSpeedReason

/** What is worth a warning: facts only. Loads in newtons, pressures in megapascals, speeds in turns a minute. */
export type LoadWarningFacts =
  | { readonly code: 'ball-sinks-in'; readonly part: PartName; readonly ballLoad: number }
  | { readonly code: 'dents-deeper'; readonly part: PartName; readonly dent: Mm; readonly most: Mm }
  | { readonly code: 'first-marked'; readonly part: PartName; readonly load: number }
  | { readonly code: 'edges-crush'; readonly part: PartName; readonly dent: Mm; readonly width: Mm }
  | { readonly code: 'contact-reaches-edges'; readonly part: PartName; readonly grooveWidth: Mm }
  | { readonly code: 'one-ball-carries'; readonly share: number; readonly play: Mm }
  | {
      readonly code: 'three-carry'
      readonly ballLoad: number
      /** Undefined where it sinks in past its middle. */
      readonly dent: Mm | undefined
      readonly allCarryFrom: number
    }
  | { readonly code: 'balls-softer' }
  | { readonly code: 'spun-beside-axis'; readonly offset: Mm }
  | { readonly code: 'too-fast'; readonly reason: LoadSpeedReason; readonly speed: number }

export interface LoadWarning {
  readonly severity: 'note' | 'risk' | 'fault'
  readonly path: string
  readonly facts: LoadWarningFacts
  /** A force [N] or a speed at `path` that clears it. */
  readonly suggestion?: { readonly kind: 'force' | 'speed'; readonly value: number }
}

/** What is looked at, whatever the balls lie in. */
export interface Loaded {
  readonly design: AnyInput & GroovedParts
  /** The load [N], where it was asked, and the speed with it. */
  readonly asked: { readonly path: string; readonly load: number; readonly speed?: number }
  readonly seats: readonly { readonly part: PartName; readonly seat: SeatLoad; readonly grooveWidth: Mm }[]
  readonly dent: DentLimit<PartName>
  readonly firstMark: Limit<PartName>
  readonly softer: BallSeat['softer']
  /** The lowest first; none where none is known. */
  readonly speedLimits: readonly SpeedLimit<LoadSpeedReason>[]
  /** What rings and plates have each in their own way. */
  readonly ofSharing: readonly LoadWarning[]
}

/** A load set to its limit is not above it, whatever rounding says. */
const WITHIN = 1e-9
const exceeds = (value: number, most: number): boolean => value > most * (1 + WITHIN)

/** Everything about a load and a speed that is worth a warning, the worst first. */
export function findLoadWarnings(loaded: Loaded): readonly LoadWarning[] {
  return [...dentWarnings(loaded), ...seatWarnings(loaded), ...loaded.ofSharing, ...speedWarnings(loaded)]
}

function dentWarnings({ dent: limit, firstMark, asked, seats }: Loaded): readonly LoadWarning[] {
  const { path } = asked
  const suggestion = { kind: 'force', value: limit.load } as const
  for (const { part, seat } of seats) {
    const { dent, ballLoad } = seat
    if (dent === undefined)
      return [{ severity: 'fault', path, facts: { code: 'ball-sinks-in', part, ballLoad }, suggestion }]
  }
  const { part, depth: most } = limit
  const dent = seats.find((each) => each.part === part)?.seat.dent ?? most
  if (exceeds(dent, most)) {
    return [{ severity: 'risk', path, facts: { code: 'dents-deeper', part, dent, most }, suggestion }]
  }
  if (!(firstMark.load > 0 && exceeds(asked.load, firstMark.load))) return []
  const facts = { code: 'first-marked', part: firstMark.part, load: firstMark.load } as const
  return [{ severity: 'note', path, facts }]
}

function seatWarnings({ design, seats, softer }: Loaded): readonly LoadWarning[] {
  const found: LoadWarning[] = []
  for (const { part, seat, grooveWidth } of seats) {
    const { dent, width } = seat
    const path = `/design${groovePath(design, part)}`
    if (seat.seat === 'edges') {
      if (dent !== undefined) found.push({ severity: 'risk', path, facts: { code: 'edges-crush', part, dent, width } })
    } else if (seat.reachesEdges) {
      found.push({ severity: 'note', path, facts: { code: 'contact-reaches-edges', part, grooveWidth } })
    }
  }
  if (softer === 'ball') found.push({ severity: 'note', path: '/ballWood', facts: { code: 'balls-softer' } })
  return found
}

function speedWarnings({ asked: { speed }, speedLimits: [lowest] }: Loaded): readonly LoadWarning[] {
  if (speed === undefined || lowest === undefined || !exceeds(speed, lowest.speed)) return []
  const suggestion = { kind: 'speed', value: lowest.speed } as const
  return [{ severity: 'risk', path: '/speed', facts: { code: 'too-fast', ...lowest }, suggestion }]
}
