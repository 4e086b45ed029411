import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'

/** A noun, in the singular and in the plural. */
interface Noun {
  readonly one: string
  readonly many: string
}

/**
 * The words in which an arrangement is spoken of. A sentence that is true of several arrangements takes them from here; one
 * that is true of a single arrangement is an entry of its own. No sentence is made by rewriting another.
 */
export interface Terms {
  /** `radial bearing`, `turntable`, … */
  readonly bearing: string
  /** What rolls. */
  readonly element: Noun
  /** What it rolls in. */
  readonly raceway: Noun
  /** What has the raceway. */
  readonly part: Noun
  /** Where a size of the raceway is measured: `across the bottoms of the groove`. */
  readonly across: string
  /** Cut further than wanted, and less far. */
  readonly tooFar: string
  readonly further: string
  readonly lessFar: string
  /** What a cut takes off, after a figure: `0.4 mm of depth`. */
  readonly ofCut: string
  /** The second figure of the bearing, beside the gap. */
  readonly play: string
}

const BALL: Noun = { one: 'ball', many: 'balls' }
const GROOVE: Noun = { one: 'groove', many: 'grooves' }
const RING: Noun = { one: 'ring', many: 'rings' }

const GROOVED_RINGS = {
  element: BALL,
  raceway: GROOVE,
  part: RING,
  across: 'across the bottoms of the groove',
  tooFar: 'too deep',
  further: 'deeper',
  lessFar: 'shallower',
  ofCut: 'of depth',
  play: 'play',
} as const

export const TERMS: Readonly<Record<ArrangementName, Terms>> = {
  radial: { ...GROOVED_RINGS, bearing: 'radial bearing' },
  caged: { ...GROOVED_RINGS, bearing: 'caged bearing' },
  roller: {
    bearing: 'roller bearing',
    element: { one: 'roller', many: 'rollers' },
    raceway: { one: 'track', many: 'tracks' },
    part: RING,
    across: 'across the track',
    tooFar: 'too wide',
    further: 'wider',
    lessFar: 'narrower',
    ofCut: 'all round',
    play: 'play',
  },
  thrust: {
    bearing: 'turntable',
    element: BALL,
    raceway: GROOVE,
    part: { one: 'plate', many: 'plates' },
    across: "across the groove's circle",
    tooFar: 'too far out',
    further: 'further out',
    lessFar: 'further in',
    ofCut: 'off the outer flank',
    play: 'space between the plates',
  },
}

/**
 * The terms of a design's arrangement.
 *
 * @throws RangeError for an arrangement that there is not
 */
export function termsOf({ arrangement = nameOf({}) }: { readonly arrangement?: string }): Terms {
  const terms = Object.entries(TERMS).find(([name]) => name === arrangement)?.[1]
  if (terms === undefined) throw new RangeError(`arrangement must be one of ${Object.keys(TERMS)}, got ${arrangement}`)
  return terms
}
