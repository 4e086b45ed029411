import type { ReadingError } from '#shared/statistics/likelihood.ts'

/** A reading at a groove, in millimetres. */
export type Reading =
  | { readonly kind: 'ball-gap'; readonly value: number; readonly error: ReadingError }
  | {
      readonly kind: 'last-ball-opening'
      readonly ballsLeftOut: number
      readonly value: number
      readonly error: ReadingError
    }
  | { readonly kind: 'last-ball-refused' }
  | { readonly kind: 'last-ball-in' }
  | { readonly kind: 'plug'; readonly diameter: number; readonly result: PlugResult; readonly error: ReadingError }
  | { readonly kind: 'groove-bottom-diameter'; readonly value: number; readonly error: ReadingError }
  | {
      readonly kind: 'groove-depth'
      readonly value: number
      readonly landDiameter: number
      readonly error: ReadingError
    }
  | { readonly kind: 'ball-row'; readonly count: number; readonly value: number; readonly error: ReadingError }
  | { readonly kind: 'radial-play'; readonly value: number; readonly error: ReadingError }
  | { readonly kind: 'binds' }

export type ReadingKind = Reading['kind']
export type PlugResult = 'enters' | 'snug' | 'refuses'

export type ToolName = 'sharp-tool' | 'abrasive'

/** A reading that an answer asks for. */
export interface AskedReading {
  readonly kind: ReadingKind
  /** Only of an opening. */
  readonly ballsLeftOut?: number
  /** Only of a row. */
  readonly count?: number
  /** About what it will show. */
  readonly expected?: number
}

/** A groove as it was before a cut, and the nominal cut. */
export interface EarlierState {
  readonly readings: readonly Reading[]
  readonly thenRemoved: { readonly with: ToolName; readonly radial: number }
}

/** Whether a reading says where the groove now under the tool is. A row of balls says nothing of it. */
export const touchesGroove = ({ kind }: Pick<Reading, 'kind'>): boolean => kind !== 'ball-row'

/** Two balls touch, whatever the groove: an opening takes three in place. Derived here. */
export const FEWEST_IN_PLACE = 3

/** The readings of all states, the earliest first. */
export const allReadings = ({
  earlier,
  readings,
}: {
  readonly earlier: readonly EarlierState[]
  readonly readings: readonly Reading[]
}): readonly Reading[] => [...earlier.flatMap((state) => state.readings), ...readings]

/** Whether an inner ring was found to bind: the latest trial counts. */
export const binds = (readings: readonly Reading[]): boolean =>
  readings.findLast(({ kind }) => kind === 'binds' || kind === 'radial-play')?.kind === 'binds'

/** Whether the last ball is in, by the latest reading on it. */
export function lastBallWord(readings: readonly Reading[]): 'in' | 'out' | undefined {
  for (let index = readings.length - 1; index >= 0; index--) {
    switch (readings[index]?.kind) {
      case 'ball-gap':
      case 'last-ball-in':
        return 'in'
      case 'last-ball-opening':
      case 'last-ball-refused':
        return 'out'
    }
  }
  return undefined
}
