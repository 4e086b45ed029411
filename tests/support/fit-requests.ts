import { ABRASIVE, SHARP_TOOL } from '#shared/making/tool-error.ts'
import type { FitQuestion } from '#shared/questions/fit/fit.ts'
import type { EarlierState, Reading } from '#shared/questions/fit/reading.ts'
import { normals, uniforms } from './chance.ts'
import {
  type Bench,
  benchOf,
  CALIPER,
  DIAL,
  errorToCome,
  type Habit,
  PLUG,
  RULE,
  trueCircle,
  trueGap,
} from './fit-workshop.ts'

/* Requests of every kind of reading, ring and arrangement: mostly of grooves that could be, some that contradict themselves. */

const BEARINGS: readonly Habit['bearing'][] = [
  'full',
  'five',
  'forty',
  'edges',
  'roller',
  'thrust',
  'inner',
  'inner-tight',
  'inner-roller',
  'caged',
]
const OUTER_KINDS = [
  'ball-gap',
  'last-ball-opening',
  'last-ball-refused',
  'last-ball-in',
  'plug',
  'groove-bottom-diameter',
  'groove-depth',
  'ball-row',
] as const
const INNER_KINDS = ['radial-play', 'binds', 'plug', 'groove-bottom-diameter', 'ball-row', 'ball-gap'] as const

export interface RandomRequest extends FitQuestion {
  readonly bench: Bench
}

export function randomRequest(seed: number): RandomRequest {
  const uniform = uniforms(seed * 31 + 7)
  const normal = normals(uniform)
  const pick = <T>(of: readonly T[]): T => of[Math.floor(uniform() * of.length)] as T
  const bench = benchOf(pick(BEARINGS))
  const { subject } = bench
  const isOuter = subject.cuts === 'outer'
  const { count, diameter, scatter } = subject.balls
  const balls = Array.from({ length: count }, () => diameter + scatter * normal())
  const depth = isOuter ? subject.outer.depth : subject.inner.depth
  const short = depth * (0.3 + 0.4 * normal()) * (uniform() < 0.5 ? 0.2 : 1)
  const ring = {
    bench,
    balls,
    threshold: isOuter ? subject.assemblyGap * uniform() : 0,
    outer: subject.outer.x - (isOuter ? short : 0),
    inner: isOuter ? 0 : subject.inner.bottomRadius + short,
  }
  // Some figures are of another groove altogether, but not of one that nobody would send.
  const off = (): number => (uniform() < 0.1 ? 0.3 * normal() : 0)
  const rounded = (value: number): number => Math.max(0, Math.round((value + 0.15 * normal()) / 0.5) * 0.5)
  const reading = (): Reading => {
    const gap = trueGap(ring, balls)
    const kind = pick(isOuter ? OUTER_KINDS : INNER_KINDS)
    const isIn = gap >= ring.threshold
    switch (kind) {
      case 'ball-gap':
        return isIn ? { kind, value: rounded(gap + off()), error: RULE } : { kind: 'last-ball-refused' }
      case 'last-ball-opening': {
        if (isIn && uniform() < 0.9) return { kind: 'last-ball-in' }
        const ballsLeftOut = count > 5 && uniform() < 0.3 ? 2 : 1
        const value = rounded(trueGap(ring, balls.slice(0, count - ballsLeftOut)) + off())
        return { kind, ballsLeftOut, value, error: RULE }
      }
      case 'last-ball-refused':
      case 'last-ball-in':
        return { kind: isIn !== uniform() < 0.02 ? 'last-ball-in' : 'last-ball-refused' }
      case 'plug': {
        const circle = trueCircle(ring, balls)
        if (uniform() < 0.3) return { kind, diameter: circle + 0.05 * normal(), result: 'snug', error: PLUG }
        const size = uniform() < 0.5 || !isOuter ? circle + 0.3 * normal() : bench.goDiameter
        return { kind, diameter: size, result: circle > size ? 'enters' : 'refuses', error: PLUG }
      }
      case 'groove-bottom-diameter':
        return { kind, value: 2 * (isOuter ? ring.outer : ring.inner) + 0.1 * normal() + off(), error: CALIPER }
      case 'groove-depth': {
        const land = subject.outer.x - subject.outer.depth
        return { kind, value: ring.outer - land + 0.1 * normal(), landDiameter: 2 * land, error: CALIPER }
      }
      case 'ball-row':
        return { kind, count, value: rounded(balls.reduce((sum, each) => sum + each, 0)), error: RULE }
      default: {
        const play = trueCircle(ring, balls) - 2 * ring.inner
        return play <= 0 ? { kind: 'binds' } : { kind: 'radial-play', value: play, error: DIAL }
      }
    }
  }
  const some = (most: number): Reading[] => Array.from({ length: Math.floor(uniform() * (most + 1)) }, reading)
  const earlier: EarlierState[] = []
  const states = uniform() < 0.5 ? 0 : Math.ceil(uniform() * 4)
  for (let state = 0; state < states; state++) {
    const radial = 0.05 + 0.5 * uniform()
    const name = radial < 0.3 ? 'abrasive' : 'sharp-tool'
    earlier.push({ readings: some(2), thenRemoved: { with: name, radial } })
    const cut = Math.max(0, radial * (1 + 0.1 * normal()))
    if (isOuter) ring.outer += cut
    else ring.inner -= cut
  }
  return {
    bench,
    subject,
    target: {
      ...bench.target,
      overshootRisk: pick([0.001, 0.01, 0.05, 0.05, 0.2, 0.5]),
      finishAllowance: pick([0, 0, 0.05]),
    },
    readings: some(uniform() < 0.1 ? 14 : 4),
    earlier,
    tools: { 'sharp-tool': SHARP_TOOL, abrasive: ABRASIVE },
    errorToCome,
  }
}
