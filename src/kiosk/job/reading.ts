import { type ArrangementName, traitsOf } from '#shared/bearing/arrangements.ts'
import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ReadingKind, ToolName } from '#shared/questions/fit/reading.ts'

/** A reading as it was typed. What each kind has is in `READING_FIELDS`. */
export interface Reading {
  readonly kind: ReadingKind
  readonly value?: string
  /** The second figure: balls left out, the diameter of the land, or the number of balls in a row. */
  readonly second?: string
  readonly result?: PlugFit
}

/** A cut that followed some readings. */
export interface Cut {
  readonly with: ToolName
  /** Intended depth, as it was typed. */
  readonly radial: string
  readonly strokes?: number
}

/** The groove between two cuts: its readings, and the cut that ended it. The present state has none. */
export interface GrooveState {
  readonly readings: readonly Reading[]
  readonly cut?: Cut
}

export const PLUG_FITS = ['enters', 'snug', 'refuses'] as const
export type PlugFit = (typeof PLUG_FITS)[number]

interface ReadingFields {
  /** Its letter in an address. */
  readonly letter: string
  /** The name of its length in a request; a reading without a figure has none. */
  readonly value?: string
  readonly second?: {
    readonly name: 'ballsLeftOut' | 'landDiameter' | 'count'
    readonly kind: 'count' | 'length'
    readonly usual?: string
  }
  readonly hasResult?: true
  readonly rings: readonly FittedRing[]
  /** Says where the balls run, so it serves the inner ring too. */
  readonly ofBalls?: true
}

const BOTH: readonly FittedRing[] = ['outer', 'inner']

export const READING_FIELDS: Readonly<Record<ReadingKind, ReadingFields>> = {
  'last-ball-opening': {
    letter: 'o',
    value: 'value',
    second: { name: 'ballsLeftOut', kind: 'count', usual: '1' },
    rings: ['outer'],
    ofBalls: true,
  },
  'ball-gap': { letter: 'g', value: 'value', rings: ['outer'], ofBalls: true },
  'last-ball-refused': { letter: 'r', rings: ['outer'] },
  'last-ball-in': { letter: 'i', rings: ['outer'], ofBalls: true },
  'radial-play': { letter: 'y', value: 'value', rings: ['inner'] },
  binds: { letter: 'b', rings: ['inner'] },
  'groove-bottom-diameter': { letter: 'd', value: 'value', rings: BOTH },
  'groove-depth': { letter: 'h', value: 'value', second: { name: 'landDiameter', kind: 'length' }, rings: BOTH },
  plug: { letter: 'p', value: 'diameter', hasResult: true, rings: BOTH, ofBalls: true },
  'ball-row': { letter: 'w', value: 'value', second: { name: 'count', kind: 'count' }, rings: BOTH, ofBalls: true },
}

export const READING_KINDS = Object.keys(READING_FIELDS) as readonly ReadingKind[]

/** Kinds that tell something of a ring, or of plates. A depth is measured from a land, which a track and a plate do not have. */
export function kindsOf(ring: FittedRing, arrangement: ArrangementName): readonly ReadingKind[] {
  const { members, raceway } = traitsOf({ arrangement })
  const hasLand = members === 'rings' && raceway === 'groove'
  return READING_KINDS.filter(
    (kind) => READING_FIELDS[kind].rings.includes(ring) && (hasLand || kind !== 'groove-depth'),
  )
}

/** How many readings there are at all states together. */
export const readingsIn = (states: readonly GrooveState[]): number =>
  states.reduce((sum, { readings }) => sum + readings.length, 0)
