import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { requireAboveZero, requireWhole, requireWithin } from '#shared/precondition.ts'
import type { Mm } from '#shared/units/length.ts'

/*
 * A turntable at rest in the frame that turns with its load: Z balls evenly on a circle of radius R between two plates with grooves
 * of radius r, the upper plate free to sink (z), lean (t, at R) and shift (s). Each ball, at the angle ψ from the side of the load, lies
 * x further out than the bottom of the lower groove. With c = r − Rb, F the load, M = F/g its mass, e its offset and h its height:
 *
 *   sin βl = x / c,  sin βu = (x − s cos ψ) / c,   δ = z + t cos ψ + c (2 − cos βl − cos βu),   Q = K δ^1.5, 0 below δ = 0
 *   each ball   Q (tan βl + tan βu) = C,   C = m (ω/2)² R: it climbs its outer flanks until it is held
 *   the plate   Σ Q = F,   R Σ Q cos ψ = F e + P h,   Σ Q tan βu cos ψ = −P,   P = M ω² e where the load turns with it, else 0
 *
 * All of these are where the energy  Σ ⅖ K δ^2.5 − F z − (F e + P h) t / R − P s − C Σ x  is least. It is convex, as δ is, so there is
 * one such place or none: Newton's steps in z, t and s, the x found by themselves, lead to it from anywhere. Balls and plate leave
 * their place when the first |β| comes to the groove's edge, β*, or when nothing holds the plate. A ball off which the plate has
 * lifted at rest already, by more than half of what it could bridge at the edges, is held by its own weight: tan β = C / m g. Derived here.
 *
 * Rigid plates and many balls give closed forms. The plate is pushed aside: two balls, on the side of the load and across from it, carry
 * on flanks of tan β = ω² e / g, and of the free ones between them the highest stands at cos β = 2 cos β(those) − 1. It tips:
 * e (1 + ω² h / g) = R cos(π / Z). A ball climbs out: C = 2 tan β* F / Z.
 */

/** A turntable with its load. Lengths in millimetres, forces in newtons. */
export interface Turntable {
  /** Z, whole, at least 3. */
  readonly count: number
  /** R. */
  readonly pitchRadius: Mm
  /** c, by how much the groove's radius is larger than the ball's, above 0. */
  readonly freedom: number
  /** K of one ball between both plates [N/mm^1.5]. */
  readonly stiffness: number
  /** β*, at the edge of the groove [radians], above 0 and short of a right angle, so that a ball at a wall is beyond it. */
  readonly edgeAngle: number
  /** m of one ball [kg]. */
  readonly ballMass: number
  /** F, upper plate and all. */
  readonly load: number
  /** e, 0 and above. */
  readonly offset: number
  /** h, of the load's centre above the balls, 0 and above. */
  readonly height: number
  readonly turnsWithPlate: boolean
}

/** One ball in its place. */
interface Placed {
  readonly cosine: number
  /** How many balls stand so: those on either side of the load's line are alike. */
  readonly alike: number
  readonly x: number
  /** How far it has climbed, from 0 midway between both grooves to a right angle at a wall. */
  readonly climb: number
  readonly lower: number
  readonly upper: number
  readonly lowerCosine: number
  readonly upperCosine: number
  readonly pressed: number
  readonly force: number
}

/** Position of the plate, its balls, and the remainder of force, moment and push. */
export interface Balance {
  readonly sinks: number
  readonly leans: number
  readonly shifts: number
  readonly balls: readonly Placed[]
  readonly left: readonly [number, number, number]
  /** The largest sin |β| of any ball on either plate. */
  readonly steepest: number
}

/** g [mm/s²]. */
export const GRAVITY = 9806.65
const PER_RPM = (2 * Math.PI) / 60

/** P, M and C at a speed. */
interface Pull {
  readonly aside: number
  readonly moment: number
  readonly outward: number
}

/** A square of a speed [1/s²] as its effects: all of them go with it. */
function pullOf(table: Turntable, square: number): Pull {
  const { load, offset, height, pitchRadius, ballMass, turnsWithPlate } = table
  const aside = turnsWithPlate ? (load / GRAVITY) * square * offset : 0
  return {
    aside,
    moment: (load * offset + aside * height) / pitchRadius,
    outward: (ballMass / 1000) * (square / 4) * pitchRadius,
  }
}

