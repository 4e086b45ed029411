import { type DesignInput, design } from '#shared/bearing/arrangements.ts'
import { ABRASIVE, SHARP_TOOL } from '#shared/making/tool-error.ts'
import { fittedOf } from '#shared/questions/fit/arrangements/all.ts'
import { BINDING_DEVIATION } from '#shared/questions/fit/defaults.ts'
import { type Fit, fitOf } from '#shared/questions/fit/fit.ts'
import type { FitSetup, FittedPart } from '#shared/questions/fit/fit-setup.ts'
import type { NextReading } from '#shared/questions/fit/next-reading.ts'
import type { EarlierState, Reading, ReadingKind } from '#shared/questions/fit/reading.ts'
import type { Subject, Target } from '#shared/questions/fit/subject.ts'
import type { Tools } from '#shared/questions/fit/unknowns.ts'
import type { Result } from '#shared/result.ts'
import type { ReadingError } from '#shared/statistics/likelihood.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from './chance.ts'

/*
 * Simulated makers of many habits, each with a ring under the tool: balls uneven, cuts that wander, rules that round, hands that
 * misread. The rings are closed by coordinates, ball by ball, with no code of the service. All sizes in millimetres; bearings
 * and makers are invented.
 */

export const RULE: ReadingError = { graduation: 0.5, standardUncertainty: 0.15 }
export const CALIPER: ReadingError = { graduation: 0, standardUncertainty: 0.1 }
export const PLUG: ReadingError = { graduation: 0, standardUncertainty: 0.05 }
export const DIAL: ReadingError = { graduation: 0, standardUncertainty: 0.05 }

export const TOOLS: Tools = { 'sharp-tool': SHARP_TOOL, abrasive: ABRASIVE }

export const errorToCome = (kind: ReadingKind): ReadingError => {
  if (kind === 'groove-bottom-diameter' || kind === 'groove-depth') return CALIPER
  if (kind === 'plug') return PLUG
  return kind === 'radial-play' || kind === 'binds' ? DIAL : RULE
}

export interface Habit {
  readonly name: string
  readonly bearing:
    | 'full'
    | 'five'
    | 'forty'
    | 'edges'
    | 'roller'
    | 'thrust'
    | 'inner'
    | 'inner-tight'
    | 'inner-roller'
    | 'caged'
  /** What is read first at each state. */
  readonly first: 'rule' | 'plug' | 'caliper' | 'row' | 'word' | 'play' | 'binds'
  /** What the marks ask: good rings at the least, and the median of checks at the most, where they differ from the usual. */
  readonly least?: number
  readonly mostChecks?: number
  /** Makes his own reading, whatever he is told to make. */
  readonly isStubborn?: boolean
  /** How far short the groove is at first, over its depth: at least, and at most. */
  readonly startsShortBy?: readonly [number, number]
  readonly toolBias?: number
  readonly handBias?: number
  readonly scatterTimes?: number
}

export const HABITS: readonly Habit[] = [
  { name: 'gap and opening by rule', bearing: 'full', first: 'rule' },
  { name: 'plugs', bearing: 'full', first: 'plug', mostChecks: 6 },
  { name: 'caliper', bearing: 'full', first: 'caliper', mostChecks: 6 },
  { name: 'ball row first', bearing: 'full', first: 'row' },
  { name: 'refusal first', bearing: 'full', first: 'word' },
  { name: 'two to five balls left out', bearing: 'full', first: 'rule', startsShortBy: [0.8, 2.8] },
  { name: 'heavy hand', bearing: 'full', first: 'rule', toolBias: 0.25, least: 0.95 },
  { name: 'light hand', bearing: 'full', first: 'rule', toolBias: -0.2 },
  { name: 'rule read 0.3 mm short', bearing: 'full', first: 'rule', handBias: -0.3, least: 0.95 },
  { name: 'three times the scatter', bearing: 'full', first: 'rule', scatterTimes: 3, least: 0.95 },
  { name: 'five balls', bearing: 'five', first: 'rule' },
  { name: 'forty balls', bearing: 'forty', first: 'rule' },
  { name: 'balls on edges', bearing: 'edges', first: 'rule' },
  { name: 'rollers', bearing: 'roller', first: 'rule' },
  { name: 'plates', bearing: 'thrust', first: 'rule' },
  // A ring that binds has no play to read: the answer is to measure with a caliper and a plug.
  { name: 'inner ring by play', bearing: 'inner', first: 'play', mostChecks: 6 },
  { name: 'inner ring by caliper', bearing: 'inner', first: 'caliper', mostChecks: 6 },
  { name: 'inner ring by binding', bearing: 'inner', first: 'binds', mostChecks: 6 },
  { name: 'inner ring among rollers', bearing: 'inner-roller', first: 'play', mostChecks: 6 },
  { name: 'inner ring in a cage', bearing: 'caged', first: 'play', mostChecks: 6 },
  // The default play, half that of the others, with a band as narrow as the usual tools can hit: marks of its own.
  { name: 'inner ring of little play', bearing: 'inner-tight', first: 'play', mostChecks: 9, least: 0.95 },
  { name: 'caliper alone', bearing: 'full', first: 'caliper', isStubborn: true },
  { name: 'plugs alone', bearing: 'full', first: 'plug', isStubborn: true },
  { name: 'words alone', bearing: 'full', first: 'word', isStubborn: true },
]

