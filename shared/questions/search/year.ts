import type { Bearing, DesignInput } from '#shared/bearing/arrangements.ts'
import { fitOf, stops, troublesOf } from '#shared/movement/fit.ts'
import { movingBearing } from '#shared/movement/moving-bearing.ts'
import type { WoodState } from '#shared/movement/states.ts'
import type { BearingInYear, Year } from '#shared/movement/year.ts'
import { itemAt, lastOf } from '#shared/numbers/item-at.ts'
import { throughYear } from '#shared/questions/season/seasonal-fit.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { playChance, type Spread } from './chance.ts'
import { DESIGN_SEARCH } from './input.ts'

/**
 * The chance that a bearing runs at the worst time of a year: today, at the driest or at the dampest, as everything moves
 * with the moisture one way. Its gap, where it has one, its play, where there is play. Balls may knock. 0 where it stops in one
 * of them as designed.
 */
export function chanceThroughYear(year: Year, bearing: Bearing, spread: Spread): number {
  const moving = movingBearing(inYear(year, bearing), DESIGN_SEARCH)
  if (!moving.ok) return 0
  const { season, snapshotIn, band } = moving.value
  const byMoisture = [season.today, ...season.states].toSorted(
    (one, other) => one.moistureContent - other.moistureContent,
  )
  const chanceIn = (state: WoodState): number => {
    const fit = fitOf(snapshotIn(state), bearing.resolved.input.balls.count)
    const { ballGap, play } = fit
    if (troublesOf(fit, band).some(stops)) return 0
    const gap = ballGap && band ? normalCdf((ballGap.least - band.minBallGap) / spread.gap) : 1
    return play === undefined ? gap : gap * playChance(spread, play.worst)
  }
  const extremes = new Set([itemAt(byMoisture, 0), lastOf(byMoisture), season.today])
  return Math.min(...[...extremes].map(chanceIn))
}

/** The chance that it runs all year over boards, hysteresis, balls and assembly: exactly that of a seasonal fit, and slow. */
export function chanceOfSeason(year: Year, bearing: Bearing): number {
  const through = throughYear(inYear(year, bearing))
  return through.ok ? through.value.chances.runsAllYear : 0
}

function inYear(year: Year, { resolved: { input } }: Bearing): BearingInYear {
  const { balls, ...rings } = year.woods
  const woods = input.balls.material === 'wood' && balls !== undefined ? { ...rings, balls } : rings
  return { ...year, woods, design: input as DesignInput }
}
