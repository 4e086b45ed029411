import { gapOnPath } from '#shared/geometry/balls-on-a-path.ts'
import type { WorstCase } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import { type ClimateChange, STILL } from '#shared/questions/tolerance/climate-movement.ts'
import type { ContributorName } from '#shared/questions/tolerance/input.ts'
import { reachOf } from '#shared/questions/tolerance/reach.ts'
import { innerCentre, innerOf, outerCentre, outerOf } from '#shared/questions/tolerance/seats.ts'
import { extremeBalls, farthest } from '#shared/questions/tolerance/worst-ends.ts'
import type { Ends } from '#shared/statistics/distribution.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/** One corner of all that may differ: everything at an end of its own. */
interface Corner {
  readonly diameters: readonly number[]
  /** Of these the mean holds the inner ring: at the tightest the two largest opposite one another, for no ball counts more. */
  readonly held: readonly number[]
  readonly film: number
  readonly outer: number
  readonly inner: number
  readonly lobe: number
}

/**
 * The real extremes: exact geometry with everything at its worst at once, for the gap and the play alike in the same corner,
 * but for the lobes. The gap falls with each ball and the film and rises with the groove, all the way, so that no corner
 * need be searched for. Lobes turn round: several directions are looked at; and the weather moves all at once: each of its
 * ends is.
 */
export function ringExtremes(check: RingCheck): WorstCase {
  const [tight, loose] = [cornerOf(check, 'tight'), cornerOf(check, 'loose')]
  const ends = check.climate?.ends ?? [STILL]
  return {
    ballGap: {
      min: mm(Math.min(...ends.flatMap((end) => gapsAt(check, tight, end)))),
      max: mm(Math.max(...ends.flatMap((end) => gapsAt(check, loose, end)))),
    },
    play: {
      min: mm(Math.min(...ends.map((end) => playAt(check, tight, end, (other) => tight.lobe + other)))),
      max: mm(Math.max(...ends.map((end) => playAt(check, loose, end, (other) => leastLobe(check, other))))),
    },
  }
}

function cornerOf(check: RingCheck, side: 'tight' | 'loose'): Corner {
  const reach = (name: ContributorName): Ends => farthest(check, name)
  const larger = side === 'tight' ? 'most' : 'least'
  const smaller = side === 'tight' ? 'least' : 'most'
  const lobes = reach('outOfRound')
  const diameters = extremeBalls(check, side).map((diameter) => diameter + reach('ballLotMean')[larger])
  return {
    diameters,
    held: side === 'tight' ? diameters.slice(0, 2) : diameters,
    film: reach('finishFilm')[larger],
    outer: reach('outerGrooveBottomRadius')[smaller],
    inner: reach('innerGrooveBottomRadius')[larger],
    lobe: reachOf(lobes),
  }
}

/** The smallest amplitude that lobes can have together with lobes of a fixed amplitude, in whatever direction: none where they can undo them. */
function leastLobe(check: RingCheck, other: number): number {
  const lobes = farthest(check, 'outOfRound')
  const smallest = Math.max(0, lobes.least, -lobes.most)
  return Math.max(0, smallest - other, other - reachOf(lobes))
}

const DIRECTIONS = 16

function gapsAt({ bearing }: RingCheck, corner: Corner, weather: ClimateChange): readonly number[] {
  const { film, outer } = corner
  const ring = outerOf(bearing)
  const diameters = corner.diameters.map((diameter) => diameter + weather.ballLotMean)
  const lobe = corner.lobe + weather.outerOutOfRound
  const centres = diameters.map(
    (diameter) => outerCentre(ring, diameter / 2 + film, outer) + weather.outerGrooveBottomRadius,
  )
  const gap = (amplitude: number, direction: number): number =>
    gapOnPath(
      diameters.length,
      (ball) => centres[ball] ?? Number.NaN,
      (ball) => (diameters[ball] ?? Number.NaN) / 2,
      { amplitude, cosine: Math.cos(direction), sine: Math.sin(direction) },
    )
  const round = gap(0, 0)
  if (lobe === 0) return [round]
  return [round, ...Array.from({ length: DIRECTIONS }, (_, index) => gap(lobe, (2 * Math.PI * index) / DIRECTIONS))]
}

/** @param lobeOf the amplitude of a ring's lobes, with those that the weather gives it */
function playAt(
  { bearing }: RingCheck,
  { held, film, outer, inner }: Corner,
  weather: ClimateChange,
  lobeOf: (other: number) => number,
): Mm {
  const mean = held.reduce((sum, diameter) => sum + diameter, 0) / held.length + weather.ballLotMean
  const seatRadius = mean / 2 + film
  const outside = outerCentre(outerOf(bearing), seatRadius, outer) + weather.outerGrooveBottomRadius
  const inside = innerCentre(innerOf(bearing), seatRadius, inner) + weather.innerGrooveBottomRadius
  return mm(2 * (outside - inside) - 2 * (lobeOf(weather.outerOutOfRound) + lobeOf(weather.innerOutOfRound)))
}