const of = (count: number, diameter: number, standardDeviation: number) => ({
  units: 'mm' as const,
  balls: { count, diameter: mm(diameter), material: 'glass' as const, standardDeviation: mm(standardDeviation) },
  bore: mm(10),
})

function made<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

export interface Bench {
  readonly subject: Subject
  readonly target: Target
  readonly goDiameter: number
  readonly noGoDiameter: number
}

const benches = new Map<Habit['bearing'], Bench>()

/** The bearing of a habit, as fit correction sees it. */
export function benchOf(kind: Habit['bearing']): Bench {
  const known = benches.get(kind)
  if (known !== undefined) return known
  const bench = newBench(kind)
  benches.set(kind, bench)
  return bench
}

/** Play that the usual tools can hit: twice what a design has by default. */
const EASY_PLAY = { radialInternalClearance: mm(0.5) }

/** Each kind of bearing with the defaults of its design, and the part that is cut. */
const BEARINGS: Readonly<Record<Habit['bearing'], readonly [FittedPart, DesignInput, FitSetup['band']?]>> = {
  full: ['outer', of(14, 14, 0.1)],
  five: ['outer', of(5, 20, 0.12)],
  forty: ['outer', of(40, 10, 0.07)],
  edges: ['outer', { ...of(14, 14, 0.1), groove: { conformity: 0.45 } }],
  roller: ['outer', { ...of(14, 14, 0.14), arrangement: 'roller' }],
  thrust: ['plate', { ...of(14, 14, 0.1), arrangement: 'thrust' }],
  inner: ['inner', { ...of(14, 14, 0.1), ...EASY_PLAY }, { aim: 0.5, min: 0.2, max: 1 }],
  'inner-roller': ['inner', { ...of(14, 14, 0.1), ...EASY_PLAY, arrangement: 'roller' }],
  caged: ['inner', { ...of(9, 14, 0.1), arrangement: 'caged' }, { aim: 0.42, min: 0.14, max: 0.8 }],
  'inner-tight': ['inner', of(14, 14, 0.1)],
}

function newBench(kind: Habit['bearing']): Bench {
  const [part, input, asked] = BEARINGS[kind]
  const { bearing } = made(design(input))
  const { subject, band } = made(fittedOf(input).setupOf(bearing, part))
  const { goDiameter, noGoDiameter } = 'gauge' in bearing ? bearing.gauge : { goDiameter: 0, noGoDiameter: 0 }
  return { subject, target: { ...(asked ?? band), overshootRisk: 0.05, finishAllowance: 0 }, goDiameter, noGoDiameter }
}

/** A ring under the tool, as it really is. */
export interface Ring {
  readonly bench: Bench
  readonly balls: readonly number[]
  readonly threshold: number
  outer: number
  inner: number
}

const segment = (a: number, b: number, apart: number): number =>
  Math.acos(Math.min(1, Math.max(-1, (a * a + b * b - apart * apart) / (2 * a * b))))

