import { CONFIDENCE } from '#shared/bearing/plug-reading.ts'
import * as defaults from './defaults.ts'
import type { Chances } from './figures.ts'
import { bestCut, type Cut, riskNow, type ToolAtHand } from './next-cut.ts'
import type { NextReading, Offer, ReadingReason } from './next-reading.ts'
import { allReadings, binds, type EarlierState, lastBallWord, type Reading, touchesGroove } from './reading.ts'
import type { Room } from './room.ts'
import type { Target } from './subject.ts'

type StopReason = 'in-band' | 'too-deep' | 'cannot-be-told'
export type FitState = 'unread' | 'more-to-remove' | 'in-band' | 'too-deep' | 'unclear'

export type Decision =
  | { readonly action: 'cut'; readonly cut: Cut }
  | { readonly action: 'measure'; readonly nextReading: NextReading }
  | { readonly action: 'stop'; readonly reason: StopReason }

/** All that a decision rests on. */
export interface DecisionInput {
  readonly cuts: 'outer' | 'inner'
  readonly chances: Chances
  readonly target: Target
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  /** Whether the readings of now fit one another and the bearing. */
  readonly agrees: boolean
  /** Whether a row of balls is among those that do not. */
  readonly isRowDoubted: boolean
  readonly tools: readonly ToolAtHand[]
  readonly room: Room
  /** Called only if a reading may be worth its trouble; may be called again. */
  readonly offers: () => readonly Offer[]
}

/** Whether the last ball goes in now: a groove that took it and was cut deeper still takes it. */
export function wordNow({ readings, earlier }: Pick<DecisionInput, 'readings' | 'earlier'>): 'in' | 'out' | undefined {
  const now = lastBallWord(readings)
  if (now !== undefined) return now
  const before = earlier.map((state) => lastBallWord(state.readings)).findLast((word) => word !== undefined)
  return before === 'in' ? 'in' : undefined
}

/** Whether it may be called in band: never against the latest word. */
const mayPass = (input: DecisionInput): boolean =>
  input.cuts === 'outer' ? wordNow(input) === 'in' : playKnown(input) && !binds(input.readings)

/** An inner ring must have been tried on, or its groove measured. */
const playKnown = (input: DecisionInput): boolean =>
  allReadings(input).some(
    ({ kind }) => kind === 'radial-play' || kind === 'groove-bottom-diameter' || kind === 'groove-depth',
  )

/**
 * Whether it may be called too deep: only by a figure of the groove or of the gap. A plug that enters does not show by how much, and
 * what can be done about it hangs on that.
 */
const mayCondemn = (input: DecisionInput): boolean =>
  allReadings(input).some(
    ({ kind }) => touchesGroove({ kind }) && !WORDS.includes(kind) && kind !== 'binds' && kind !== 'plug',
  )

/** Whether a reading says where the groove that is cut is: of an inner ring, what tells where the balls run does not. */
export const touchesCut = (reading: Reading, cuts: DecisionInput['cuts']): boolean =>
  cuts === 'outer' ? touchesGroove(reading) : OF_INNER_GROOVE.includes(reading.kind)
const OF_INNER_GROOVE: readonly Reading['kind'][] = ['radial-play', 'binds', 'groove-bottom-diameter', 'groove-depth']

/** How the groove stands: each word only at its confidence. */
export function stateOf(input: DecisionInput): FitState {
  const { chances } = input
  if (!allReadings(input).some((reading) => touchesCut(reading, input.cuts))) return 'unread'
  if (chances.tooDeep >= CONFIDENCE && mayCondemn(input)) return 'too-deep'
  if (chances.inBand >= CONFIDENCE && mayPass(input)) return 'in-band'
  return chances.tooTight >= CONFIDENCE ? 'more-to-remove' : 'unclear'
}

/** Readings of a figure that tell how deep to cut, rather than yes or no. */
const hasFigure = (readings: readonly Reading[]): boolean =>
  readings.some(({ kind }) => touchesGroove({ kind }) && !WORDS.includes(kind) && kind !== 'binds')
const WORDS: readonly Reading['kind'][] = ['last-ball-refused', 'last-ball-in']

/** Readings of the very figure that is to come in band. */
const FIGURES: Readonly<Record<DecisionInput['cuts'], readonly Reading['kind'][]>> = {
  outer: ['ball-gap', 'last-ball-opening'],
  inner: ['radial-play'],
}
const readsTheGap = (readings: readonly Reading[], cuts: DecisionInput['cuts']): boolean =>
  readings.some(({ kind }) => FIGURES[cuts].includes(kind))

/** Whether a figure was read that shows how much more to cut: of an inner ring, that of its groove does as well. */
export const readsHowMuch = (readings: readonly Reading[], cuts: DecisionInput['cuts']): boolean =>
  cuts === 'outer'
    ? readsTheGap(readings, cuts)
    : readings.some(({ kind }) => kind !== 'binds' && OF_INNER_GROOVE.includes(kind))

/**
 * A cut that takes less than this of what remains of a shallow groove, and gains less than that, is not worth a check.
 * Derived here, from simulated rings.
 */
const LEAST_SHARE = 0.1
const LEAST_GAIN = 0.15
/** Without a reading of the figure itself a cut must be at least so good, or cover so much of what remains. */
const GOOD_BLIND = 0.45
const FAR_BLIND = 0.5

