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
  /** What the elements of a full ring leave, all pushed together. */
  readonly gap: string
  /** The size of the raceway that a cut changes: `depth`. */
  readonly cutSize: string
  /** Follows a radial figure of a raceway that is measured across: `0.1 mm all round`. Begins with a space, or is empty. */
  readonly radially: string
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
  gap: 'ball gap',
  cutSize: 'depth',
  radially: '',
} as const

export const TERMS: Readonly<Record<ArrangementName, Terms>> = {
  radial: { ...GROOVED_RINGS, bearing: 'radial bearing' },
  caged: { ...GROOVED_RINGS, bearing: 'caged bearing', gap: 'space between neighbouring balls' },
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
    gap: 'roller gap',
    cutSize: 'diameter',
    radially: ' all round',
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
    gap: 'ball gap',
    cutSize: 'circle',
    radially: '',
  },
}

export const termsOf = (design: { readonly arrangement?: ArrangementName }): Terms => TERMS[nameOf(design)]
