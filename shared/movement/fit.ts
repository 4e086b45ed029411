import type { EllipticPlay } from '#shared/geometry/play-in-ellipse.ts'
import { ballGap, leastPitchRadius } from '#shared/geometry/ring-of-balls.ts'
import { type GapRange, gapRangeOnEllipse } from '#shared/geometry/ring-of-balls-on-ellipse.ts'
import { ROOM_ROWS, ROOMS, type RoomTrouble } from '#shared/movement/arrangements/parts.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { largestRadius, leastRadius, type Raceway } from './moving-wood.ts'
import type { Snapshot } from './snapshot.ts'

/** The fit of a bearing of mean balls at one time. */
export interface Fit extends Pick<Snapshot, 'rooms'> {
  /** The gap of a full ring of balls. */
  readonly ballGap?: GapRange
  /** The least gap if every ball of wood lay with its largest diameter along the ring: all but impossible. */
  readonly ballGapOfLargest?: Mm
  readonly play?: EllipticPlay
}

export type Trouble = 'balls-bind' | 'rings-bind' | RoomTrouble | 'balls-knock'

/** The gaps between which it runs: the design's own band. */
export interface GapBand {
  readonly minBallGap: Mm
  readonly maxBallGap: Mm
}

export function fitOf({ bottom, ball, play, rooms }: Snapshot, ballCount: number): Fit {
  const gapWith = (ballDiameter: Mm, on: Raceway): GapRange =>
    on.along === on.across
      ? lobedGap(on, ballDiameter, ballCount)
      : gapRangeOnEllipse({ bottom: on, ballDiameter, ballCount })
  const gap = bottom && gapWith(ball.mean, bottom)
  return {
    rooms,
    ...(play && { play }),
    ...(bottom &&
      gap && {
        ballGap: gap,
        ballGapOfLargest: ball.most === ball.mean ? gap.least : gapWith(ball.most, bottom).least,
      }),
  }
}

/**
 * The troubles that stop the bearing. If the gap of a circle as long is farther from the least allowed than the ring is out of round,
 * that gap will do: an ellipse changes it by much less, and its own takes a hundred times the work.
 */
export function bindsIn(snapshot: Snapshot, ballCount: number, band: GapBand | undefined): readonly Trouble[] {
  const { bottom, ball, ...rest } = snapshot
  if (bottom === undefined || band === undefined) return whatBinds(fitOf(snapshot, ballCount), band)
  const { least, most } = roundGap((bottom.along + bottom.across) / 2, ball.mean, ballCount)
  // Lobes may change the gap by more than they are high, and take as little work.
  const isFar = bottom.segments === undefined && Math.abs(least - band.minBallGap) > outOfRound(bottom)
  return whatBinds(isFar ? { ...rest, ballGap: { least, most } } : fitOf(snapshot, ballCount), band)
}

/** The gap of a ring that has stayed round: as on an ellipse, less than nothing by a ball where not even the others go in. */
function roundGap(bottomRadius: number, ballDiameter: Mm, ballCount: number): GapRange {
  const gap = gapOnCircle(bottomRadius, ballDiameter, ballCount)
  return { least: gap, most: gap }
}

/**
 * Balls that stand evenly round a groove with lobes feel its mean radius, unless each of them stands on a lobe at once: then
 * the gap is wider or closer by what the circle through them is.
 */
function lobedGap(raceway: Raceway, ballDiameter: Mm, ballCount: number): GapRange {
  const { along, segments } = raceway
  if (segments === undefined || segments.count % ballCount !== 0) return roundGap(along, ballDiameter, ballCount)
  return {
    least: gapOnCircle(along - segments.inward, ballDiameter, ballCount),
    most: gapOnCircle(along + segments.outward, ballDiameter, ballCount),
  }
}

export function gapOnCircle(bottomRadius: number, ballDiameter: Mm, ballCount: number): Mm {
  const pitchRadius = mm(bottomRadius - ballDiameter / 2)
  return pitchRadius >= leastPitchRadius(ballDiameter, ballCount)
    ? ballGap(pitchRadius, ballDiameter, ballCount)
    : mm(-ballDiameter)
}

/** A ring that closes within a hundredth of a micrometre closes: what a root is found to must not fail by its rounding. */
const WITHIN = 1e-5

/** The troubles that stop the bearing. Balls that knock or climb do not. */
const whatBinds = (fit: Fit, band: GapBand | undefined): readonly Trouble[] => troublesOf(fit, band).filter(stops)

const STOPPING_ROOMS: ReadonlySet<string> = new Set(
  Object.values(ROOMS).flatMap((room) => (room.stops ? [room.trouble] : [])),
)
export const stops = (trouble: Trouble): boolean =>
  trouble === 'balls-bind' || trouble === 'rings-bind' || STOPPING_ROOMS.has(trouble)

/** @param band of a full ring of balls */
export function troublesOf({ ballGap: gap, play, rooms }: Fit, band: GapBand | undefined): readonly Trouble[] {
  const troubles: Trouble[] = []
  if (gap && band && !(gap.least >= band.minBallGap - WITHIN)) troubles.push('balls-bind')
  if (play && !(play.worst >= -WITHIN)) troubles.push('rings-bind')
  for (const [name, { trouble }] of ROOM_ROWS) {
    const left = rooms[name]
    if (left !== undefined && !(left >= -WITHIN)) troubles.push(trouble)
  }
  if (gap && band && !(gap.most <= band.maxBallGap + WITHIN)) troubles.push('balls-knock')
  return troubles
}

/** How far a raceway is out of round: its largest radius less its smallest. */
export const outOfRound = (raceway: Raceway): number => largestRadius(raceway) - leastRadius(raceway)
