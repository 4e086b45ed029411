import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { balanceAt, GRAVITY, holdsAt, leavingSpeed, rigidLimits, type Turntable } from '#shared/contact/turntable.ts'
import { mm } from '#shared/units/length.ts'
import { between, magnitude } from '#tests/support/inputs.ts'
import { type Bodies, staysTogether } from '#tests/support/simulated-turntable.ts'

const DEGREE = Math.PI / 180

/** Eighteen glass balls of 16 mm on a circle of 46.2 mm, under 30 N. */
const MARBLES: Turntable = {
  count: 18,
  pitchRadius: mm(46.2),
  freedom: 0.48,
  stiffness: 3000,
  edgeAngle: 64.3 * DEGREE,
  ballMass: 2500e-9 * (4 / 3) * Math.PI * 512,
  load: 30,
  offset: 15,
  height: 0,
  turnsWithPlate: true,
}

/** The speed of a square in 1/s², in turns a minute. */
const perMinute = (square: number): number => (Math.sqrt(square) * 30) / Math.PI

describe('eighteen marbles under 30 N, worked by hand', () => {
  test.each([
    { offset: 15, height: 0, closed: 249, speed: 250 },
    { offset: 15, height: 60, closed: 174, speed: 173 },
    { offset: 5, height: 20, closed: 431, speed: 428 },
  ])(
    '$offset mm out, $height mm high: $speed turns a minute, $closed in closed form',
    ({ offset, height, closed, speed }) => {
      const table = { ...MARBLES, offset, height }
      const aside = perMinute((GRAVITY * Math.tan(table.edgeAngle)) / (2 * offset))
      expect(Math.min(aside, rigidLimits(table).tips)).toBeWithin(0.6, closed)
      // with one ball right under the load
      expect(balanceAt(table, 0.98 * speed, 0)?.steepest).toBeLessThan(Math.sin(table.edgeAngle))
      expect(balanceAt(table, 1.02 * speed, 0)?.steepest ?? 1).toBeGreaterThan(Math.sin(table.edgeAngle))
      // and however the balls stand
      expect(leavingSpeed(table) / speed).toBeWithin(0.03, 0.98)
    },
  )

  test('a load that is held still, 15 mm out: 2185 turns a minute, where a load over the middle has 3194', () => {
    expect(leavingSpeed({ ...MARBLES, turnsWithPlate: false })).toBeWithin(3, 2185)
    const middle = { ...MARBLES, offset: 0 }
    expect(leavingSpeed(middle) / rigidLimits(middle).climbsOut).toBeWithin(1e-5, 1)
    expect(leavingSpeed(middle)).toBeWithin(1, 3194)
  })
})

/** Any turntable: a full circle of balls or nearly, in a groove 2 to 20 % larger than they are. */
const tables = fc
  .record({
    count: fc.integer({ min: 8, max: 60 }),
    ballRadius: between(3, 25),
    apart: between(1, 1.1),
    larger: between(0.02, 0.2),
    stiffness: magnitude(2000, 20_000),
    edgeAngle: between(40, 80).map((degrees) => degrees * DEGREE),
    density: between(600, 7800),
    load: magnitude(5, 300),
    out: between(0.05, 0.9),
    high: between(0, 2),
    turnsWithPlate: fc.boolean(),
  })
  .map(({ count, ballRadius, apart, larger, density, out, high, ...rest }): Turntable => {
    const pitchRadius = (apart * ballRadius) / Math.sin(Math.PI / count)
    return {
      ...rest,
      count,
      pitchRadius: mm(pitchRadius),
      freedom: larger * ballRadius,
      ballMass: density * 1e-9 * (4 / 3) * Math.PI * ballRadius * ballRadius * ballRadius,
      offset: out * pitchRadius * Math.cos(Math.PI / count),
      height: high * pitchRadius,
    }
  })

/** Rigid plates and balls without weight: what is left is geometry. */
const rigid = (table: Turntable): Turntable => ({
  ...table,
  count: Math.max(24, table.count),
  turnsWithPlate: true,
  ballMass: 1e-6 * table.ballMass,
  stiffness: 1e6 / (table.freedom * Math.sqrt(table.freedom)),
  load: 30,
})

