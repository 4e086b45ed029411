import type { PartName } from '#shared/bearing/refusal.ts'
import type { AnyInput, GroovedParts } from '#shared/bearing/resolve.ts'
import { groovePath } from '#shared/bearing/resolve.ts'
import type { Mm } from '#shared/units/length.ts'
import type { CheckedLoad } from './checked-load.ts'
import type { Use } from './limits.ts'

/** The facts of a warning. Loads in newtons, pressures in megapascals, speeds in turns a minute. */
export type LoadWarningFacts<Reason extends string = string> =
  | { readonly code: 'ball-sinks-in'; readonly part: PartName; readonly ballLoad: number }
  | { readonly code: 'dents-deeper'; readonly part: PartName; readonly dent: Mm; readonly most: Mm }
  | ({ readonly code: 'above-working-load'; readonly part: PartName; readonly load: number } & Readonly<
      Record<Use, number>
    >)
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
  | { readonly code: 'faster-than-by-hand'; readonly speed: number }
  | { readonly code: 'too-fast'; readonly reason: Reason; readonly speed: number; readonly byHand: number }

export interface LoadWarning<Reason extends string = string> {
  readonly severity: 'note' | 'risk' | 'fault'
  readonly path: string
  readonly facts: LoadWarningFacts<Reason>
  /** A force [N] or a speed at `path` that clears it. */
  readonly suggestion?: { readonly kind: 'force' | 'speed'; readonly value: number }
}

/** The facts that warnings of every arrangement need. */
export interface Loaded<Reason extends string> {
  readonly check: CheckedLoad<PartName, Reason>
  readonly design: AnyInput & GroovedParts
  /** Path of the load in the input. */
  readonly path: string
  readonly grooveWidths: Readonly<Partial<Record<PartName, Mm>>>
}

/** A load set to its limit is not above it, whatever rounding says. */
const WITHIN = 1e-9
const exceeds = (value: number, most: number): boolean => value > most * (1 + WITHIN)

/** Everything about a load and a speed that is worth a warning, the worst first, but for what arrangements have of their own. */
export const findLoadWarnings = <Reason extends string>(
  loaded: Loaded<Reason>,
  ofSharing: readonly LoadWarning<Reason>[],
): readonly LoadWarning<Reason>[] => [
  ...dentWarnings(loaded),
  ...seatWarnings(loaded),
  ...ofSharing,
  ...speedWarnings(loaded.check),
]

function dentWarnings({ check, path }: Loaded<string>): readonly LoadWarning<never>[] {
  const { ruin, workingLoad, load, seats } = check
  const suggestion = { kind: 'force', value: ruin.load } as const
  for (const { part, seat } of seats) {
    const { dent, ballLoad } = seat
    if (dent === undefined)
      return [{ severity: 'fault', path, facts: { code: 'ball-sinks-in', part, ballLoad }, suggestion }]
  }
  const { part, depth: most } = ruin
  const dent = seats.find((each) => each.part === part)?.seat.dent ?? most
  if (exceeds(dent, most)) {
    return [{ severity: 'fault', path, facts: { code: 'dents-deeper', part, dent, most }, suggestion }]
  }
  const { still, slowHand, steadyCrank } = workingLoad.loads
  const least = Math.min(still.load, steadyCrank.load)
  if (!exceeds(load.newtons, least)) return []
  const marked = { still: still.load, slowHand: slowHand.load, steadyCrank: steadyCrank.load }
  const facts = { code: 'above-working-load', part: slowHand.part, load: load.newtons, ...marked } as const
  const severity = exceeds(load.newtons, slowHand.load) ? 'fault' : 'note'
  return [{ severity, path, facts, suggestion: { kind: 'force', value: least } }]
}

function seatWarnings({ design, check, grooveWidths }: Loaded<string>): readonly LoadWarning<never>[] {
  const found: LoadWarning<never>[] = []
  for (const { part, seat } of check.seats) {
    const { dent, width } = seat
    const grooveWidth = grooveWidths[part]
    const path = `/design${groovePath(design, part)}`
    if (seat.seat === 'edges') {
      if (dent !== undefined) found.push({ severity: 'risk', path, facts: { code: 'edges-crush', part, dent, width } })
    } else if (seat.reachesEdges && grooveWidth !== undefined) {
      found.push({ severity: 'note', path, facts: { code: 'contact-reaches-edges', part, grooveWidth } })
    }
  }
  if (check.softer === 'ball') found.push({ severity: 'note', path: '/ballWood', facts: { code: 'balls-softer' } })
  return found
}

function speedWarnings<Reason extends string>({
  load: { speed },
  handTurned,
  speedLimits: [lowest],
}: Loaded<Reason>['check']): readonly LoadWarning<Reason>[] {
  if (speed === undefined) return []
  const suggestion = { kind: 'speed', value: handTurned } as const
  if (exceeds(speed, lowest.speed)) {
    return [
      { severity: 'risk', path: '/speed', facts: { code: 'too-fast', ...lowest, byHand: handTurned }, suggestion },
    ]
  }
  if (!exceeds(speed, handTurned)) return []
  return [{ severity: 'note', path: '/speed', facts: { code: 'faster-than-by-hand', speed: handTurned }, suggestion }]
}