const MOST_STEPS = 100
/** Forces are in balance to this part of the load. */
const BALANCED = 1e-9

/**
 * The turntable in balance at a speed.
 *
 * @param speed turns a minute, 0 and above
 * @param phase where the first ball stands, in spaces between balls from the side of the load
 * @returns undefined where nothing holds the plate
 */
export function balanceAt(table: Turntable, speed: number, phase: 0 | 0.5): Balance | undefined {
  requireTable(table)
  requireWithin('speed', speed, 0, Number.MAX_VALUE)
  const { count, load, stiffness } = table
  const turn = speed * PER_RPM
  const pull = pullOf(table, turn * turn)
  const ring = ringOf(count, phase)
  const share = Math.cbrt(load / (count * stiffness))
  let now = placed(table, pull, ring, [share * share, 0, 0])
  for (let round = 0; round < MOST_STEPS; round++) {
    if (Math.max(...now.left.map(Math.abs)) < BALANCED * load) return now
    now = along(table, pull, ring, now, newtonStep(table, now))
    if (!(Math.abs(now.sinks) < LOST * table.pitchRadius)) return undefined
  }
  return Math.max(...now.left.map(Math.abs)) < NEARLY * load ? now : undefined
}

/** A plate that has gone so many pitch radii is gone. */
const LOST = 100
const NEARLY = 1e-6

type Ring = readonly { readonly cosine: number; readonly alike: number }[]

/** The balls of one side of the load's line: those of the other are their mirror image. */
function ringOf(count: number, phase: 0 | 0.5): Ring {
  const halves = phase === 0 ? Math.floor(count / 2) + 1 : Math.ceil(count / 2)
  return Array.from({ length: halves }, (_, ball) => {
    const onLine = phase === 0 ? ball === 0 || 2 * ball === count : 2 * ball + 1 === count
    return { cosine: Math.cos((2 * Math.PI * (ball + phase)) / count), alike: onLine ? 1 : 2 }
  })
}

type Three = readonly [number, number, number]

/** All balls found for a place of the plate, from where they were, and what its forces come to. */
function placed(table: Turntable, pull: Pull, ring: Ring, [sinks, leans, shifts]: Three, were?: Balance): Balance {
  const balls = ring.map((at, index) =>
    ballAt(table, pull.outward, at, [sinks, leans, shifts], were?.balls[index]?.climb ?? FIRST_GUESS),
  )
  let [force, moment, push, steepest] = [-table.load, -pull.moment, -pull.aside, 0]
  for (const { cosine, alike, force: each, lower, upper, upperCosine } of balls) {
    force += alike * each
    moment += alike * each * cosine
    push -= (alike * each * cosine * upper) / upperCosine
    steepest = Math.max(steepest, Math.abs(lower), Math.abs(upper))
  }
  return { sinks, leans, shifts, balls, left: [force, moment, push], steepest }
}

/** Short of a wall by so little: a ball that nothing holds is against it. */
const AT_WALL = 1e-7
const FIRST_GUESS = Math.PI / 4
const MOST_CLIMBS = 80

/** The place of one ball: what holds it grows as it climbs, from nothing midway between both grooves to anything at a wall. */
function ballAt(
  { freedom, stiffness }: Turntable,
  outward: number,
  { cosine, alike }: Ring[number],
  [sinks, leans, shifts]: Three,
  guess: number,
): Placed {
  const aside = shifts * cosine
  const [low, room] = [aside / 2, Math.min(freedom, freedom + aside) - aside / 2]
  const lies = sinks + leans * cosine + 2 * freedom
  const cosineOf = (sine: number): number => Math.sqrt(Math.max(LEAST_SQUARE, (1 - sine) * (1 + sine)))
  let [from, to] = [0, Math.PI / 2 - AT_WALL]
  let climb = outward === 0 ? 0 : guess
  for (let round = 0; ; round++) {
    const x = low + room * Math.sin(climb)
    const [lower, upper] = [x / freedom, (x - aside) / freedom]
    const [lowerCosine, upperCosine] = [cosineOf(lower), cosineOf(upper)]
    const pressed = Math.max(0, lies - freedom * (lowerCosine + upperCosine))
    const force = stiffness * pressed * Math.sqrt(pressed)
    const slope = lower / lowerCosine + upper / upperCosine
    const held = force * slope
    if (held > outward) to = climb
    else from = climb
    const isThere = Math.abs(held - outward) <= HELD * outward || to - from < 1e-15 || round === MOST_CLIMBS
    if (isThere) return { cosine, alike, x, climb, lower, upper, lowerCosine, upperCosine, pressed, force }
    const bends = (1 / cube(lowerCosine) + 1 / cube(upperCosine)) / freedom
    const rise = (1.5 * stiffness * Math.sqrt(pressed) * slope * slope + force * bends) * room * Math.cos(climb)
    // in the logarithm, for it grows by powers; no number where nothing is held
    const newton = climb - (Math.log(held / outward) * held) / rise
    climb = newton > from && newton < to ? newton : (from + to) / 2
  }
}

