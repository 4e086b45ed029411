import type { Bearing, DesignInput } from '#shared/bearing/arrangements.ts'
import { fitOf, whatBinds } from '#shared/questions/season/fit.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { movingBearing } from '#shared/questions/season/seasonal-fit.ts'
import type { WoodState } from '#shared/questions/season/states.ts'
import { normalCdf } from '#shared/statistics/normal.ts'
import { playChance, type Spread } from './chance.ts'

/**
 * The chance that a bearing runs at the worst time of a year: today, at the driest or at the dampest, as everything moves
 * with the moisture one way. Balls may knock. 0 where it stops in one of them as designed.
 */
export function chanceThroughYear(year: Year, bearing: Bearing, spread: Spread): number {
  const { resolved } = bearing
  const { balls, ...rings } = year.woods
  const woods = resolved.input.balls.material === 'wood' && balls !== undefined ? { ...rings, balls } : rings
  const moving = movingBearing({ ...year, woods, design: resolved.input as DesignInput })
  if (!moving.ok || !('minBallGap' in resolved)) return 0
  const { season, made, shapeIn } = moving.value
  const byMoisture = [season.today, ...season.states].toSorted(
    (one, other) => one.moistureContent - other.moistureContent,
  )
  const chanceIn = (state: WoodState): number => {
    const fit = fitOf(shapeIn(state), made)
    if (whatBinds(fit, resolved).length > 0) return 0
    const gap = normalCdf((fit.ballGap.least - resolved.minBallGap) / spread.gap)
    return gap * playChance(spread, fit.play.worst)
  }
  const extremes = new Set([byMoisture.at(0), byMoisture.at(-1), season.today])
  return Math.min(...[...extremes].map((state) => (state === undefined ? 0 : chanceIn(state))))
}
