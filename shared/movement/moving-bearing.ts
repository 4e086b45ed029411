import { type Bearing, echoedBearingFor, type Question } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import { movingOf } from '#shared/movement/arrangements/all.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { GapBand } from './fit.ts'
import type { Change } from './moving-wood.ts'
import type { SeasonRefusal } from './refusal.ts'
import type { Snapshot } from './snapshot.ts'
import { type Season, seasonOf, type WoodState } from './states.ts'
import { type BearingInYear, speciesOf, type Woods, type Year } from './year.ts'

/** All that is needed to say what the bearing becomes in any state: checked, so that nothing in it is unknown. */
export interface MovingBearing {
  readonly input: BearingInYear
  readonly bearing: Bearing
  readonly season: Season
  readonly boards: number
  readonly after: (change: Change) => Snapshot
  /** Boards that move as their species does, at rest with the air. */
  readonly snapshotIn: (state: WoodState) => Snapshot
  /** The gap limits of a full ring of balls. */
  readonly band: GapBand | undefined
}

/**
 * The bearing as made today and in any state; or every fault of the input.
 *
 * @param question refuses the arrangements that it does not serve
 */
export function movingBearing(input: BearingInYear, question: Question): Result<MovingBearing, Refused<SeasonRefusal>> {
  const { design, woods, climate, today } = input
  const designed = echoedBearingFor(question, design)
  const unknown = [...unknownMovements(woods), ...ballsWithoutWood(input)]
  const season = seasonOf(climate, today, woods)
  if (!designed.ok || !season.ok || unknown.length > 0)
    return fail({
      ofDesign: designed.ok ? [] : designed.error,
      ofQuestion: [...unknown, ...(season.ok ? [] : season.error)],
    })
  const bearing = designed.value
  const { boards, snapshotsOf } = movingOf(design)
  const after = snapshotsOf(bearing, woods)
  const from = season.value.today
  const snapshotIn = (to: WoodState): Snapshot => {
    const board = { from: from.moistureContent, to: to.moistureContent, times: 1 }
    return after({ boards: boards.map(() => board), balls: board, from, to })
  }
  const band = 'ballGap' in bearing ? bearing.resolved : undefined
  return ok({ input, bearing, season: season.value, boards: boards.length, after, snapshotIn, band })
}

/** Faults of a year and its woods that do not depend on the bearing. */
export function yearFaults({ woods, climate, today }: Year): readonly SeasonRefusal[] {
  const season = seasonOf(climate, today, woods)
  return [...unknownMovements(woods), ...(season.ok ? [] : season.error)]
}

const unknownMovements = (woods: Woods): readonly SeasonRefusal[] =>
  speciesOf(woods).flatMap(([species, path]) =>
    MOVEMENT[species] === undefined ? [{ code: 'movement-unknown', path, species }] : [],
  )

function ballsWithoutWood({ design, woods }: BearingInYear): readonly SeasonRefusal[] {
  const isWood = (design.balls.material ?? BALL_MATERIAL) === 'wood'
  return isWood && woods.balls === undefined ? [{ code: 'balls-without-wood', path: '/woods/balls' }] : []
}