/** To this part of itself the push on a ball is held. */
const HELD = 1e-12
const LEAST_SQUARE = 1e-30
const cube = (value: number): number => value * value * value

/** Newton's step of z, t and s towards balance, all balls following: −A⁻¹ b of a symmetric A that is positive, by Cholesky's factors. */
function newtonStep({ freedom, stiffness }: Turntable, { balls, left }: Balance): Three {
  let [zz, zt, tt, zs, ts, ss] = [0, 0, 0, 0, 0, 0]
  for (const { cosine, alike, force, pressed, lower, upper, lowerCosine, upperCosine } of balls) {
    if (!(force > 0)) continue
    const [leans, slope] = [upper / upperCosine, lower / lowerCosine + upper / upperCosine]
    const stiff = 1.5 * stiffness * Math.sqrt(pressed)
    const turning = force / (freedom * cube(upperCosine))
    const own = stiff * slope * slope + force / (freedom * cube(lowerCosine)) + turning
    // of a ball that follows: what it gives to sinking (twice, with the cosine, to leaning) and to shifting
    const sinking = alike * (stiff - (stiff * slope * (stiff * slope)) / own)
    const across = -cosine * (stiff * slope * leans + turning)
    const shifting = -alike * (stiff * leans * cosine + (stiff * slope * across) / own)
    zz += sinking
    zt += sinking * cosine
    tt += sinking * cosine * cosine
    zs += shifting
    ts += shifting * cosine
    ss += alike * ((stiff * leans * leans + turning) * cosine * cosine - (across * across) / own)
  }
  const root = (value: number): number => Math.sqrt(Math.max(RIDGE, value))
  const a = root(zz)
  const [b, c] = [zt / a, zs / a]
  const d = root(tt - b * b)
  const e = (ts - b * c) / d
  const f = root(ss - c * c - e * e)
  const y0 = -left[0] / a
  const y1 = (-left[1] - b * y0) / d
  const shift = (-left[2] - c * y0 - e * y1) / f / f
  const lean = (y1 - e * shift) / d
  return [(y0 - b * lean - c * shift) / a, lean, shift]
}

/** A plate that no ball holds has no stiffness of its own: so little keeps the step finite. */
const RIDGE = 1e-9

/** So far along a step that the energy no longer falls much: by its slope, which rounding leaves readable to the end. */
function along(table: Turntable, pull: Pull, ring: Ring, from: Balance, step: Three): Balance {
  const slopeAt = ({ left }: Balance): number => left.reduce((sum, each, row) => sum + each * itemAt(step, row), 0)
  const start = slopeAt(from)
  for (let part = 1; ; part /= 2) {
    const [sinks, leans, shifts] = [
      from.sinks + part * step[0],
      from.leans + part * step[1],
      from.shifts + part * step[2],
    ]
    const now = placed(table, pull, ring, [sinks, leans, shifts], from)
    if (slopeAt(now) <= -start / 2 || part < LEAST_PART) return now
  }
}

const LEAST_PART = 1e-12

/** Speeds [1/min] of rigid plates and very many balls: see above. Each is endless where it cannot happen. */
export interface RigidLimits {
  readonly pushedAside: number
  readonly tips: number
  readonly climbsOut: number
}

