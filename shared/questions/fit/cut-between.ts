import { readingDeviation } from '#shared/statistics/likelihood.ts'
import { touchesCut } from './decision.ts'
import { type Evidence, evidenceOf } from './evidence.ts'
import type { Reading } from './reading.ts'
import type { Subject } from './subject.ts'
import { emptyPlace, type Place } from './unknowns.ts'

/** A reading shows the groove within so many deviations of its error: 19 times in 20. Common practice, no source. */
const DEVIATIONS = 2
/** Grooves are looked at so far to either side of the design, in depths of the groove, and told apart to one part in 2 to this power. */
const REACH = 2
const HALVINGS = 30

/** How far the cut may have gone: a cut adds to it. */
interface Range {
  readonly from: number
  readonly to: number
}

/**
 * Whether a cut that nobody entered explains readings of one state that do not fit: a later one shows a deeper groove than one
 * before it, and none a shallower.
 */
export function isCutBetween(subject: Subject, readings: readonly Reading[]): boolean {
  const ranges = readings.filter((reading) => touchesCut(reading, subject.cuts)).map((each) => rangeOf(subject, each))
  const pairs = ranges.flatMap((early, index) => ranges.slice(index + 1).map((late) => ({ early, late })))
  return (
    pairs.some(({ early, late }) => late.from > early.to) && pairs.every(({ early, late }) => late.to >= early.from)
  )
}

function rangeOf(subject: Subject, reading: Reading): Range {
  const all = evidenceOf(subject, [], [reading]).map((each) => rangeOfEvidence(subject, each))
  return { from: Math.max(...all.map(({ from }) => from)), to: Math.min(...all.map(({ to }) => to)) }
}

function rangeOfEvidence(subject: Subject, evidence: Evidence): Range {
  const { truth } = evidence
  if (evidence.says === 'figure') {
    const error = DEVIATIONS * Math.hypot(readingDeviation(evidence.error), evidence.perScatter * subject.balls.scatter)
    const ends = [-error, error].map((off) => cutWhere(subject, truth, evidence.value + off)) as [number, number]
    return { from: Math.min(...ends), to: Math.max(...ends) }
  }
  const least = cutWhere(subject, truth, 0)
  const isDeeper = evidence.says === 'word' ? evidence.isIn : truth(placeAt(subject, least + 1)) > 0
  if (isDeeper) return { from: least, to: Number.POSITIVE_INFINITY }
  const most =
    evidence.says === 'word' && subject.cuts === 'outer' ? cutWhere(subject, truth, subject.assemblyGap) : least
  return { from: Number.NEGATIVE_INFINITY, to: most }
}

/** How far the cut went where a figure that only rises or only falls with it has this value. */
function cutWhere(subject: Subject, truth: (place: Place) => number, value: number): number {
  const [middle, depth] =
    subject.cuts === 'outer'
      ? [subject.outer.x, subject.outer.depth]
      : [-subject.inner.bottomRadius, subject.inner.depth]
  let [low, high] = [middle - REACH * depth, middle + REACH * depth]
  const rises = truth(placeAt(subject, high)) > truth(placeAt(subject, low))
  for (let halving = 0; halving < HALVINGS; halving++) {
    const at = (low + high) / 2
    if (truth(placeAt(subject, at)) < value === rises) low = at
    else high = at
  }
  return (low + high) / 2
}

function placeAt(subject: Subject, cut: number): Place {
  const { balls, outer } = subject
  return {
    ...emptyPlace(),
    mean: balls.diameter,
    scatter: balls.scatter,
    cut,
    outer: subject.cuts === 'outer' ? cut : outer.x,
  }
}
