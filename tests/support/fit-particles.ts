import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import type { EarlierState, Reading } from '#shared/questions/fit/reading.ts'
import type { Subject, Target } from '#shared/questions/fit/subject.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from './chance.ts'

/*
 * The posterior by brute force: bearings drawn from the prior that `design.md` states, each weighed by the chance of what was
 * read. No proposal, no quasi-random points, no code of the engine: the prior, the laws of readings and the error function are
 * written out anew. Rings with balls on the bottom of their groove, and plates.
 */

export interface ByParticles {
  readonly figure: readonly [mean: number, deviation: number]
  readonly ballDiameter: readonly [mean: number, deviation: number]
  readonly toolBias: readonly [mean: number, deviation: number]
  readonly tooTight: number
  readonly inBand: number
  readonly tooDeep: number
  /** So many even particles would be as good. */
  readonly effective: number
}

/** Abramowitz and Stegun 7.1.26, from memory: to 1.5e-7. */
function phi(z: number): number {
  const x = Math.abs(z) / Math.SQRT2
  const t = 1 / (1 + 0.3275911 * x)
  const poly = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
  const half = 0.5 * poly * Math.exp(-x * x)
  return z > 0 ? 1 - half : half
}

const density = (value: number, truth: number, graduation: number, hand: number): number =>
  graduation > 0
    ? phi((value + graduation / 2 - truth) / hand) - phi((value - graduation / 2 - truth) / hand)
    : Math.exp(-0.5 * ((value - truth) / hand) ** 2)

/** The gap, or by how much a ring that cannot be laid is too tight. */
function gapFor(radius: number, ball: number, count: number): number {
  if (radius >= ball / (2 * Math.sin(Math.PI / (count - 1)))) return ballGap(mm(radius), mm(ball), count)
  const half = radius > ball / 2 ? Math.asin(ball / (2 * radius)) : Math.PI / 2
  return 2 * radius * (Math.PI - (count - 1) * half) - ball
}

interface Asked {
  readonly subject: Subject
  readonly target: Target
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  /** Mean, deviation and skewness of W for this many balls. */
  readonly reduction: readonly [mean: number, deviation: number, skewness: number]
  readonly seed: number
}

const TOOLS = { 'sharp-tool': [0.2, 0.1], abrasive: [0.05, 0.05] } as const