export function rigidLimits(table: Turntable): RigidLimits {
  requireTable(table)
  const { count, pitchRadius, edgeAngle, ballMass, load, offset, height, turnsWithPlate } = table
  const carrying = (1 + Math.cos(edgeAngle)) / 2
  const slope = Math.sqrt((1 - carrying) * (1 + carrying)) / carrying
  const over = (pitchRadius * Math.cos(Math.PI / count)) / offset - 1
  const turns = turnsWithPlate && offset > 0
  const perMinute = (square: number): number => Math.sqrt(square) / PER_RPM
  return {
    pushedAside: turns ? perMinute((GRAVITY * slope) / offset) : Number.POSITIVE_INFINITY,
    tips: turns && height > 0 ? perMinute(Math.max(0, over * GRAVITY) / height) : Number.POSITIVE_INFINITY,
    climbsOut: perMinute((8000 * Math.tan(edgeAngle) * load) / (count * ballMass * pitchRadius)),
  }
}

/** To this part of itself a speed is found. */
const SPEED_WITHIN = 1e-6

/** More balls than this change little but the time that it takes: as many stand for them, each as stiff and heavy as several. */
const MOST_BALLS = 48

/**
 * The speed at which the first ball, or the plate, leaves its place, however the balls stand.
 *
 * @returns turns a minute; 0 where the load tips the plate at rest
 */
export function leavingSpeed(table: Turntable): number {
  const fewer = withFewer(table)
  return Math.min(...PHASES.map((phase) => leavingAt(fewer, phase)))
}

/** Whether every ball and the plate keep their places at a speed, however the balls stand. */
export function holdsAt(table: Turntable, speed: number): boolean {
  const fewer = withFewer(table)
  return PHASES.every((phase) => beyondEdgeOf(fewer, phase)(speed) < 0)
}

const PHASES = [0.5, 0] as const

function withFewer(table: Turntable): Turntable {
  const { count, stiffness, ballMass } = table
  const each = Math.max(1, count / MOST_BALLS)
  return { ...table, count: Math.min(count, MOST_BALLS), stiffness: stiffness * each, ballMass: ballMass * each }
}

/** By how much the steepest ball is beyond the edge at a speed, as a sine: below 0 while all hold, endless where nothing holds the plate. */
function beyondEdgeOf(table: Turntable, phase: 0 | 0.5): (speed: number) => number {
  const { edgeAngle, freedom, ballMass } = table
  const edge = Math.sin(edgeAngle)
  const atRest = balanceAt(table, 0, phase)
  if (atRest === undefined) return () => Number.POSITIVE_INFINITY
  const bridged = freedom * (1 - Math.cos(edgeAngle))
  const isLoose = atRest.balls.map(({ cosine }) => atRest.sinks + atRest.leans * cosine + bridged <= 0)
  return (speed) => {
    const balance = balanceAt(table, speed, phase)
    if (balance === undefined) return Number.POSITIVE_INFINITY
    const { outward } = pullOf(table, speed * PER_RPM * (speed * PER_RPM))
    const byWeight = outward / Math.hypot(outward, (ballMass / 1000) * GRAVITY)
    const steepness = balance.balls.map(({ lower, upper }, index) =>
      isLoose[index] === true ? byWeight : Math.max(Math.abs(lower), Math.abs(upper)),
    )
    return Math.max(...steepness) - edge
  }
}

function leavingAt(table: Turntable, phase: 0 | 0.5): number {
  const beyond = beyondEdgeOf(table, phase)
  if (!(beyond(0) < 0)) return 0
  const { pushedAside, tips, climbsOut } = rigidLimits(table)
  let high = Math.max(LEAST_SPEED, Math.min(pushedAside, tips, climbsOut))
  while (beyond(high) < 0) high *= 2
  return bracketedRoot(beyond, 0, high, SPEED_WITHIN)
}

const LEAST_SPEED = 1e-3
const STEEPEST_EDGE = Math.PI / 2 - 10 * AT_WALL

function requireTable(table: Turntable): void {
  requireWhole('count', table.count, 3)
  for (const name of ['pitchRadius', 'freedom', 'stiffness', 'ballMass', 'load'] as const)
    requireAboveZero(name, table[name])
  requireWithin('edgeAngle', table.edgeAngle, Number.MIN_VALUE, STEEPEST_EDGE)
  requireWithin('offset', table.offset, 0, Number.MAX_VALUE)
  requireWithin('height', table.height, 0, Number.MAX_VALUE)
}