/** Cut, measure or stop. */
export function decide(input: DecisionInput): Decision {
  const { cuts, readings, earlier, chances, target, tools } = input
  const state = stateOf(input)
  if (state === 'too-deep' || state === 'in-band') return { action: 'stop', reason: state }
  const made = readings.length + earlier.reduce((sum, each) => sum + Math.max(1, each.readings.length), 0)
  const isOver = made >= defaults.MOST_CHECKS
  // Balls of another size make another bearing: no reading of the groove is made with them.
  if (state === 'unread') return measure(input, input.isRowDoubted ? 'readings-disagree' : 'groove-unread', false)
  // A ring that binds has no play to read: what its own groove measured before will do.
  const isFigured = cuts === 'outer' ? hasFigure(readings) : readsHowMuch(allReadings(input), cuts)
  const isTried = readings.some(({ kind }) => touchesGroove({ kind }) && !(cuts === 'inner' && WORDS.includes(kind)))
  if (!isFigured || !isTried) {
    const isRefused = readings.some(({ kind }) => kind === 'last-ball-refused' || kind === 'binds')
    const why = isRefused ? 'refusal-has-no-figure' : 'groove-unread'
    return measure(input, why, isOver)
  }
  const readAgain = Math.max(0, readings.filter(touchesGroove).length - 1)
  const late = Math.max(0, made - PATIENT)
  const cut = bestCut(input.room, tools, riskNow(target.overshootRisk, readAgain + late))
  // What one wrong figure makes of a groove may lie far beyond its end: nothing is cut by it.
  if (cut !== undefined && !input.agrees) return measure(input, 'readings-disagree', isOver)
  if (cut !== undefined && !isOver && isWorthIt(cut, input)) return { action: 'cut', cut }
  const isUnsaid = cuts === 'outer' && wordNow(input) === undefined
  return measure(
    input,
    isUnsaid ? 'no-word-on-last-ball' : verdictNear(chances) ? 'verdict-uncertain' : 'cut-too-risky',
    isOver,
  )
}

/**
 * From so many checks on, each counts as one that taught nothing: cuts may go further, so that there is an end.
 * Derived here, from simulated rings.
 */
const PATIENT = 6

const verdictNear = ({ inBand, tooDeep }: Chances): boolean => inBand + tooDeep > 0.5

/**
 * A plug in the balls' circle is worth its trouble where it leaves so little of an uncertainty that fills the band.
 * Derived here, from simulated rings.
 */
const TEACHES_MUCH = 0.5

function isWorthIt(cut: Cut, { readings, cuts, chances, target, room, offers }: DecisionInput): boolean {
  if (cuts === 'inner' && cut.good < GOOD_BLIND) {
    const best = offers()[0]
    const fillsBand = best !== undefined && best.uncertaintyNow > (target.max - target.min) / 2
    if (best?.kind === 'plug' && fillsBand && best.uncertaintyAfter < TEACHES_MUCH * best.uncertaintyNow) return false
  }
  const share = cut.radial / Math.max(room.remaining, 1e-9)
  const isBlind = !readsTheGap(readings, cuts) && cut.good < GOOD_BLIND && share < FAR_BLIND
  if (isBlind && offers().some(({ kind }) => FIGURES[cuts].includes(kind))) return false
  const isShort = chances.tooTight > 0.5
  return (isShort && share >= LEAST_SHARE) || cut.good - chances.inBand >= LEAST_GAIN
}

/** Why a reading is worth making, however little it teaches: nothing else says what it says. */
const MISSING: readonly ReadingReason[] = [
  'groove-unread',
  'no-word-on-last-ball',
  'refusal-has-no-figure',
  'readings-disagree',
]

/** A reading that leaves more than this of the uncertainty teaches nothing. Derived here, from simulated rings. */
const TEACHES_NOTHING = 0.985

/** Asks for the reading that teaches most, or stops where none would teach anything, or enough were made. */
function measure(input: DecisionInput, why: ReadingReason, isOver: boolean): Decision {
  const { readings, chances } = input
  // A groove that nobody has looked at is never given up.
  const isUnread = stateOf(input) === 'unread'
  const here = isUnread ? 0 : readings.filter(touchesGroove).length
  // Where readings do not fit, one more of their kind would not tell which is wrong.
  const isAnother = ({ kind }: Offer): boolean =>
    input.isRowDoubted ? kind === 'ball-row' : !readings.some((each) => each.kind === kind)
  const best = (why === 'readings-disagree' ? input.offers().find(isAnother) : undefined) ?? input.offers()[0]
  const isNew = MISSING.includes(why)
  const least = isNew ? 1 : TEACHES_NOTHING
  const teaches = best !== undefined && best.uncertaintyAfter < least * best.uncertaintyNow
  if (best === undefined || isOver || here >= defaults.MOST_READINGS_HERE || !teaches) {
    return { action: 'stop', reason: 'cannot-be-told' }
  }
  const decides =
    chances.tooTight > 0.5
      ? 'how-deep-to-cut'
      : chances.tooDeep > chances.inBand
        ? 'whether-it-is-too-deep'
        : 'whether-it-is-finished'
  return { action: 'measure', nextReading: { ...best, why, decides } }
}
