import { normals, uniforms } from './chance.ts'

/*
 * A tolerance check as plainly as it can be written, by coordinates, sharing no code with the service: balls one by one by the
 * law of cosines, the play by trying where the inner ring has most room, the gap at which the last ball goes in by drawing
 * again until it lies in its range. Slow.
 */

/** Standard deviations [mm], or half widths where they are below 0; of the bearing its sizes [mm]. */
export interface PlainCheck {
  readonly count: number
  readonly diameter: number
  readonly outerBottomRadius: number
  readonly innerBottomRadius: number
  readonly assemblyGap: number
  readonly each: number
  readonly lot: number
  readonly outer: number
  readonly inner: number
  /** Amplitude of the lobes of either groove. */
  readonly lobes: number
  readonly limits: { readonly gap: readonly [number, number]; readonly play: readonly [number, number] }
}

export interface PlainChances {
  readonly trials: number
  readonly gap: { readonly tooTight: number; readonly fits: number; readonly tooLoose: number }
  readonly play: { readonly tooTight: number; readonly fits: number; readonly tooLoose: number }
  readonly binds: number
  readonly both: number
}

export function plainChances(check: PlainCheck, trials: number, seed: number): PlainChances {
  const uniform = uniforms(seed)
  const normal = normals(uniform)
  const spread = (size: number): number => (size < 0 ? size * (2 * uniform() - 1) : size * normal())
  const counts = { gap: [0, 0, 0], play: [0, 0, 0], binds: 0, both: 0 }
  for (let trial = 0; trial < trials; trial++) {
    const lot = spread(check.lot)
    const diameters = Array.from({ length: check.count }, () => check.diameter + lot + spread(check.each))
    const outer = check.outerBottomRadius + spread(check.outer)
    const inner = check.innerBottomRadius + spread(check.inner)
    const lobe = Math.abs(spread(check.lobes)) + Math.abs(spread(check.lobes))
    const angles = anglesOf(outer, diameters)
    const gap = gapOf(outer, diameters, angles)
    const needed = neededBy(check.assemblyGap, normal)
    const play = playOf({ outer, inner, lobe, turned: Math.PI * uniform() }, diameters, angles)
    const ofGap = gap > check.limits.gap[1] ? 2 : gap >= Math.max(needed, check.limits.gap[0]) ? 1 : 0
    const ofPlay = play > check.limits.play[1] ? 2 : play >= check.limits.play[0] ? 1 : 0
    counts.gap[ofGap] = (counts.gap[ofGap] ?? 0) + 1
    counts.play[ofPlay] = (counts.play[ofPlay] ?? 0) + 1
    if (play < 0) counts.binds++
    if (ofGap === 1 && ofPlay === 1) counts.both++
  }
  const shares = ([tooTight = 0, fits = 0, tooLoose = 0]: number[]) => ({
    tooTight: tooTight / trials,
    fits: fits / trials,
    tooLoose: tooLoose / trials,
  })
  return {
    trials,
    gap: shares(counts.gap),
    play: shares(counts.play),
    binds: counts.binds / trials,
    both: counts.both / trials,
  }
}

/** Where each ball lies when all are pushed together, and where the first would lie next. */
function anglesOf(outer: number, diameters: readonly number[]): readonly number[] {
  const angles = [0]
  for (let ball = 0; ball < diameters.length; ball++) {
    const [own = 0, next = 0] = [diameters[ball], diameters[(ball + 1) % diameters.length]]
    const [a, b, touching] = [outer - own / 2, outer - next / 2, (own + next) / 2]
    angles.push((angles[ball] ?? 0) + Math.acos((a * a + b * b - touching * touching) / (2 * a * b)))
  }
  return angles
}

function gapOf(outer: number, diameters: readonly number[], angles: readonly number[]): number {
  const [first = 0, last = 0] = [diameters[0], diameters.at(-1)]
  const [a, b, round] = [outer - first / 2, outer - last / 2, angles[diameters.length - 1] ?? 0]
  // Past a full turn the row overlaps itself by an arc.
  if (round >= 2 * Math.PI) return -(round - 2 * Math.PI) * outer - (first + last) / 2
  return Math.hypot(b * Math.cos(round) - a, b * Math.sin(round)) - (first + last) / 2
}

/** 0.65 and 0.2 of the assembly gap, and nothing below 0 or above all of it. */
function neededBy(assemblyGap: number, normal: () => number): number {
  for (;;) {
    const part = 0.65 + 0.2 * normal()
    if (part >= 0 && part <= 1) return part * assemblyGap
  }
}

interface Rings {
  readonly outer: number
  readonly inner: number
  readonly lobe: number
  readonly turned: number
}

/** The balls shared out evenly; the room is largest where neither step betters it. */
function playOf(
  { outer, inner, lobe, turned }: Rings,
  diameters: readonly number[],
  angles: readonly number[],
): number {
  const share = (2 * Math.PI - (angles.at(-1) ?? 0)) / diameters.length
  const balls = diameters.map((diameter, ball) => {
    const angle = (angles[ball] ?? 0) + ball * share
    const away = outer - diameter / 2 + lobe * Math.cos(2 * (angle - turned))
    return { x: away * Math.cos(angle), y: away * Math.sin(angle), size: diameter / 2 }
  })
  const room = (x: number, y: number): number => {
    let least = Number.POSITIVE_INFINITY
    for (const ball of balls) {
      const [dx, dy] = [ball.x - x, ball.y - y]
      const left = Math.sqrt(dx * dx + dy * dy) - ball.size - inner
      if (left < least) least = left
    }
    return least
  }
  const reach = 0.05 * (diameters[0] ?? 0) + 2 * lobe
  const bestOver = (of: (value: number) => number): number => {
    let [low, high] = [-reach, reach]
    let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
    let [atLeft, atRight] = [of(left), of(right)]
    for (let step = 0; step < STEPS; step++) {
      if (atLeft > atRight) {
        ;[high, right, atRight] = [right, left, atLeft]
        left = high - GOLDEN * (high - low)
        atLeft = of(left)
      } else {
        ;[low, left, atLeft] = [left, right, atRight]
        right = low + GOLDEN * (high - low)
        atRight = of(right)
      }
    }
    return Math.max(atLeft, atRight)
  }
  return 2 * bestOver((x) => bestOver((y) => room(x, y)))
}

const GOLDEN = (Math.sqrt(5) - 1) / 2
/** To some 1e-5 of what is searched: the room falls on either side at most as fast as the ring moves. */
const STEPS = 22
