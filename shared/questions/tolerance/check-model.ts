import type { Ends } from '#shared/statistics/distribution.ts'
import type { Mm } from '#shared/units/length.ts'
import type { Chunk } from './chunk.ts'
import type { ClimateChange } from './climate-movement.ts'
import type { CauseName, ContributorName } from './input.ts'
import type { Weather } from './weather.ts'

/*
 * The part of a tolerance check that each arrangement has of its own: how balls stand in it, and what follows for either figure. All else of
 * a tolerance check asks for these, and knows of neither.
 */

/** The second is the play of the inner ring, or, of a turntable, the space between both faces. */
export const FIGURES = ['ballGap', 'play'] as const
export type FigureName = (typeof FIGURES)[number]

/** How many of each there are in a bearing, balls apart: a groove with lobes in either ring, and all of either plate. */
export const COPIES: Readonly<Record<Exclude<ContributorName, 'ballDiameter'>, number>> = {
  ballLotMean: 1,
  outerGrooveBottomRadius: 1,
  innerGrooveBottomRadius: 1,
  outOfRound: 2,
  finishFilm: 1,
  grooveCircleRadius: 2,
  grooveDepth: 2,
}

/** Slopes of a figure: one for each ball by diameter in their order round the ring, one for each other contributor. */
export interface Slopes {
  readonly eachBall: readonly number[]
  /** Slope of a single one, if there are several. */
  readonly of: Readonly<Record<Exclude<ContributorName, 'ballDiameter'>, number>>
  /** Effect of unequal balls beside their mean, from `playMoments`, per mm of scatter. 0 if the mean alone counts. */
  readonly perUnevenness: number
  /** For a ring that grows as a whole, its groove and its land alike: by the radius. */
  readonly ofRing: { readonly outer: number; readonly inner: number }
}

export type WorstCase = Readonly<Record<FigureName, { readonly min: Mm; readonly max: Mm }>>

/** How far the weather takes each thing that it moves, the day of making among its states. */
export type WeatherReach = Readonly<Record<Exclude<keyof ClimateChange, 'moistureContent'>, Ends>>

/** A limit beyond which contributors leave no bearing, and the one to blame. */
export interface Break {
  readonly names: readonly [CauseName, ...CauseName[]]
  readonly because: 'balls' | 'outer-groove' | 'inner-groove' | 'plate-groove' | 'closes' | 'lobes'
}

/** A place to stop at. */
export interface AimPlace {
  readonly grooveDepth: Mm
  /** Only of a plate: diameter of the groove's circle, where it is deepest. */
  readonly grooveBottomDiameter: Mm
  /** By how much further than in the design, radially; below 0 not so far. */
  readonly deeper: Mm
}

/** The numbers drawn for a contributor, a chunk of them; undefined if it does not differ. */
type Drawn = (
  name: ContributorName | 'state' | 'lobes' | 'direction' | 'grain' | 'innerGrain',
) => Float64Array | undefined

/** Ball gaps and plays of a chunk of trials. */
export type Evaluate = (row: Drawn, gaps: Float64Array, plays: Float64Array) => void

export interface CheckModel {
  /** Whether below 0 of the second figure one part does not go into the other. */
  readonly canBind: boolean
  readonly nominal: Readonly<Record<FigureName, Mm>>
  readonly slopes: Readonly<Record<FigureName, Slopes>>
  /** The real extremes: exact geometry with everything at its worst at once. */
  readonly extremes: () => WorstCase
  readonly breaks: (reach: (name: ContributorName) => Ends, weather: WeatherReach) => readonly Break[]
  /** From which to which shift of the balls outward there is a groove, of the shifts that are of any interest. */
  readonly shifts: (from: number, to: number) => readonly [from: number, to: number]
  readonly placeAt: (shift: number) => AimPlace
  readonly evaluation: (chunk: Chunk, weather: Weather | undefined) => Evaluate
}
