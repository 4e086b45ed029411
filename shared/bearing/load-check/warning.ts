import type { RingName } from '#shared/bearing/refusal.ts'
import { groovePath } from '#shared/bearing/settle.ts'
import type { Mm } from '#shared/units/length.ts'
import type { CheckedLoad, SpeedReason } from './checked-load.ts'

/** What is worth a warning: facts only. Loads in newtons, pressures in megapascals, speeds in turns a minute. */
export type LoadWarningFacts =
  | { readonly code: 'ball-sinks-in'; readonly ring: RingName; readonly ballLoad: number }
  | { readonly code: 'dents-deeper'; readonly ring: RingName; readonly dent: Mm; readonly most: Mm }
  | { readonly code: 'first-marked'; readonly ring: RingName; readonly radialLoad: number }
  | { readonly code: 'edges-crush'; readonly ring: RingName; readonly dent: Mm; readonly width: Mm }
  | { readonly code: 'contact-reaches-edges'; readonly ring: RingName; readonly grooveWidth: Mm }
  | { readonly code: 'one-ball-carries'; readonly share: number; readonly play: Mm }
  | { readonly code: 'balls-softer' }
  | { readonly code: 'too-fast'; readonly reason: SpeedReason; readonly speed: number }

export interface LoadWarning {
  readonly severity: 'note' | 'risk' | 'fault'
  readonly path: string
  readonly facts: LoadWarningFacts
  /** A force [N] or a speed at `path` that clears it. */
  readonly suggestion?: { readonly kind: 'force' | 'speed'; readonly value: number }
}

const RINGS = ['outerRing', 'innerRing'] as const

/** A load set to its limit is not above it, whatever rounding says. */
const WITHIN = 1e-9
const exceeds = (value: number, most: number): boolean => value > most * (1 + WITHIN)

/** Everything about a load and a speed that is worth a warning, the worst first. */
export function findLoadWarnings(check: CheckedLoad): readonly LoadWarning[] {
  return [...dentWarnings(check), ...seatWarnings(check), ...sharingWarnings(check), ...speedWarnings(check)]
}

function dentWarnings(check: CheckedLoad): readonly LoadWarning[] {
  const { dent: limit, firstMark, load } = check
  const path = '/radialLoad'
  const suggestion = { kind: 'force', value: limit.radialLoad } as const
  for (const ring of RINGS) {
    const { dent, ballLoad } = check[ring]
    if (dent === undefined)
      return [{ severity: 'fault', path, facts: { code: 'ball-sinks-in', ring, ballLoad }, suggestion }]
  }
  const { ring } = limit
  const { dent = limit.depth } = check[ring]
  if (exceeds(dent, limit.depth)) {
    return [{ severity: 'risk', path, facts: { code: 'dents-deeper', ring, dent, most: limit.depth }, suggestion }]
  }
  if (!(firstMark.radialLoad > 0 && exceeds(load.radialLoad, firstMark.radialLoad))) return []
  const facts = { code: 'first-marked', ring: firstMark.ring, radialLoad: firstMark.radialLoad } as const
  return [{ severity: 'note', path, facts }]
}

function seatWarnings(check: CheckedLoad): readonly LoadWarning[] {
  const { bearing, softer } = check
  const found: LoadWarning[] = []
  for (const ring of RINGS) {
    const { seat, dent, width, reachesEdges } = check[ring]
    const path = `/design${groovePath(bearing.settled.input, ring)}`
    if (seat === 'edges') {
      if (dent !== undefined) found.push({ severity: 'risk', path, facts: { code: 'edges-crush', ring, dent, width } })
    } else if (reachesEdges) {
      const { grooveWidth } = bearing[ring]
      found.push({ severity: 'note', path, facts: { code: 'contact-reaches-edges', ring, grooveWidth } })
    }
  }
  if (softer === 'ball') found.push({ severity: 'note', path: '/ballWood', facts: { code: 'balls-softer' } })
  return found
}

/** Stribeck's allowance for play, 5 Fr / Z: beyond it a ball carries more than is usual. */
const USUAL_SHARE = 5

function sharingWarnings({ sharing, load, bearing }: CheckedLoad): readonly LoadWarning[] {
  const { count } = bearing.settled.input.balls
  const share = sharing.underBall.most / load.radialLoad
  if (!(share * count > USUAL_SHARE && count > USUAL_SHARE)) return []
  const facts = { code: 'one-ball-carries', share, play: bearing.radialInternalClearance } as const
  return [{ severity: 'note', path: '/design/radialInternalClearance', facts }]
}

function speedWarnings({ load: { speed }, speedLimits: [lowest] }: CheckedLoad): readonly LoadWarning[] {
  if (speed === undefined || !exceeds(speed, lowest.speed)) return []
  const suggestion = { kind: 'speed', value: lowest.speed } as const
  return [{ severity: 'risk', path: '/speed', facts: { code: 'too-fast', ...lowest }, suggestion }]
}