/** The gap of some balls in their order, by the angles that neighbours subtend; below 0 where they do not close. */
export function trueGap({ bench: { subject }, outer }: Ring, balls: readonly number[]): number {
  const { seat } = subject.outer
  const stand = balls.map((ball) => {
    const radius = ball / 2
    if (seat.on === 'circle') return outer
    if (seat.on === 'bottom') return outer - radius
    const depth = Math.max(0, Math.min(outer - seat.landRadius, seat.arc))
    const half = Math.sqrt(depth * (2 * seat.arc - depth))
    return seat.landRadius - Math.sqrt(Math.max(0, radius * radius - half * half))
  })
  const between = (i: number, j: number): number => {
    const [one, other] = [balls[i] ?? 0, balls[j] ?? 0]
    return seat.on === 'circle' ? Math.sqrt(one * other) : (one + other) / 2
  }
  let angle = 0
  for (let ball = 1; ball < balls.length; ball++)
    angle += segment(stand[ball - 1] ?? 0, stand[ball] ?? 0, between(ball - 1, ball))
  const [first, last] = [stand[0] ?? 0, stand.at(-1) ?? 0]
  const open = 2 * Math.PI - angle
  const touching = between(0, balls.length - 1)
  if (open <= 0) return open * Math.sqrt(first * last) - touching
  return Math.sqrt(first * first + last * last - 2 * first * last * Math.cos(open)) - touching
}

/** The largest disc among the balls: over all three that hold it, the one that clears the others. */
export function trueCircle({ bench: { subject }, outer }: Ring, balls: readonly number[]): number {
  const inward = balls.map((ball) => outer - (subject.outer.seat.on === 'circle' ? ball / 2 : ball))
  const angles = balls.map((_, index) => (2 * Math.PI * index) / balls.length)
  let [a, b] = [0, 0]
  // Steepest ascent by halving steps: the least clearance is concave, so there is no other top.
  const clear = (x: number, y: number): number => {
    let least = Number.POSITIVE_INFINITY
    for (let index = 0; index < inward.length; index++) {
      const reach = (inward[index] ?? 0) + x * Math.cos(angles[index] ?? 0) + y * Math.sin(angles[index] ?? 0)
      if (reach < least) least = reach
    }
    return least
  }
  let best = clear(0, 0)
  for (let step = subject.balls.scatter * 2; step > 1e-4; ) {
    let moved = false
    for (let turn = 0; turn < 12; turn++) {
      const [x, y] = [a + step * Math.cos((Math.PI * turn) / 6), b + step * Math.sin((Math.PI * turn) / 6)]
      const there = clear(x, y)
      if (there > best + 1e-3 * step) {
        best = there
        ;[a, b] = [x, y]
        moved = true
      }
    }
    if (!moved) step /= 2
  }
  return 2 * best
}

const truePlay = (ring: Ring): number => trueCircle(ring, ring.balls) - 2 * ring.inner

interface Outcome {
  readonly isGood: boolean
  readonly isTooDeep: boolean
  readonly reason: string
  readonly checks: number
  /** Each answer on the way. */
  readonly answers: readonly Fit[]
}

/** A maker who is asked so often gives up: no advice may come to that. */
const ENDLESS = 40