/** Draws until so many particles would be as good as even ones, or so many were drawn. */
export function byParticles(asked: Asked, wanted: number, most: number): ByParticles {
  const { subject, target, earlier } = asked
  const uniform = uniforms(asked.seed)
  const normal = normals(uniform)
  const sums = { w: 0, ww: 0, f: 0, ff: 0, d: 0, dd: 0, b: 0, bb: 0, tight: 0, band: 0, deep: 0 }
  const { count, diameter, scatter, gapDeviation } = subject.balls
  const isOuter = subject.cuts === 'outer'
  const known = isOuter ? undefined : subject.outerKnown
  const assemblyGap = isOuter ? subject.assemblyGap : known?.by === 'gap' ? known.assemblyGap : 0
  const states = [...earlier.map(({ readings }) => readings), asked.readings]
  const [startAt, depth] = isOuter
    ? [subject.outer.x, subject.outer.depth]
    : [-subject.inner.bottomRadius, subject.inner.depth]
  for (let drawn = 0; drawn < most && (drawn < 20_000 || (sums.w * sums.w) / sums.ww < wanted); drawn++) {
    const roll = uniform()
    const times = roll < 0.8 ? 1 : roll < 0.95 ? 1.8 : 3
    const single = times * scatter
    const mean = diameter + single * Math.hypot(0.6, Math.sqrt(1 / count)) * normal()
    const hand = 0.15 * normal()
    const bias = 0.15 * normal()
    const out = normal()
    const z = normal()
    const [wMean, wDeviation, wSkew] = asked.reduction
    const reduction = single * Math.max(0, wMean + wDeviation * (z + (wSkew / 6) * (z * z - 1)))
    const threshold = 0.65 * assemblyGap + Math.max(0.2 * assemblyGap, 0.002 * diameter) * normal()
    let cut = startAt - 0.35 * depth + 0.4 * depth * normal()
    let fixed = 0
    if (!isOuter && known?.by === 'groove') fixed = subject.outer.x + known.deviation * normal()
    if (!isOuter && known?.by === 'gap') {
      const wantedGap = known.gap + known.deviation * normal()
      let [low, high] = [diameter / 2, 4 * subject.outer.x]
      for (let halving = 0; halving < 40; halving++) {
        const middle = (low + high) / 2
        if (gapFor(middle, mean, count) < wantedGap) low = middle
        else high = middle
      }
      fixed = low + mean / 2
    }
    let weight = 1
    let centre = 0
    for (let state = 0; state < states.length && weight > 0; state++) {
      const x = isOuter ? cut : fixed
      centre = subject.outer.seat.on === 'circle' ? x : x - mean / 2
      const gap = gapFor(centre, mean, count)
      const circle = 2 * centre - mean - reduction
      const play = circle + 2 * cut
      for (const reading of states[state] ?? []) {
        const error = 'error' in reading ? reading.error : { graduation: 0, standardUncertainty: 0.05 }
        const g = error.graduation
        const s = error.standardUncertainty
        switch (reading.kind) {
          case 'ball-gap':
            weight *= density(reading.value, gap + hand, g, Math.hypot(s, gapDeviation * single))
            if (gap < threshold) weight = 0
            break
          case 'last-ball-opening': {
            const k = reading.ballsLeftOut
            const others = mean - (single * out * Math.sqrt((k * (count - k)) / count)) / (count - k)
            const radius = subject.outer.seat.on === 'circle' ? x : x - others / 2
            const opening = gapFor(radius, others, count - k)
            weight *= density(reading.value, opening + hand, g, Math.hypot(s, gapDeviation * single))
            if (gap >= threshold) weight = 0
            break
          }
          case 'last-ball-refused':
            if (gap >= threshold) weight = 0
            break
          case 'last-ball-in':
            if (gap < threshold) weight = 0
            break
          case 'plug': {
            const uncertainty = Math.hypot(s, g / Math.sqrt(12))
            const over = (circle - reading.diameter) / uncertainty
            weight *=
              reading.result === 'snug'
                ? density(reading.diameter, circle, g, s)
                : reading.result === 'enters'
                  ? phi(over)
                  : phi(-over)
            break
          }
          case 'groove-bottom-diameter':
            weight *= density(reading.value, 2 * Math.abs(cut), g, s)
            break
          case 'groove-depth':
            weight *= density(
              reading.value,
              isOuter ? cut - reading.landDiameter / 2 : cut + reading.landDiameter / 2,
              g,
              s,
            )
            break
          case 'ball-row': {
            const single2 = single * reading.count * Math.sqrt(Math.abs(1 / reading.count - 1 / count))
            weight *= density(reading.value, reading.count * mean + hand, g, Math.hypot(s, single2))
            break
          }
          case 'radial-play':
            weight *= density(reading.value, reading.value > s ? play : Math.max(0, play), g, s)
            break
          case 'binds':
            weight *= phi(-play / 0.05)
            break
          default:
            reading satisfies never
        }
      }
      const removed = earlier[state]?.thenRemoved
      if (removed !== undefined) {
        const [absolute, relative] = TOOLS[removed.with]
        cut += removed.radial * (1 + bias) + Math.hypot(absolute, relative * removed.radial) * normal()
      }
    }
    if (!(weight > 0)) continue
    const x = isOuter ? cut : fixed
    centre = subject.outer.seat.on === 'circle' ? x : x - mean / 2
    const figure = isOuter ? gapFor(centre, mean, count) : 2 * centre - mean - reduction + 2 * cut
    sums.w += weight
    sums.ww += weight * weight
    sums.f += weight * figure
    sums.ff += weight * figure * figure
    sums.d += weight * (mean - diameter)
    sums.dd += weight * (mean - diameter) ** 2
    sums.b += weight * bias
    sums.bb += weight * bias * bias
    if (figure > target.max) sums.deep += weight
    else if (figure >= target.min && (!isOuter || figure >= threshold)) sums.band += weight
    else sums.tight += weight
  }
  const moments = (first: number, second: number, offset = 0): readonly [number, number] => {
    const mean = first / sums.w
    return [mean + offset, Math.sqrt(Math.max(0, second / sums.w - mean * mean))]
  }
  return {
    figure: moments(sums.f, sums.ff),
    ballDiameter: moments(sums.d, sums.dd, diameter),
    toolBias: moments(sums.b, sums.bb),
    tooTight: sums.tight / sums.w,
    inBand: sums.band / sums.w,
    tooDeep: sums.deep / sums.w,
    effective: (sums.w * sums.w) / sums.ww,
  }
}
