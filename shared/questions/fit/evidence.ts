import { type ReadingError, readingDeviation } from '#shared/statistics/likelihood.ts'
import { BINDING_DEVIATION } from './defaults.ts'
import { type EarlierState, lastBallWord, type Reading } from './reading.ts'
import { gapOf, pitchRadius } from './ring-law.ts'
import type { Subject } from './subject.ts'
import { insideBalls, type Place, playOf } from './unknowns.ts'

/*
 * Readings as the statistics see them. A figure has a true value behind it, an error of the hand and of the rule, and what the
 * scatter of single balls adds. Whatever says yes or no compares a value with 0. The word on the last ball compares a gap with
 * the threshold at which it goes in, which is one and the same for all words on one ring.
 */

interface OfState {
  /** The state of the groove: 0 is the earliest. */
  readonly state: number
  /** Its place among the readings of that state. */
  readonly index: number
}

interface FigureEvidence extends OfState {
  readonly says: 'figure'
  readonly truth: (place: Place) => number
  /** The same without what bends it to 0, so that it has a slope everywhere. */
  readonly unbent?: (place: Place) => number
  readonly value: number
  readonly error: ReadingError
  /** The error that single balls add, over their scatter. */
  readonly perScatter: number
}

interface ComparisonEvidence extends OfState {
  readonly says: 'above'
  /** Above 0 where the reading is true. */
  readonly truth: (place: Place) => number
  /** Standard uncertainty of the comparison. */
  readonly deviation: number
}

interface WordEvidence extends OfState {
  readonly says: 'word'
  readonly isIn: boolean
  /** The gap that the ball met. */
  readonly truth: (place: Place) => number
}

export type Evidence = FigureEvidence | ComparisonEvidence | WordEvidence

/** The evidence of all states in order, the present one last. */
export function evidenceOf(
  subject: Subject,
  earlier: readonly EarlierState[],
  readings: readonly Reading[],
): readonly Evidence[] {
  const states = [...earlier.map((state) => state.readings), readings]
  return states.flatMap((read, state) => {
    const counted = withoutRepeats(read)
    const latest = lastBallWord(read)
    const figures = counted.flatMap(({ reading, index }): readonly Evidence[] => {
      const found = figureOrComparison(subject, reading, { state, index })
      return found === undefined ? [] : [found]
    })
    return latest === undefined ? figures : [...figures, ...wordOf(subject, read, latest, state)]
  })
}

/**
 * The same figure read again off the same graduation says nothing new: whoever read 1.5 reads 1.5. Where repeated readings of one
 * kind differ, each counts, for then the hand's error is seen to be at work.
 */
function withoutRepeats(
  readings: readonly Reading[],
): readonly { readonly reading: Reading; readonly index: number }[] {
  const all = readings.map((reading, index) => ({ reading, index }))
  return all.filter(({ reading, index }) => {
    const like = all.filter((other) => isAlike(other.reading, reading))
    const first = like[0]
    if (first === undefined || first.index === index) return true
    return like.some((other) => figureOf(other.reading) !== figureOf(reading))
  })
}

/** Readings of one kind and graduation; those that are not figures are alike only where they say the same. */
function isAlike(one: Reading, other: Reading): boolean {
  if (one.kind !== other.kind) return false
  if (one.kind === 'last-ball-opening' && other.kind === one.kind && one.ballsLeftOut !== other.ballsLeftOut)
    return false
  if (one.kind === 'ball-row' && other.kind === one.kind && one.count !== other.count) return false
  if (one.kind === 'plug' && other.kind === 'plug')
    return one.result === other.result && one.diameter === other.diameter
  if ('error' in one && 'error' in other)
    return one.error.graduation > 0 && one.error.graduation === other.error.graduation
  return true
}

const figureOf = (reading: Reading): number | undefined => ('value' in reading ? reading.value : undefined)

function figureOrComparison(
  subject: Subject,
  reading: Reading,
  of: OfState,
): FigureEvidence | ComparisonEvidence | undefined {
  const { balls, outer } = subject
  const { count } = balls
  const figure = (
    { value, error }: { readonly value: number; readonly error: ReadingError },
    truth: FigureEvidence['truth'],
    perScatter = 0,
  ): FigureEvidence => ({ ...of, says: 'figure', truth, value, error, perScatter })
  switch (reading.kind) {
    case 'ball-gap': {
      const gap = (place: Place): number => gapOf(pitchRadius(outer.seat, place.outer, place.mean), place.mean, count)
      return figure(reading, (place) => gap(place) + place.hand, balls.gapDeviation)
    }
    case 'last-ball-opening':
      return figure(
        reading,
        (place) => openingOf(subject, place, reading.ballsLeftOut) + place.hand,
        balls.gapDeviation,
      )
    case 'plug': {
      const { diameter, result, error } = reading
      const off = (place: Place): number => insideBalls(subject, place) - diameter
      if (result === 'snug') return figure({ value: diameter, error }, (place) => off(place) + diameter)
      const truth = result === 'enters' ? off : (place: Place) => -off(place)
      return { ...of, says: 'above', truth, deviation: readingDeviation(error) }
    }
    case 'groove-bottom-diameter':
      return figure(reading, (place) => 2 * Math.abs(place.cut))
    case 'groove-depth': {
      const land = reading.landDiameter / 2
      return figure(reading, subject.cuts === 'outer' ? (place) => place.cut - land : (place) => place.cut + land)
    }
    case 'ball-row': {
      const perScatter = reading.count * Math.sqrt(Math.abs(1 / reading.count - 1 / count))
      return figure(reading, (place) => reading.count * place.mean + place.hand, perScatter)
    }
    case 'radial-play': {
      if (subject.cuts !== 'inner') return undefined
      const unbent = (place: Place): number => playOf(subject, place)
      // Play that was read is there; only a reading of none may be of a ring that binds.
      const isThere = reading.value > reading.error.standardUncertainty
      return { ...figure(reading, isThere ? unbent : (place) => Math.max(0, unbent(place))), unbent }
    }
    case 'binds':
      if (subject.cuts !== 'inner') return undefined
      return { ...of, says: 'above', truth: (place) => -playOf(subject, place), deviation: BINDING_DEVIATION }
    case 'last-ball-in':
    case 'last-ball-refused':
      return undefined
    default:
      return reading satisfies never
  }
}

/** The opening that is left where so many balls stay out: it is that of the others, whose mean is not the ring's. */
export function openingOf({ balls: { count }, outer }: Subject, place: Place, out: number): number {
  const left = count - out
  const others = place.mean - (place.scatter * place.leftOut * Math.sqrt((out * left) / count)) / left
  return gapOf(pitchRadius(outer.seat, place.outer, others), others, left)
}

/** The latest word on the last ball. However many are left out, the last of them does not go in. */
function wordOf(
  { balls, outer }: Subject,
  readings: readonly Reading[],
  word: 'in' | 'out',
  state: number,
): readonly WordEvidence[] {
  const kinds = word === 'in' ? ['ball-gap', 'last-ball-in'] : ['last-ball-opening', 'last-ball-refused']
  return [
    {
      state,
      index: readings.findLastIndex(({ kind }) => kinds.includes(kind)),
      says: 'word',
      isIn: word === 'in',
      truth: (place) => gapOf(pitchRadius(outer.seat, place.outer, place.mean), place.mean, balls.count),
    },
  ]
}