/** One ring, from a groove cut short of its depth to where its maker is told to stop. */
function makeRing(seed: number, habit: Habit): Outcome {
  const uniform = uniforms(seed * 7919 + 13)
  const normal = normals(uniform)
  const bench = benchOf(habit.bearing)
  const { subject, target } = bench
  const ring = newRing(habit, bench, normal, uniform)
  const hand = habit.handBias ?? 0
  const rounded = (value: number): number =>
    Math.max(0, Math.round((value + hand + RULE.standardUncertainty * normal()) / RULE.graduation) * RULE.graduation)
  const gapNow = (): number => trueGap(ring, ring.balls)
  const isIn = (): boolean => gapNow() >= ring.threshold
  const opening = (out: number): Reading => ({
    kind: 'last-ball-opening',
    ballsLeftOut: out,
    value: rounded(trueGap(ring, ring.balls.slice(0, ring.balls.length - out))),
    error: RULE,
  })
  const leastOut = (): number => {
    let out = 1
    while (ring.balls.length - out > 3 && trueGap(ring, ring.balls.slice(0, ring.balls.length - out)) < ring.threshold)
      out++
    return out
  }
  const byRule = (): Reading =>
    isIn() ? { kind: 'ball-gap', value: rounded(gapNow()), error: RULE } : opening(leastOut())
  const caliper = (): Reading => ({
    kind: 'groove-bottom-diameter',
    value: 2 * (subject.cuts === 'outer' ? ring.outer : ring.inner) + CALIPER.standardUncertainty * normal(),
    error: CALIPER,
  })
  const plug = (diameter: number): Reading => {
    const felt = trueCircle(ring, ring.balls) + PLUG.standardUncertainty * normal()
    return { kind: 'plug', diameter, result: felt >= diameter ? 'enters' : 'refuses', error: PLUG }
  }
  const row = (): Reading => ({
    kind: 'ball-row',
    count: ring.balls.length,
    value: rounded(ring.balls.reduce((sum, each) => sum + each, 0)),
    error: RULE,
  })
  const word = (): Reading => ({ kind: isIn() ? 'last-ball-in' : 'last-ball-refused' })
  const play = (): Reading => {
    const value = truePlay(ring)
    // Who only feels whether it turns is not sure of the last few hundredths.
    const felt = habit.first === 'binds' ? value + BINDING_DEVIATION * normal() : value
    return felt <= 0
      ? { kind: 'binds' }
      : { kind: 'radial-play', value: Math.max(0, value + DIAL.standardUncertainty * normal()), error: DIAL }
  }
  const first = (isStart: boolean): Reading => {
    switch (habit.first) {
      case 'rule':
        return byRule()
      case 'plug':
        return plug(bench.goDiameter)
      case 'caliper':
        return caliper()
      case 'row':
        return isStart ? row() : byRule()
      case 'word':
        return isStart ? word() : byRule()
      default:
        return play()
    }
  }
  const asked = ({ kind, ballsLeftOut }: NextReading): Reading => {
    if (habit.isStubborn === true)
      return habit.first === 'plug' ? plug(bench.noGoDiameter) : habit.first === 'word' ? word() : caliper()
    switch (kind) {
      case 'ball-gap':
        return isIn() ? { kind, value: rounded(gapNow()), error: RULE } : word()
      case 'last-ball-opening':
        return isIn() || leastOut() > (ballsLeftOut ?? 1) ? word() : opening(ballsLeftOut ?? 1)
      case 'groove-bottom-diameter':
        return caliper()
      case 'ball-row':
        return row()
      case 'plug': {
        const diameter = trueCircle(ring, ring.balls) + PLUG.standardUncertainty * normal()
        return { kind, diameter, result: 'snug', error: PLUG }
      }
      default:
        return play()
    }
  }
  const earlier: EarlierState[] = []
  let readings: Reading[] = [first(true)]
  const answers: Fit[] = []
  let checks = 1
  for (;;) {
    const answer = fitOf({ subject, target, readings, earlier, tools: TOOLS, errorToCome })
    if (!answer.ok) throw new Error(`${habit.name} ${seed}: ${answer.error} ${JSON.stringify({ readings, earlier })}`)
    answers.push(answer.value)
    if (answer.value.action === 'stop' || checks >= ENDLESS) {
      const figure = subject.cuts === 'outer' ? gapNow() : truePlay(ring)
      const isTooDeep = figure > target.max
      const isGood = !isTooDeep && (subject.cuts === 'outer' ? isIn() : figure >= target.min)
      return {
        isGood,
        isTooDeep,
        checks,
        answers,
        reason: answer.value.action === 'stop' ? answer.value.reason : 'endless',
      }
    }
    if (answer.value.action === 'cut') {
      const { with: name, radial } = answer.value.nextStep
      const error = TOOLS[name]
      const bias = habit.toolBias ?? 0
      const off = Math.hypot(error.absolute, error.relative * radial) * normal()
      const cut = Math.max(0, radial * (1 + bias) + off)
      if (subject.cuts === 'outer') ring.outer += cut
      else ring.inner -= cut
      earlier.push({ readings, thenRemoved: { with: name, radial } })
      readings = [first(false)]
    } else {
      readings = [...readings, asked(answer.value.nextReading)]
    }
    checks++
  }
}

