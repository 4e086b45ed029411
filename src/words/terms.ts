import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'

/** A noun, in the singular and in the plural. */
interface Noun {
  readonly one: string
  readonly many: string
}

/**
 * The words for the parts and sizes of an arrangement. A sentence that is true of several arrangements takes its words from
 * here; one that is true of a single arrangement is an entry of its own. No sentence is made by rewriting another.
 */
export interface Terms {
  /** `radial bearing`, `turntable`, … */
  readonly bearing: string
  /** The same in the plural: `turntables`. */
  readonly bearings: string
  /** The name of the pitch diameter in the table of sizes. */
  readonly pitchDiameter: string
  /** The raceway next to the bore: `the inner ring's groove`. */
  readonly innerRaceway: string
  /** The circle that is cut to set the gap: `the groove bottom of the outer ring`. */
  readonly gapCircle: string
  /** Places of the outer and the inner wall of wood: `behind the outer ring's groove`. */
  readonly outerWall: string
  readonly innerWall: string
  /** The gap between the rings: `land gap`. */
  readonly landGap: string
  /** The part that must fit inside the elements: `an inner ring`. */
  readonly inside: string
  /** The rolling element. */
  readonly element: Noun
  /** The groove or track in which it rolls. */
  readonly raceway: Noun
  /** The part with the raceway. */
  readonly part: Noun
  /** The line on which a size of the raceway is measured: `across the bottoms of the groove`. */
  readonly across: string
  /** Which size of a raceway is measured, after `measures 76.9 mm`: `across the bottoms`. */
  readonly acrossIt: string
  /** The part that is not lost with one that is cut too far. */
  readonly uncutMate: string
  /** The inner ring's raceway, cut further than wanted. */
  readonly innerTooFar: string
  /** Cut further than wanted, and less far. */
  readonly tooFar: string
  readonly further: string
  readonly lessFar: string
  /** The size that a cut changes, after a figure: `0.4 mm of depth`. */
  readonly ofCut: string
  /** The second figure of the bearing, beside the gap. */
  readonly play: string
  /** How the play is measured, where not from side to side. */
  readonly readPlay?: string
  /** The gap that the elements of a full ring leave, all pushed together. */
  readonly gap: string
  /** The size of the raceway that a cut changes: `depth`. */
  readonly cutSize: string
  /** Follows a radial figure of a raceway that is measured across: `0.1 mm all round`. Begins with a space, or is empty. */
  readonly radially: string
  /** The parts that the elements rub on as they roll: `one another`. */
  readonly rubsOn: string
}

const BALL: Noun = { one: 'ball', many: 'balls' }
const GROOVE: Noun = { one: 'groove', many: 'grooves' }
const RING: Noun = { one: 'ring', many: 'rings' }

const GROOVED_RINGS = {
  element: BALL,
  raceway: GROOVE,
  part: RING,
  across: 'across the bottoms of the groove',
  acrossIt: 'across the bottoms',
  innerTooFar: 'too deep',
  uncutMate: 'an inner ring that is not cut yet',
  tooFar: 'too deep',
  further: 'deeper',
  lessFar: 'shallower',
  ofCut: 'of depth',
  play: 'play',
  pitchDiameter: 'pitch diameter',
  innerRaceway: "the inner ring's groove",
  gapCircle: 'the groove bottom of the outer ring',
  outerWall: "behind the outer ring's groove",
  innerWall: "between the bore and the inner ring's groove",
  landGap: 'land gap',
  inside: 'an inner ring',
  gap: 'ball gap',
  cutSize: 'depth',
  radially: '',
  rubsOn: 'one another',
} as const

export const TERMS: Readonly<Record<ArrangementName, Terms>> = {
  radial: { ...GROOVED_RINGS, bearing: 'radial bearing', bearings: 'radial bearings' },
  caged: {
    ...GROOVED_RINGS,
    bearing: 'caged bearing',
    bearings: 'caged bearings',
    gap: 'space between neighbouring balls',
    readPlay:
      'Measure the play on three balls, a third of a turn apart: push the inner ring towards one of them and straight away, and divide the whole travel by 1.5.',
    rubsOn: 'the cage',
  },
  roller: {
    bearing: 'roller bearing',
    bearings: 'roller bearings',
    pitchDiameter: 'pitch diameter',
    innerRaceway: "the inner ring's track",
    gapCircle: 'the track of the outer ring',
    outerWall: "behind the outer ring's track",
    innerWall: "between the bore and the inner ring's track",
    landGap: 'space between the tracks',
    inside: 'an inner ring',
    element: { one: 'roller', many: 'rollers' },
    raceway: { one: 'track', many: 'tracks' },
    part: RING,
    across: 'across the track',
    acrossIt: 'across',
    innerTooFar: 'too small',
    uncutMate: 'an inner ring that is not cut yet',
    tooFar: 'too wide',
    further: 'wider',
    lessFar: 'narrower',
    ofCut: 'all round',
    play: 'play',
    gap: 'roller gap',
    cutSize: 'diameter',
    radially: ' all round',
    rubsOn: 'one another',
  },
  thrust: {
    bearing: 'turntable',
    bearings: 'turntables',
    pitchDiameter: 'plates, diameter of the groove circle (pitch diameter)',
    innerRaceway: 'the groove',
    gapCircle: 'the circle of the groove',
    outerWall: 'outside the groove',
    innerWall: 'between the bore and the groove',
    landGap: 'space between the plates',
    inside: 'a bore inside the groove',
    element: BALL,
    raceway: GROOVE,
    part: { one: 'plate', many: 'plates' },
    across: "across the groove's circle",
    acrossIt: 'across its deepest circle',
    innerTooFar: 'too deep',
    uncutMate: 'the other plate if it is not cut yet',
    tooFar: 'too far out',
    further: 'further out',
    lessFar: 'further in',
    ofCut: 'further out',
    play: 'space between the plates',
    gap: 'ball gap',
    cutSize: 'circle',
    radially: '',
    rubsOn: 'one another',
  },
}

const isArrangement = (name: string): name is ArrangementName => Object.hasOwn(TERMS, name)

/**
 * The terms of a design's arrangement.
 *
 * @throws RangeError for an arrangement that there is not
 */
export function termsOf({ arrangement = nameOf({}) }: { readonly arrangement?: string }): Terms {
  if (!isArrangement(arrangement))
    throw new RangeError(`arrangement must be one of ${Object.keys(TERMS)}, got ${arrangement}`)
  return TERMS[arrangement]
}

export const WOODEN_PARTS: Readonly<Record<WoodPart, string>> = {
  outerRing: 'outer ring',
  innerRing: 'inner ring',
  plates: 'plates',
  cage: 'cage',
}
