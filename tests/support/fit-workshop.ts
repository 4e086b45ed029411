import { ARRANGEMENTS, type FullRingInput, fullRingsOf } from '#shared/bearing/arrangements.ts'
import { ABRASIVE, SHARP_TOOL } from '#shared/making/tool-error.ts'
import { type Fit, fitOf } from '#shared/questions/fit/fit.ts'
import { cagedInnerSubject, innerSubject, outerSubject, plateSubject } from '#shared/questions/fit/from-bearing.ts'
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
  readonly bearing: 'full' | 'five' | 'forty' | 'edges' | 'roller' | 'thrust' | 'inner' | 'caged'
  /** What is read first at each state. */
  readonly first: 'rule' | 'plug' | 'caliper' | 'row' | 'word' | 'play' | 'binds'
  /** Never says a word on the last ball, whatever is asked. */
  readonly isStubborn?: boolean
  readonly startsShortBy?: number
  readonly toolBias?: number
  readonly handBias?: number
  readonly scatterTimes?: number
}

export const HABITS: readonly Habit[] = [
  { name: 'gap and opening by rule', bearing: 'full', first: 'rule' },
  { name: 'plugs', bearing: 'full', first: 'plug' },
  { name: 'caliper', bearing: 'full', first: 'caliper' },
  { name: 'ball row first', bearing: 'full', first: 'row' },
  { name: 'refusal first', bearing: 'full', first: 'word' },
  { name: 'far too shallow', bearing: 'full', first: 'rule', startsShortBy: 0.85 },
  { name: 'heavy hand', bearing: 'full', first: 'rule', toolBias: 0.25 },
  { name: 'light hand', bearing: 'full', first: 'rule', toolBias: -0.2 },
  { name: 'rule read 0.3 mm short', bearing: 'full', first: 'rule', handBias: -0.3 },
  { name: 'three times the scatter', bearing: 'full', first: 'rule', scatterTimes: 3 },
  { name: 'five balls', bearing: 'five', first: 'rule' },
  { name: 'forty balls', bearing: 'forty', first: 'rule' },
  { name: 'balls on edges', bearing: 'edges', first: 'rule' },
  { name: 'rollers', bearing: 'roller', first: 'rule' },
  { name: 'plates', bearing: 'thrust', first: 'rule' },
  { name: 'inner ring by play', bearing: 'inner', first: 'play' },
  { name: 'inner ring by caliper', bearing: 'inner', first: 'caliper' },
  { name: 'inner ring by binding', bearing: 'inner', first: 'binds' },
  { name: 'inner ring in a cage', bearing: 'caged', first: 'play' },
  { name: 'caliper alone', bearing: 'full', first: 'caliper', isStubborn: true },
  { name: 'plugs alone', bearing: 'full', first: 'plug', isStubborn: true },
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

/** The band that `design.md` gives by default: room for a rule above where the last ball goes in. */
function bandOf(assemblyGap: number, diameter: number): Pick<Target, 'aim' | 'min' | 'max'> {
  const aim = Math.max(0.05 * diameter, assemblyGap + 0.4)
  return { aim, min: 0, max: Math.max(diameter / 8, assemblyGap + 2) }
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

function newBench(kind: Habit['bearing']): Bench {
  const common = { overshootRisk: 0.05, finishAllowance: 0 }
  if (kind === 'thrust') {
    const bearing = made(ARRANGEMENTS.thrust.bearingOf({ ...of(14, 14, 0.1), arrangement: 'thrust' }))
    return { subject: plateSubject(bearing), target: { ...bandOf(0, 14), ...common }, goDiameter: 0, noGoDiameter: 0 }
  }
  if (kind === 'caged') {
    const bearing = made(ARRANGEMENTS.caged.bearingOf({ ...of(9, 14, 0.1), arrangement: 'caged' }))
    const subject = cagedInnerSubject(bearing)
    return { subject, target: { aim: 0.42, min: 0.14, max: 0.8, ...common }, goDiameter: 0, noGoDiameter: 0 }
  }
  const inputs: Readonly<Record<typeof kind, FullRingInput>> = {
    full: of(14, 14, 0.1),
    inner: { ...of(14, 14, 0.1), radialInternalClearance: mm(0.5) },
    five: of(5, 20, 0.12),
    forty: of(40, 10, 0.07),
    edges: { ...of(14, 14, 0.1), groove: { conformity: 0.45 } },
    roller: { ...of(14, 14, 0.14), arrangement: 'roller' },
  }
  const input = inputs[kind]
  const bearing = made(fullRingsOf(input))
  const band = bandOf(bearing.assembly.assemblyGap, input.balls.diameter)
  const banded = made(fullRingsOf({ ...input, ballGap: mm(band.aim), maxBallGap: mm(band.max) }))
  const { goDiameter, noGoDiameter } = banded.gauge
  if (kind === 'inner') {
    const target = { aim: 0.5, min: 0.2, max: 1, ...common }
    return { subject: innerSubject(banded), target, goDiameter, noGoDiameter }
  }
  return { subject: outerSubject(banded), target: { ...band, ...common }, goDiameter, noGoDiameter }
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
  const inward = balls.map((ball) => outer - ball)
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

const MOST_CHECKS = 40

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
    return value <= 0
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
    if (habit.isStubborn === true) return habit.first === 'plug' ? plug(bench.noGoDiameter) : caliper()
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
    if (answer.value.action === 'stop' || checks >= MOST_CHECKS) {
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
  const startsShort = (depth: number): number =>
    depth * Math.max(0.05, (habit.startsShortBy ?? 0.35) + (habit.startsShortBy === undefined ? 0.15 : 0.1) * normal())
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