function newRing(habit: Habit, bench: Bench, normal: () => number, uniform: () => number): Ring {
  const { subject } = bench
  const { count, diameter, scatter } = subject.balls
  const times = habit.scatterTimes ?? 1
  const lot = diameter + 0.6 * times * scatter * normal()
  const balls = Array.from({ length: count }, () => lot + times * scatter * normal())
  const assemblyGap = subject.cuts === 'outer' ? subject.assemblyGap : 0
  const threshold = assemblyGap * Math.min(1, Math.max(0, 0.65 + 0.2 * normal()))
  const startsShort = (depth: number): number => {
    if (habit.startsShortBy === undefined) return depth * Math.max(0.05, 0.35 + 0.15 * normal())
    const [least, most] = habit.startsShortBy
    return depth * (least + (most - least) * uniform())
  }
  const ring: Ring = { bench, balls, threshold, outer: subject.outer.x, inner: 0 }
  if (subject.cuts === 'outer') {
    ring.outer = subject.outer.x - startsShort(subject.outer.depth)
    return ring
  }
  ring.inner = subject.inner.bottomRadius + startsShort(subject.inner.depth)
  if (subject.outerKnown.by === 'groove') {
    ring.outer += subject.outerKnown.deviation * normal()
    return ring
  }
  // A finished outer ring: the last ball is in, the gap somewhere in its band.
  const gap = subject.outerKnown.assemblyGap + 1.6 * uniform()
  let [low, high] = [ring.outer - 2, ring.outer + 2]
  for (let halving = 0; halving < 50; halving++) {
    ring.outer = (low + high) / 2
    if (trueGap(ring, balls) < gap) low = ring.outer
    else high = ring.outer
  }
  return ring
}

export interface Tally {
  readonly habit: Habit
  readonly rings: number
  readonly good: number
  readonly tooDeep: number
  readonly toldGoodButNot: number
  readonly cannotBeTold: number
  readonly medianChecks: number
  readonly mostChecks: number
}

export function tally(habit: Habit, rings: number, from = 1): Tally {
  const outcomes = Array.from({ length: rings }, (_, index) => makeRing(from + index, habit))
  const checks = outcomes.map((each) => each.checks).sort((a, b) => a - b)
  const share = (of: (outcome: Outcome) => boolean): number => outcomes.filter(of).length / rings
  return {
    habit,
    rings,
    good: share(({ isGood }) => isGood),
    tooDeep: share(({ isTooDeep }) => isTooDeep),
    toldGoodButNot: share(({ isGood, reason }) => reason === 'in-band' && !isGood),
    cannotBeTold: share(({ reason }) => reason === 'cannot-be-told'),
    medianChecks: checks[Math.floor(rings / 2)] ?? 0,
    mostChecks: checks.at(-1) ?? 0,
  }
}

/** What the marks allow: checks at the most, and their median; rings too deep beyond chance, in standard deviations. */
export const MOST_CHECKS = 12
const MEDIAN_CHECKS = 4
export const LEAST_GOOD = 0.97
const BEYOND_CHANCE = 3

/** The marks that a habit misses, each as a few words. */
export function missedMarks({ habit, rings, good, tooDeep, cannotBeTold, medianChecks, mostChecks }: Tally): string[] {
  const { overshootRisk: risk } = benchOf(habit.bearing).target
  const least = habit.least ?? LEAST_GOOD
  const median = habit.mostChecks ?? MEDIAN_CHECKS
  const marks: readonly (readonly [boolean, string])[] = [
    [tooDeep <= risk + BEYOND_CHANCE * Math.sqrt((risk * (1 - risk)) / rings), 'too deep beyond the accepted risk'],
    [mostChecks <= MOST_CHECKS, `more than ${MOST_CHECKS} checks`],
    ...(habit.isStubborn === true
      ? ([[cannotBeTold === 1, 'not always `cannot-be-told`']] as const)
      : ([
          [good >= least, `good below ${100 * least} %`],
          [medianChecks <= median, `median above ${median} checks`],
        ] as const)),
  ]
  return marks.flatMap(([isMet, missed]) => (isMet ? [] : [missed]))
}
