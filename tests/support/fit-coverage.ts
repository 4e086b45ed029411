import { thresholdOf } from '#shared/bearing/entry-threshold.ts'
import { ABRASIVE, SHARP_TOOL } from '#shared/making/tool-error.ts'
import { estimateOf } from '#shared/questions/fit/estimate.ts'
import { evidenceOf } from '#shared/questions/fit/evidence.ts'
import { figureAt } from '#shared/questions/fit/figures.ts'
import { posteriorOf } from '#shared/questions/fit/posterior.ts'
import type { Reading } from '#shared/questions/fit/reading.ts'
import { gapOf, pitchRadius, radiusForGap } from '#shared/questions/fit/ring-law.ts'
import type { Subject } from '#shared/questions/fit/subject.ts'
import { unknownsOf } from '#shared/questions/fit/unknowns.ts'
import { unevenLossBy } from '#shared/statistics/play-of-random-balls.ts'
import { normals, uniforms } from './chance.ts'
import { type Bench, benchOf, CALIPER, DIAL, type Habit, PLUG, RULE } from './fit-workshop.ts'

/* How often the truth lies in `interval95`, over grooves drawn from the prior and read once. */

export const COVERED = [
  { kind: 'rule', bearing: 'full' },
  { kind: 'rule', bearing: 'five' },
  { kind: 'rule', bearing: 'forty' },
  { kind: 'rule', bearing: 'thrust' },
  { kind: 'rule', bearing: 'edges' },
  { kind: 'word', bearing: 'full' },
  { kind: 'go-plug', bearing: 'full' },
  { kind: 'snug-plug', bearing: 'full' },
  { kind: 'caliper', bearing: 'full' },
  { kind: 'groove-depth', bearing: 'full' },
  { kind: 'ball-row', bearing: 'full' },
  { kind: 'play', bearing: 'inner' },
  { kind: 'caliper', bearing: 'inner' },
  { kind: 'play', bearing: 'caged' },
] as const satisfies readonly { kind: string; bearing: Habit['bearing'] }[]

export type Covered = (typeof COVERED)[number]['kind']

/** The share of truths in the interval; `scatterTimes` makes balls that are said to scatter more. */
export function coverage(
  kind: Covered,
  bearing: Habit['bearing'],
  cases: number,
  { seed = 1, scatterTimes = 1 } = {},
): number {
  const uniform = uniforms(seed * 104_729)
  const normal = normals(uniform)
  const bench = benchOf(bearing)
  const { balls } = bench.subject
  const subject: Subject = { ...bench.subject, balls: { ...balls, scatter: balls.scatter * scatterTimes } }
  let held = 0
  for (let drawn = 0; drawn < cases; drawn++) {
    const { readings, figure } = readOnce(kind, subject, bench, uniform, normal)
    const assemblyGap =
      subject.cuts === 'outer'
        ? subject.assemblyGap
        : subject.outerKnown.by === 'gap'
          ? subject.outerKnown.assemblyGap
          : 0
    const posterior = posteriorOf(
      unknownsOf(subject, [], { 'sharp-tool': SHARP_TOOL, abrasive: ABRASIVE }),
      evidenceOf(subject, [], readings),
      thresholdOf(assemblyGap, balls.diameter),
    )
    const figures = Float64Array.from(posterior.weights, (_, point) => figureAt(posterior, point))
    const { interval95 } = estimateOf(figures, posterior.weights)
    if (figure >= interval95.min && figure <= interval95.max) held++
  }
  return held / cases
}

interface Once {
  readonly readings: readonly Reading[]
  readonly figure: number
}

/** A groove drawn from the prior of `design.md`, and what is read of it. */
function readOnce(kind: Covered, subject: Subject, bench: Bench, uniform: () => number, normal: () => number): Once {
  const { count, diameter, scatter, gapDeviation } = subject.balls
  const isOuter = subject.cuts === 'outer'
  const roll = uniform()
  const single = scatter * (roll < 0.8 ? 1 : roll < 0.95 ? 1.8 : 3)
  const mean = diameter + single * Math.hypot(0.6, Math.sqrt(1 / count)) * normal()
  const hand = 0.15 * normal()
  const reduction = single * unevenLossBy(count)(normal())
  let cut: number
  let outer: number
  let threshold = 0
  if (subject.cuts === 'outer') {
    cut = subject.outer.x - subject.outer.depth * (0.35 + 0.4 * normal())
    outer = cut
    threshold = 0.65 * subject.assemblyGap + Math.max(0.2 * subject.assemblyGap, 0.002 * diameter) * normal()
  } else {
    cut = -subject.inner.bottomRadius - subject.inner.depth * (0.35 + 0.4 * normal())
    const { outerKnown } = subject
    if (outerKnown.by === 'groove') outer = subject.outer.x + outerKnown.deviation * normal()
    else outer = radiusForGap(outerKnown.gap + outerKnown.deviation * normal(), mean, count) + mean / 2
  }
  const gapWith = (left: number): number => {
    const out = count - left
    const others = mean - (single * normal() * Math.sqrt((out * left) / count)) / left
    return gapOf(pitchRadius(subject.outer.seat, outer, others), others, left)
  }
  const gap = gapWith(count)
  const circle = 2 * pitchRadius(subject.outer.seat, outer, mean) - mean - reduction
  const play = circle + 2 * cut
  const rounded = (value: number): number => {
    const read = value + hand + Math.hypot(RULE.standardUncertainty, gapDeviation * single) * normal()
    return Math.round(read / RULE.graduation) * RULE.graduation
  }
  const figure = isOuter ? gap : play
  const readings = ((): readonly Reading[] => {
    switch (kind) {
      case 'rule': {
        if (gap >= threshold) return [{ kind: 'ball-gap', value: rounded(gap), error: RULE }]
        let out = 1
        while (count - out > 3 && gapWith(count - out) < threshold) out++
        return [{ kind: 'last-ball-opening', ballsLeftOut: out, value: rounded(gapWith(count - out)), error: RULE }]
      }
      case 'word':
        return [{ kind: gap >= threshold ? 'last-ball-in' : 'last-ball-refused' }]
      case 'go-plug': {
        const enters = circle + PLUG.standardUncertainty * normal() >= bench.goDiameter
        return [{ kind: 'plug', diameter: bench.goDiameter, result: enters ? 'enters' : 'refuses', error: PLUG }]
      }
      case 'snug-plug': {
        const felt = circle + PLUG.standardUncertainty * normal()
        return [{ kind: 'plug', diameter: felt, result: 'snug', error: PLUG }]
      }
      case 'caliper': {
        const value = 2 * Math.abs(cut) + CALIPER.standardUncertainty * normal()
        return [{ kind: 'groove-bottom-diameter', value, error: CALIPER }]
      }
      case 'groove-depth': {
        const land = subject.outer.x - subject.outer.depth
        const value = cut - land + CALIPER.standardUncertainty * normal()
        return [{ kind, value, landDiameter: 2 * land, error: CALIPER }]
      }
      case 'ball-row':
        return [{ kind, count, value: Math.round((count * mean + hand + 0.15 * normal()) * 2) / 2, error: RULE }]
      case 'play':
        return play + 0.05 * normal() <= 0
          ? [{ kind: 'binds' }]
          : [{ kind: 'radial-play', value: Math.max(0, play) + DIAL.standardUncertainty * normal(), error: DIAL }]
      default:
        return kind satisfies never
    }
  })()
  return { readings, figure }
}
