import { isPlain } from '#shared/geometry/groove.ts'
import type { Break, WeatherReach } from '#shared/questions/tolerance/check-model.ts'
import type { RingCheck } from '#shared/questions/tolerance/checked.ts'
import type { ContributorName } from '#shared/questions/tolerance/input.ts'
import { FARTHEST_ROUND, LARGEST_LOBE, MOST_UNEVEN, reachOf } from '#shared/questions/tolerance/reach.ts'
import { type GroovedRing, innerOf, outerCentre, outerOf, sitsOnBottom } from '#shared/questions/tolerance/seats.ts'
import type { Ends } from '#shared/statistics/distribution.ts'
import { mm } from '#shared/units/length.ts'

/** The values beyond which there is no bearing of two rings. */
export function ringBreaks(
  { bearing }: RingCheck,
  reach: (name: ContributorName) => Ends,
  weather: WeatherReach,
): readonly Break[] {
  const { ballDiameter, input } = bearing.resolved
  const [each, lot, film, lobes] = [
    reach('ballDiameter'),
    reach('ballLotMean'),
    reach('finishFilm'),
    reach('outOfRound'),
  ]
  const smallest = ballDiameter + each.least + lot.least + weather.ballLotMean.least
  const largest = ballDiameter + each.most + lot.most + weather.ballLotMean.most
  const found: Break[] = []
  if (!(smallest > 0 && largest <= MOST_UNEVEN * smallest && smallest / 2 + film.least > 0)) {
    found.push({ names: ['ballDiameter', 'ballLotMean', 'finishFilm', 'climate'], because: 'balls' })
  }
  const [outer, inner] = [outerOf(bearing), innerOf(bearing)]
  const [outerReach, innerReach] = [reach('outerGrooveBottomRadius'), reach('innerGrooveBottomRadius')]
  const seatRadius = largest / 2 + film.most
  if (!isGroove(outer, seatRadius, outerReach))
    found.push({ names: ['outerGrooveBottomRadius'], because: 'outer-groove' })
  const innerDepths = { least: -innerReach.most, most: -innerReach.least }
  const innermost = inner.bottomRadius + innerReach.least + weather.innerGrooveBottomRadius.least
  if (!(isGroove(inner, seatRadius, innerDepths) && innermost > 0)) {
    found.push({ names: ['innerGrooveBottomRadius', 'climate'], because: 'inner-groove' })
  }
  const lobe = reachOf(lobes) + Math.max(weather.outerOutOfRound.most, weather.innerOutOfRound.most)
  if (!(lobe <= LARGEST_LOBE * bearing.pitchRadius)) {
    found.push({ names: ['outOfRound', 'climate'], because: 'lobes' })
  }
  if (found.length > 0) return found
  const tightest = outerCentre(outer, seatRadius, outerReach.least) + weather.outerGrooveBottomRadius.least - lobe
  const sine = largest / 2 / tightest
  const round = sine > 0 && sine < 1 ? 2 * (input.balls.count - 1) * Math.asin(sine) : Number.NaN
  if (round < FARTHEST_ROUND) return []
  return [
    {
      names: ['ballDiameter', 'ballLotMean', 'outerGrooveBottomRadius', 'finishFilm', 'outOfRound', 'climate'],
      because: 'closes',
    },
  ]
}

/** Whether a groove, where it is one and no plain track, keeps some depth, and where balls ride on its edges, is no more than a half circle. */
function isGroove(ring: GroovedRing, seatRadius: number, { least, most }: Ends): boolean {
  const { grooveDepth, grooveRadius } = ring
  if (isPlain({ depth: mm(grooveDepth), radius: mm(grooveRadius) })) return true
  return grooveDepth + least > 0 && (sitsOnBottom(ring, seatRadius) || grooveDepth + most <= grooveRadius)
}
