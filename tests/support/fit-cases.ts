import type { EarlierState, Reading, ToolName } from '#shared/questions/fit/reading.ts'
import { benchOf, CALIPER, DIAL, type Habit, PLUG, RULE } from './fit-workshop.ts'

/* Grooves under way, with every kind of reading, for the brute-force reference. */

export interface FitCase {
  readonly name: string
  readonly bearing: Habit['bearing']
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
}

const gap = (value: number, error = RULE): Reading => ({ kind: 'ball-gap', value, error })
const opening = (value: number, ballsLeftOut = 1): Reading => ({
  kind: 'last-ball-opening',
  ballsLeftOut,
  value,
  error: RULE,
})
const row = (bearing: Habit['bearing'], off: number): Reading => {
  const { count, diameter } = benchOf(bearing).subject.balls
  return { kind: 'ball-row', count, value: Math.round((count * diameter + off) * 2) / 2, error: RULE }
}
const across = (bearing: Habit['bearing'], off: number): Reading => {
  const { subject } = benchOf(bearing)
  const designed = subject.cuts === 'outer' ? subject.outer.x : subject.inner.bottomRadius
  return { kind: 'groove-bottom-diameter', value: 2 * designed + off, error: CALIPER }
}
const plug = (bearing: Habit['bearing'], off: number, result: 'enters' | 'snug' | 'refuses'): Reading => ({
  kind: 'plug',
  diameter: benchOf(bearing).goDiameter + off,
  result,
  error: PLUG,
})
const play = (value: number): Reading => ({ kind: 'radial-play', value, error: DIAL })
const REFUSED: Reading = { kind: 'last-ball-refused' }
const IN: Reading = { kind: 'last-ball-in' }
const BINDS: Reading = { kind: 'binds' }

const depthOf = (bearing: Habit['bearing'], off: number): Reading => {
  const { subject } = benchOf(bearing)
  const landDiameter = 2 * (subject.outer.x - subject.outer.depth)
  return { kind: 'groove-depth', value: subject.outer.depth + off, landDiameter, error: CALIPER }
}

const then = (readings: readonly Reading[], name: ToolName, radial: number): EarlierState => ({
  readings,
  thenRemoved: { with: name, radial },
})

const of = (
  name: string,
  bearing: Habit['bearing'],
  readings: readonly Reading[],
  earlier: readonly EarlierState[] = [],
): FitCase => ({ name, bearing, readings, earlier })

export const FIT_CASES: readonly FitCase[] = [
  of('nothing read', 'full', []),
  of('a row alone', 'full', [row('full', 1)]),
  of('go enters', 'full', [plug('full', 0, 'enters')]),
  of('go refuses', 'full', [plug('full', 0, 'refuses')]),
  of('go enters, no-go refuses', 'full', [plug('full', 0, 'enters'), plug('full', 0.66, 'refuses')]),
  of('a snug plug', 'full', [plug('full', 0.2, 'snug')]),
  of('go enters and the ball is in', 'full', [plug('full', 0, 'enters'), IN]),
  of('refused', 'full', [REFUSED]),
  of('in', 'full', [IN]),
  of('a gap of 1', 'full', [gap(1)]),
  of('a gap of 2', 'full', [gap(2)]),
  of('a gap of 0', 'full', [gap(0)]),
  of('a gap on a fine rule', 'full', [gap(0.4, { graduation: 0.1, standardUncertainty: 0.1 })]),
  of('a gap, twice, that differ', 'full', [gap(2), gap(2.5)]),
  of('a caliper', 'full', [across('full', 0)]),
  of('a caliper and a row', 'full', [across('full', 0.1), row('full', -1)]),
  of('a groove depth', 'full', [depthOf('full', -0.2)]),
  of('a groove depth and a refusal', 'full', [depthOf('full', 0), REFUSED]),
  of('an opening', 'full', [opening(12)]),
  of('an opening near its end', 'full', [opening(13.5)]),
  of('an opening with two left out', 'full', [opening(22, 2)]),
  of('an opening and a row', 'full', [opening(13), row('full', 1)]),
  of('an opening, a cut, a gap', 'full', [gap(1)], [then([opening(11)], 'sharp-tool', 0.4)]),
  of('an opening, a cut, in', 'full', [IN], [then([opening(10)], 'sharp-tool', 0.6)]),
  of('an opening, a cut, refused', 'full', [REFUSED], [then([opening(12)], 'sharp-tool', 0.3)]),
  of('an opening, a cut, go enters', 'full', [plug('full', 0, 'enters')], [then([opening(11)], 'sharp-tool', 0.45)]),
  of(
    'two cuts that took too much',
    'full',
    [opening(13)],
    [then([opening(7)], 'sharp-tool', 0.4), then([opening(10.5)], 'sharp-tool', 0.3)],
  ),
  of('a caliper, a cut, a gap', 'full', [gap(0.5)], [then([across('full', -0.8)], 'abrasive', 0.3)]),
  of('five balls, a gap', 'five', [gap(1.5)]),
  of('five balls, an opening', 'five', [opening(11)]),
  of('forty balls, a gap', 'forty', [gap(1)]),
  of('forty balls, an opening', 'forty', [opening(8)]),
  of('rollers, an opening', 'roller', [opening(13.5)]),
  of('plates, a gap', 'thrust', [gap(1.5)]),
  of('plates, an opening', 'thrust', [opening(12)]),
  of('inner ring, play', 'inner', [play(0.3)]),
  of('inner ring, a caliper', 'inner', [across('inner', 0)]),
  of('inner ring, binds', 'inner', [BINDS]),
  of('inner ring, a caliper and a plug', 'inner', [across('inner', 0.2), plug('inner', 0.1, 'snug')]),
  of('inner ring, a caliper and a gap', 'inner', [across('inner', 0.1), gap(1)]),
  of('inner ring, binds, a cut, play', 'inner', [play(0.15)], [then([BINDS, across('inner', 1)], 'abrasive', 0.3)]),
  of('cage, play', 'caged', [play(0.4)]),
  of('cage, binds and a caliper', 'caged', [BINDS, across('caged', 0.2)]),
]