describe('against closed forms', () => {
  test('no turntable outlasts what tips it or what carries its balls out', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const { tips, climbsOut } = rigidLimits(table)
        expect(leavingSpeed(table)).toBeLessThanOrEqual(Math.min(tips, climbsOut) * (1 + 1e-4))
      }),
      { numRuns: 60 },
    )
  })

  test('pushed aside: from many balls on, as between rigid plates', () => {
    fc.assert(
      fc.property(tables, (any) => {
        const table = { ...rigid(any), height: 0, offset: any.offset / 2 }
        expect(leavingSpeed(table) / rigidLimits(table).pushedAside).toBeWithin(0.04, 1.01)
      }),
      { numRuns: 60 },
    )
  })

  test('tipped: where a tall load tips it long before it is pushed aside', () => {
    fc.assert(
      fc.property(tables, (any) => {
        const tall = rigid(any)
        const table = { ...tall, height: 40 * tall.pitchRadius }
        expect(leavingSpeed(table) / rigidLimits(table).tips).toBeWithin(0.02, 0.99)
      }),
      { numRuns: 50 },
    )
  })

  test('climbed out: over the middle every ball leaves at once', () => {
    fc.assert(
      fc.property(tables, (any) => {
        const table = { ...any, offset: 0 }
        expect(leavingSpeed(table) / rigidLimits(table).climbsOut).toBeWithin(1e-4, 1)
      }),
      { numRuns: 50 },
    )
  })
})

test.each([
  [30, 300, 38],
  [100, 300, 42],
  [10, 30, 40],
])(
  'a ball off which a plate of %s N/mm^1.5 has leaned, under %s N at %s mm, leaves by itself: 2 √(g tan β* / R)',
  (stiffness, load, offset) => {
    const table = { ...MARBLES, stiffness, load, offset, turnsWithPlate: false }
    const alone = 2 * perMinute((GRAVITY * Math.tan(table.edgeAngle)) / table.pitchRadius)
    expect(leavingSpeed(table) / alone).toBeWithin(1e-5, 1)
  },
)

