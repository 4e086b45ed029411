import type { Refused } from '#shared/bearing/refusal.ts'
import { type Ellipse, longer, shorter } from '#shared/geometry/ellipse.ts'
import { movingBearing } from '#shared/movement/moving-bearing.ts'
import type { Raceway } from '#shared/movement/moving-wood.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import type { Snapshot } from '#shared/movement/snapshot.ts'
import type { Season, WoodState } from '#shared/movement/states.ts'
import type { BearingInYear, Climate } from '#shared/movement/year.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { ok, type Result } from '#shared/result.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { TOLERANCE_CHECK } from './input.ts'

/** The change of the bearing since the day it was made: all of one cause, so all of it together. */
export interface ClimateChange {
  readonly moistureContent: number
  /** Change of the mean radius of the groove's bottom. */
  readonly outerGrooveBottomRadius: Mm
  /** With what the lobes of segments take off the play, however the rings are turned: balls stand on all of them. */
  readonly innerGrooveBottomRadius: Mm
  /** Amplitude of the two-lobed error: half the difference of the half axes. */
  readonly outerOutOfRound: Mm
  readonly innerOutOfRound: Mm
  /** Change of the mean radius of the circle in which a plate's groove lies: of both plates alike. */
  readonly grooveCircleRadius: Mm
  /** Change of the mean diameter of all balls alike. */
  readonly ballLotMean: Mm
}

/** Whether the rings of a state are out of round. */
export const isOutOfRound = ({ outerOutOfRound, innerOutOfRound }: ClimateChange): boolean =>
  outerOutOfRound > 0 || innerOutOfRound > 0

/** A year that does nothing. */
export const STILL: ClimateChange = {
  moistureContent: 0,
  outerGrooveBottomRadius: mm(0),
  innerGrooveBottomRadius: mm(0),
  outerOutOfRound: mm(0),
  innerOutOfRound: mm(0),
  grooveCircleRadius: mm(0),
  ballLotMean: mm(0),
}

/** The distribution of what the weather does to a bearing, for whoever draws chance. */
export interface ClimateMovement {
  /** All equally likely. Draw one and take all its changes together: they have one cause. */
  readonly states: readonly ClimateChange[]
  /** So many states on end lie evenly on one straight piece: of a table one. */
  readonly statesAPiece: number
  /** The farthest that it goes: the driest, the dampest and, where it lies between, the day of making, when all is round; or the months. */
  readonly ends: readonly ClimateChange[]
}

/** A range of moisture is calculated at the ends of so many equal parts. */
const PARTS = 64
/** Between them changes are straight lines, drawn at so many places each: a chance is then good to 1/4096. */
const PLACES = 32

/** From a range the states are evenly spread over it (moisture uniform), from a table its months. */
export function climateMovement(input: BearingInYear): Result<ClimateMovement, Refused<SeasonRefusal>> {
  const moving = movingBearing(input, TOLERANCE_CHECK)
  if (!moving.ok) return moving
  const { season, snapshotIn } = moving.value
  const made = snapshotIn(season.today)
  const change = (state: WoodState): ClimateChange => changeOf(state.moistureContent, made, snapshotIn(state))
  const isTable = input.climate.kind === 'months'
  const states = isTable ? season.states.map(change) : spread(season.states, change)
  return ok({
    states,
    statesAPiece: isTable || states.length < PLACES ? 1 : PLACES,
    ends: endStates(input.climate, season).map(change),
  })
}

function spread([driest, dampest]: readonly WoodState[], change: (state: WoodState) => ClimateChange): ClimateChange[] {
  if (driest === undefined || dampest === undefined) return []
  if (driest.moistureContent === dampest.moistureContent && driest.relativeHumidity === dampest.relativeHumidity)
    return [change(driest)]
  const between = (low: number, high: number, part: number): number => low + part * (high - low)
  const humidities = [driest.relativeHumidity ?? 100, dampest.relativeHumidity ?? 100] as const
  const ends = Array.from({ length: PARTS + 1 }, (_, end) =>
    change({
      name: '',
      temperature: between(driest.temperature, dampest.temperature, end / PARTS),
      relativeHumidity: between(...humidities, end / PARTS),
      moistureContent: between(driest.moistureContent, dampest.moistureContent, end / PARTS),
    }),
  )
  return Array.from({ length: PARTS * PLACES }, (_, place) => {
    const part = Math.floor(place / PLACES)
    const [low, high] = [itemAt(ends, part), itemAt(ends, part + 1)]
    const at = (name: keyof ClimateChange) => mm(between(low[name], high[name], ((place % PLACES) + 0.5) / PLACES))
    return {
      moistureContent: at('moistureContent'),
      outerGrooveBottomRadius: at('outerGrooveBottomRadius'),
      innerGrooveBottomRadius: at('innerGrooveBottomRadius'),
      outerOutOfRound: at('outerOutOfRound'),
      innerOutOfRound: at('innerOutOfRound'),
      grooveCircleRadius: at('grooveCircleRadius'),
      ballLotMean: at('ballLotMean'),
    }
  })
}

function endStates(climate: Climate, { today, states }: Season): readonly WoodState[] {
  const moistures = states.map(({ moistureContent }) => moistureContent)
  const isBetween = today.moistureContent > Math.min(...moistures) && today.moistureContent < Math.max(...moistures)
  return climate.kind !== 'months' && isBetween ? [...states, today] : states
}

const NOTHING: Raceway = { along: mm(0), across: mm(0) }
const meanRadius = (ellipse: Ellipse): number => (longer(ellipse) + shorter(ellipse)) / 2

function changeOf(moistureContent: number, made: Snapshot, moved: Snapshot): ClimateChange {
  const [outer, inner] = [moved.raceways.outerRing ?? NOTHING, moved.raceways.innerRing ?? NOTHING]
  const circle = (of: Snapshot): number => meanRadius(of.raceways.plates ?? NOTHING)
  return {
    moistureContent,
    outerGrooveBottomRadius: mm(meanRadius(outer) - meanRadius(made.raceways.outerRing ?? NOTHING)),
    innerGrooveBottomRadius: mm(
      meanRadius(inner) -
        meanRadius(made.raceways.innerRing ?? NOTHING) +
        (outer.segments?.inward ?? 0) +
        (inner.segments?.outward ?? 0),
    ),
    outerOutOfRound: mm(meanRadius(outer) - shorter(outer)),
    innerOutOfRound: mm(longer(inner) - meanRadius(inner)),
    // Out of round, plates have a gap that is larger by a hundredth of a millimetre or so, and lose no play.
    grooveCircleRadius: mm(circle(moved) - circle(made)),
    ballLotMean: mm(moved.ball.mean - made.ball.mean),
  }
}
