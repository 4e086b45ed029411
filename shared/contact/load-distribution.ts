import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { integral } from '#shared/numbers/quadrature.ts'
import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'
import { type Mm, mm } from '#shared/units/length.ts'

/*
 * How a radial load is shared by the balls of a ring at rest: rigid rings, balls evenly spaced, each giving way by itself
 * as Q = K δⁿ. Stribeck 1901, Sjövall 1933; T. A. Harris, Rolling Bearing Analysis, chapter 7, as quoted (`sjovall`).
 */

/** Exponents of load by approach: a ball touches in a point, a roller along a line (1.1 as the printed tables have it). */
export const POINT_CONTACT = 1.5
export const LINE_CONTACT = 1.1

/** The elements that share the load. */
export interface Sharing {
  /** Z, whole, at least 1. */
  readonly count: number
  /** n, from 1 to 2. */
  readonly exponent: number
  /** K of one ball between both rings [N/mmⁿ]. */
  readonly stiffness: number
  /** Gr, the whole play of one ring from side to side [mm]. */
  readonly clearance: Mm
}

/**
 * Sjövall's radial integral:  Jr(ε) = 1/2π ∫ (1 − (1 − cos ψ) / 2ε)ⁿ cos ψ dψ  over the loaded arc, cos ψ ≥ 1 − 2ε.
 * The most loaded of many balls carries Fr / (Z Jr).
 *
 * @param loadZone ε, above 0: the loaded part of the diameter; 0.5 without clearance, above 1 preloaded all round
 * @returns to about 1e-12
 */
export function radialLoadIntegral(loadZone: number, exponent: number): number {
  requireAboveZero('loadZone', loadZone)
  requireWithin('exponent', exponent, 1, 2)
  const end = loadZone >= 1 ? Math.PI : Math.acos(1 - 2 * loadZone)
  const part = (angle: number): number => {
    const half = Math.sin(angle / 2)
    return power(Math.max(0, 1 - (half * half) / loadZone), exponent) * Math.cos(angle)
  }
  return integral(part, 0, end) / Math.PI
}

/** A load as its balls share it. */
export interface SharedLoad {
  /** How far the ring moves from the middle of its play, under the load [mm]. */
  readonly displacement: Mm
  /** ε. */
  readonly loadZone: number
  /** Load of the most loaded ball [N]. */
  readonly most: number
}

/**
 * The load shared as among very many balls: the displacement δ at which  Z K (δ − Gr/2)ⁿ Jr(ε) = Fr,
 * ε = (1 − Gr/2δ) / 2. Solved, not taken from a table.
 *
 * @param load Fr [N], above 0
 */
export function sharedByMany(load: number, sharing: Sharing): SharedLoad {
  const { count, exponent, stiffness, clearance } = sharing
  const force = (press: number): number => {
    const end = 2 * Math.asin(Math.sqrt(loadZoneOf(press, clearance)))
    const part = (angle: number): number => power(pressedAt(angle, press, clearance), exponent) * Math.cos(angle)
    return (count * stiffness * integral(part, 0, end)) / Math.PI
  }
  return sharedLoad(pressFor(load, sharing, force), sharing)
}

/** The same ball by ball. */
export interface LoadByBall extends SharedLoad {
  /** Load of each ball [N], from the one at `phase` on round the ring. */
  readonly each: readonly number[]
}

/**
 * The load shared by the balls that there are, as they stand: the displacement at which their forces add up to it.
 *
 * @param phase where the first ball stands, in spaces between balls from the line of the load: 0 right under it, 1/2 with
 *   two balls astride it
 */
export function sharedByBalls(load: number, sharing: Sharing, phase: number): LoadByBall {
  const { exponent, stiffness, clearance } = sharing
  const angles = anglesOf(sharing.count, phase)
  const press = pressFor(load, sharing, (at) => carried(angles, at, sharing))
  const each = angles.map((angle) => stiffness * power(pressedAt(angle, press, clearance), exponent))
  return { ...sharedLoad(press, sharing), most: Math.max(...each), each }
}

/** The load that the ring carries when its most loaded ball, right under the load, carries so much [N]. */
export function loadWhenBallCarries(most: number, sharing: Sharing): number {
  requireSharing(most, sharing)
  const { count, exponent, stiffness } = sharing
  return carried(anglesOf(count, 0), power(most / stiffness, 1 / exponent), sharing)
}

/** The load that balls at these angles from it carry together. */
function carried(angles: readonly number[], press: number, { exponent, stiffness, clearance }: Sharing): number {
  const of = (angle: number): number => power(pressedAt(angle, press, clearance), exponent) * Math.cos(angle)
  return angles.reduce((sum, angle) => sum + stiffness * of(angle), 0)
}

const anglesOf = (count: number, phase: number): readonly number[] =>
  Array.from({ length: count }, (_, ball) => (2 * Math.PI * (ball + phase)) / count)

/**
 * How far a ball at an angle from the load is pressed together, δ cos ψ − Gr/2, by what the ring presses beyond its play:
 * δ = press + Gr/2. Where the play is large and the press small, no digit is lost.
 */
function pressedAt(angle: number, press: number, clearance: number): number {
  const half = Math.sin(angle / 2)
  return Math.max(0, press * Math.cos(angle) - clearance * half * half)
}

/** ε of a press: the loaded part of the diameter. */
const loadZoneOf = (press: number, clearance: number): number => press / (2 * press + clearance)

const sharedLoad = (press: number, { clearance, stiffness, exponent }: Sharing): SharedLoad => ({
  displacement: mm(press + clearance / 2),
  loadZone: loadZoneOf(press, clearance),
  most: stiffness * power(press, exponent),
})

/** Without the power of the language, whose last bit differs from engine to engine. */
function power(base: number, exponent: number): number {
  if (exponent === POINT_CONTACT) return base * Math.sqrt(base)
  return Math.exp(exponent * Math.log(base))
}

/** The press at which a force that grows with it, from 0, reaches the load. */
function pressFor(load: number, sharing: Sharing, force: (press: number) => number): number {
  requireSharing(load, sharing)
  const beyond = (press: number): number => (press > 0 ? force(press) : 0) - load
  let high = power(load / sharing.stiffness, 1 / sharing.exponent)
  while (beyond(high) < 0) high *= 2
  return bracketedRoot(beyond, 0, high)
}

function requireSharing(load: number, { count, exponent, stiffness, clearance }: Sharing): void {
  requireAboveZero('load', load)
  requireWhole('count', count, 1)
  requireWithin('exponent', exponent, 1, 2)
  requireAboveZero('stiffness', stiffness)
  requireWithin('clearance', clearance, 0, Number.MAX_VALUE)
}