describe('laws', () => {
  test('forces, moments and pushes are in balance, and each ball holds its own', () => {
    fc.assert(
      fc.property(tables, between(0.05, 0.95), (table, part) => {
        const speed = part * leavingSpeed(table)
        const { balls } = balanceAt(table, speed, 0.5) ?? { balls: [] }
        const square = (speed * Math.PI) / 30
        const aside = table.turnsWithPlate ? (table.load / GRAVITY) * square * square * table.offset : 0
        const outward = (table.ballMass / 1000) * (square / 2) * (square / 2) * table.pitchRadius
        const sum = (of: (ball: (typeof balls)[number]) => number) =>
          balls.reduce((total, ball) => total + ball.alike * of(ball), 0)
        expect(sum(() => 1)).toBe(table.count)
        expect(sum(({ force }) => force) / table.load).toBeWithin(1e-6, 1)
        const moment = table.load * table.offset + aside * table.height
        expect((sum(({ force, cosine }) => force * cosine) * table.pitchRadius) / moment).toBeWithin(1e-5, 1)
        expect(
          sum(({ force, upper, upperCosine, cosine }) => (force * upper * cosine) / upperCosine) / table.load,
        ).toBeWithin(1e-6, -aside / table.load)
        for (const { force, lower, upper, lowerCosine, upperCosine } of balls)
          if (force > 0) expect((force * (lower / lowerCosine + upper / upperCosine)) / outward).toBeWithin(1e-6, 1)
      }),
      { numRuns: 60 },
    )
  })

  test('the further out and the higher, the slower; the faster, the steeper', () => {
    fc.assert(
      fc.property(tables, between(1.02, 1.5), between(0.1, 0.9), (table, more, part) => {
        const speed = leavingSpeed(table)
        const further = Math.min(more * table.offset, 0.95 * table.pitchRadius * Math.cos(Math.PI / table.count))
        const slower = (1 + 1e-3) * speed
        expect(leavingSpeed({ ...table, offset: Math.max(table.offset, further) })).toBeLessThanOrEqual(slower)
        expect(leavingSpeed({ ...table, height: more * table.height })).toBeLessThanOrEqual(slower)
        const [slow, fast] = [balanceAt(table, part * speed, 0), balanceAt(table, (part + 0.1) * speed, 0)]
        expect(fast?.steepest).toBeGreaterThan(slow?.steepest ?? 1)
        expect(speed).toBeGreaterThan(0)
        expect(holdsAt(table, 0.99 * speed)).toBe(true)
        expect(holdsAt(table, 1.01 * speed)).toBe(false)
      }),
      { numRuns: 40 },
    )
  })

  test('spun up slowly, the work done is the energy stored', () => {
    const table = { ...MARBLES, height: 30 }
    const steps = 400
    const fastest = 0.9 * leavingSpeed(table)
    const at = (index: number) => {
      const speed = (index / steps) * fastest
      const found = balanceAt(table, speed, 0.5)
      if (found === undefined) throw new Error('must hold')
      const turn = (speed * Math.PI) / 30
      const aside = (table.load / GRAVITY) * turn * turn * table.offset
      const outward = (table.ballMass / 1000) * (turn / 2) * (turn / 2) * table.pitchRadius
      const moment = (table.load * table.offset + aside * table.height) / table.pitchRadius
      return { ...found, aside, outward, moment }
    }
    type State = ReturnType<typeof at>
    const stored = ({ balls }: State) =>
      balls.reduce((sum, { alike, force, pressed }) => sum + alike * 0.4 * force * pressed, 0)
    const mean = (one: number, other: number) => (one + other) / 2
    const states = Array.from({ length: steps + 1 }, (_, index) => at(index))
    let work = 0
    for (const [index, now] of states.entries()) {
      const before = states[index - 1]
      if (before === undefined) continue
      work += table.load * (now.sinks - before.sinks)
      work += mean(now.moment, before.moment) * (now.leans - before.leans)
      work += mean(now.aside, before.aside) * (now.shifts - before.shifts)
      for (const [each, ball] of now.balls.entries())
        work += ball.alike * mean(now.outward, before.outward) * (ball.x - (before.balls[each]?.x ?? Number.NaN))
    }
    const [first, last] = [states[0], states[steps]]
    if (first === undefined || last === undefined) throw new Error('must have states')
    // against the work of the load alone, which is far larger than what is left
    expect(work / (table.load * last.sinks)).toBeWithin(
      1e-3,
      (stored(last) - stored(first)) / (table.load * last.sinks),
    )
  })
})

describe('against balls, plate and load stepped through time', () => {
  const CASES: readonly (Partial<Turntable> & { readonly phase: 0 | 0.5 })[] = [
    { phase: 0 },
    { phase: 0.5 },
    { height: 60, phase: 0.5 },
    { offset: 5, height: 20, phase: 0 },
    { turnsWithPlate: false, phase: 0 },
    { offset: 30, turnsWithPlate: false, phase: 0.5 },
    { offset: 0, phase: 0 },
    { count: 8, pitchRadius: mm(21.5), offset: 8, height: 10, phase: 0.5 },
    { count: 12, pitchRadius: mm(31.5), offset: 12, load: 90, stiffness: 5000, phase: 0 },
    { count: 12, pitchRadius: mm(31.5), offset: 20, height: 40, edgeAngle: 50 * DEGREE, freedom: 0.8, phase: 0.5 },
  ]

  test.each(CASES)('%o', ({ phase, ...change }) => {
    const table = { ...MARBLES, ...change }
    const bodies: Bodies = { ...table, ballRadius: 8, grooveRadius: 8 + table.freedom, phase }
    const holds = (speed: number) => (balanceAt(table, speed, phase)?.steepest ?? 1) < Math.sin(table.edgeAngle)
    let [low, high] = [0, 8000]
    for (let halving = 0; halving < 20; halving++) {
      const middle = (low + high) / 2
      if (holds(middle)) low = middle
      else high = middle
    }
    expect(staysTogether(bodies, 0.96 * low)).toBe(true)
    expect(staysTogether(bodies, 1.04 * low)).toBe(false)
  })
})
