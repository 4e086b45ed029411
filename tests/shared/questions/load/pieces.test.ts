import { describe, expect, test } from 'vitest'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { contactWood } from '#shared/data/contact-woods.ts'
import type { Groove } from '#shared/geometry/groove.ts'
import { frictionOf, startingTorque } from '#shared/questions/load/friction.ts'
import { limitAt, markDepth, workingLoads } from '#shared/questions/load/limits.ts'
import {
  type BallSeat,
  ballBody,
  centreToTouch,
  grooveSeat,
  loadThatDents,
  seatsStiffness,
  seatUnder,
  substanceOf,
} from '#shared/questions/load/seat-load.ts'
import {
  ballMass,
  handSpeed,
  lowestFirst,
  outwardForce,
  rubbingSpeed,
  sharedSpeedLimits,
  splittingSpeed,
  turnRatios,
} from '#shared/questions/load/speeds.ts'
import { findLoadWarnings, type Loaded } from '#shared/questions/load/warning.ts'
import { mm } from '#shared/units/length.ts'

/* The parts of a load check by themselves: closed forms, and each limit at its own figure. */

const PER_RPM = Math.PI / 30
const ballsOf = (more: object, ballSet: 'full' | 'caged' = 'full') =>
  ({
    input: { balls: more },
    traits: { ballSet },
    ballDiameter: mm(16),
    ballScatter: mm(0.1),
  }) as unknown as ResolvedBalls

describe('warnings', () => {
  const RUIN = { load: 100, ballLoad: 40, part: 'innerRing', depth: mm(0.08) } as const
  const seat = (dent: number | undefined, more: object = {}) => ({
    seat: 'bottom',
    ballLoad: 12,
    width: mm(2),
    maxPressure: 30,
    reachesEdges: false,
    dent,
    ...more,
  })
  const loaded = ({
    outer = seat(0.01),
    inner = seat(0.01),
    newtons = 1,
    speed,
    softer = 'groove',
    crank = 8,
  }: {
    outer?: object
    inner?: object
    newtons?: number
    speed?: number
    softer?: string
    crank?: number
  }) =>
    ({
      check: {
        ruin: RUIN,
        workingLoad: {
          loads: { still: { load: 10 }, slowHand: { load: 16, part: 'outerRing' }, steadyCrank: { load: crank } },
        },
        load: { newtons, speed },
        seats: [
          { part: 'outerRing', seat: outer },
          { part: 'innerRing', seat: inner },
        ],
        softer,
        handTurned: 90,
        speedLimits: [
          { reason: 'balls-rub', speed: 150 },
          { reason: 'runs-out', speed: 900 },
        ],
      },
      design: { groove: { conformity: 0.53 } },
      path: '/radialLoad',
      grooveWidths: { outerRing: mm(9) },
    }) as unknown as Loaded<string>
  const found = (of: Parameters<typeof loaded>[0]) => findLoadWarnings(loaded(of), [])

  test('nothing of a light load', () => expect(found({})).toEqual([]))

  test('a ball that sinks in past its middle, wherever: nothing else is said of dents', () => {
    const facts = { code: 'ball-sinks-in', part: 'innerRing', ballLoad: 12 }
    expect(found({ inner: seat(undefined), outer: seat(1), newtons: 1e6 })).toEqual([
      { severity: 'fault', path: '/radialLoad', facts, suggestion: { kind: 'force', value: 100 } },
    ])
  })

  test('a dent deeper than the one that ruins, of that part: not at it, whatever rounding says', () => {
    const at = (inner: number) => found({ inner: seat(inner), outer: seat(1) })
    expect(at(0.08)).toEqual([])
    expect(at(0.08 * (1 + 5e-10))).toEqual([])
    const dent = 0.0801
    expect(at(dent)).toEqual([
      {
        severity: 'fault',
        path: '/radialLoad',
        facts: { code: 'dents-deeper', part: 'innerRing', dent, most: 0.08 },
        suggestion: { kind: 'force', value: 100 },
      },
    ])
  })

  test.each([
    [8, 8],
    [12, 10],
  ])('a load above what a crank (%s N) or years leave: above %s N', (crank, least) => {
    expect(found({ newtons: least, crank })).toEqual([])
    const at = (load: number, severity: string) => {
      const marked = { still: 10, slowHand: 16, steadyCrank: crank }
      const facts = { code: 'above-working-load', part: 'outerRing', load, ...marked }
      return [{ severity, path: '/radialLoad', facts, suggestion: { kind: 'force', value: least } }]
    }
    expect(found({ newtons: 1.0001 * least, crank })).toEqual(at(1.0001 * least, 'note'))
    expect(found({ newtons: 16, crank })).toEqual(at(16, 'note'))
    expect(found({ newtons: 16.01, crank })).toEqual(at(16.01, 'fault'))
  })

  test('edges that crush, and a contact that reaches them, where there is a groove', () => {
    const crushed = seat(0.01, { seat: 'edges', reachesEdges: true })
    expect(found({ outer: crushed })).toEqual([
      {
        severity: 'risk',
        path: '/design/groove/conformity',
        facts: { code: 'edges-crush', part: 'outerRing', dent: 0.01, width: 2 },
      },
    ])
    const reaches = seat(0.01, { reachesEdges: true })
    expect(found({ outer: reaches, inner: reaches })).toEqual([
      {
        severity: 'note',
        path: '/design/groove/conformity',
        facts: { code: 'contact-reaches-edges', part: 'outerRing', grooveWidth: 9 },
      },
    ])
  })

  test('softer balls', () => {
    expect(found({ softer: 'ball' })).toEqual([
      { severity: 'note', path: '/ballWood', facts: { code: 'balls-softer' } },
    ])
  })

  test('speed: by hand up to its figure, then up to the lowest limit, then too fast for its reason', () => {
    const suggestion = { kind: 'speed', value: 90 }
    expect([0, 90].flatMap((speed) => found({ speed }))).toEqual([])
    const byHand = { severity: 'note', path: '/speed', facts: { code: 'faster-than-by-hand', speed: 90 }, suggestion }
    expect([90.001, 150].map((speed) => found({ speed }))).toEqual([[byHand], [byHand]])
    const facts = { code: 'too-fast', reason: 'balls-rub', speed: 150, byHand: 90 }
    expect(found({ speed: 150.001 })).toEqual([{ severity: 'risk', path: '/speed', facts, suggestion }])
  })

  test('the worst first: dents, seats, how the load is shared, speed', () => {
    const ofSharing = [{ severity: 'note', path: '', facts: { code: 'balls-softer' } }] as const
    const all = findLoadWarnings(
      loaded({ newtons: 20, outer: seat(0.01, { reachesEdges: true }), speed: 200 }),
      ofSharing,
    )
    expect(all.map(({ facts }) => facts.code)).toEqual([
      'above-working-load',
      'contact-reaches-edges',
      'balls-softer',
      'too-fast',
    ])
  })
})

describe('how parts turn', () => {
  test.each(['inner-ring', 'outer-ring'] as const)(
    '%s: where a ball touches, its surface goes with the ring',
    (turning) => {
      const radii = { outer: 37.2, pitch: 30, inner: 21.5 }
      const { ballSet, ballSpin, outerPasses, innerPasses } = turnRatios(radii, 12, turning)
      const [outer, inner] = turning === 'inner-ring' ? [0, 1] : [1, 0]
      // About itself, in the room: it carries both surfaces.
      const own = (outer * radii.outer - inner * radii.inner) / (radii.outer - radii.inner)
      expect(ballSet * radii.pitch + own * (radii.outer - radii.pitch)).toBeWithin(1e-12, outer * radii.outer)
      expect(ballSet * radii.pitch - own * (radii.pitch - radii.inner)).toBeWithin(1e-12, inner * radii.inner)
      expect(ballSpin).toBeWithin(1e-12, Math.abs(own - ballSet))
      expect(outerPasses).toBeWithin(1e-12, 12 * Math.abs(outer - ballSet))
      expect(innerPasses).toBeWithin(1e-12, 12 * Math.abs(inner - ballSet))
    },
  )

  test('masses: of a ball and of a roller', () => {
    const steel = { density: 7800, stiffness: 1, poissonsRatio: 0 }
    expect(ballMass(ballsOf({}), steel)).toBeWithin(1e-12, 7800e-9 * (Math.PI / 6) * 16 ** 3)
    expect(ballMass(ballsOf({ length: 30 }), steel)).toBeWithin(1e-12, 7800e-9 * (Math.PI / 4) * 16 ** 2 * 30)
  })

  test('a kilogram at half a metre, once round in a second for each turn of the ring: 4 pi² / 2 N at 60 turns a minute', () => {
    expect(outwardForce(1, 500, 1) * 60 * 60).toBeWithin(1e-9, 2 * Math.PI ** 2)
    expect(outwardForce(1, 500, 0.4) / outwardForce(1, 500, 1)).toBeWithin(1e-12, 0.16)
  })
})

describe('speed limits', () => {
  test('from the lowest on, without those that never happen', () => {
    const limits = [
      { reason: 'a', speed: 300 },
      { reason: 'b', speed: Number.POSITIVE_INFINITY },
      { reason: 'c', speed: 80 },
    ]
    expect(lowestFirst(limits).map(({ reason }) => reason)).toEqual(['c', 'a'])
    expect(() => lowestFirst([{ reason: 'b', speed: Number.POSITIVE_INFINITY }])).toThrow(RangeError)
    expect(handSpeed(lowestFirst(limits))).toBeWithin(1e-12, 80 / Math.SQRT2)
    expect(handSpeed([{ reason: 'a', speed: 1000 }])).toBe(120)
  })

  test.each([
    ['full', 2],
    ['caged', 1],
  ] as const)('balls that are %s rub with %s of their surfaces', (ballSet, surfaces) => {
    expect(rubbingSpeed(ballsOf({}, ballSet), { ballSpin: 3 })).toBeWithin(1e-12, surfaces * 3 * PER_RPM * 8)
  })

  test('each is where its own cause is met', () => {
    const bearing = { resolved: ballsOf({ material: 'glass' }), pitchRadius: mm(40) }
    const ratios = { ballSet: 0.4, ballSpin: 2.4 }
    const limits = sharedSpeedLimits(bearing, ratios, { play: 0.5, ballLoad: 50, atOneTurn: 0.002 })
    const at = Object.fromEntries(limits.map(({ reason, speed }) => [reason, speed * PER_RPM]))
    expect(Object.keys(at)).toEqual(['balls-rub', 'runs-out', 'balls-dent-groove', 'glass-at-risk'])
    expect((at['balls-rub'] ?? Number.NaN) * 2.4 * 16).toBeWithin(1e-9, 1000)
    // a quarter of the weight, at a run-out of 0.2 mm, half of the play and the scatter of the balls
    expect((at['runs-out'] ?? Number.NaN) ** 2 * 0.55).toBeWithin(1e-9, 9806.65 / 4)
    expect(((at['balls-dent-groove'] ?? Number.NaN) / PER_RPM) ** 2 * 0.002).toBeWithin(1e-9, 50)
    expect((at['glass-at-risk'] ?? Number.NaN) * 0.4 * 40).toBeWithin(1e-9, 1000)
    const steel = { ...bearing, resolved: ballsOf({ material: 'steel' }) }
    const others = sharedSpeedLimits(steel, ratios, { play: 0.5, ballLoad: 50, atOneTurn: 0.002 })
    expect(others).toEqual(limits.slice(0, 3))
  })

  test('wood splits at a tenth of its strength across the grain', () => {
    const wood = contactWood('basswood-american')
    expect(splittingSpeed(wood, 1e-6) ** 2 * 1e-6).toBeWithin(1e-9, 0.1 * wood.tensionStrength)
  })
})

describe('friction', () => {
  test.each([
    ['glass', 'full', 0.05, 0.5, 2],
    ['glass', 'caged', 0.05, 0.5, 1],
    [undefined, 'full', 0.1, 1.5, 2],
  ] as const)(
    'balls of %s, %s: lever arms of %s to %s mm at two contacts, and half of it again for each of %s surfaces',
    (material, ballSet, least, most, surfaces) => {
      const { min, max } = startingTorque(ballsOf({ material }, ballSet), { ballSpin: 2.5 }, 30)
      expect(min).toBeWithin(1e-12, 2 * least * 30 * 2.5)
      expect(max).toBeWithin(1e-12, 2 * most * 30 * 2.5 * (1 + surfaces / 2))
    },
  )

  test('coasting: energy over torque is the angle, swing over torque the time, of the body that is spun', () => {
    const balls = ballsOf({ material: 'glass' })
    const spun = { inertia: 400, pressing: 3 }
    const {
      startingTorque: start,
      coasting,
      rubbingSpeed: rubbing,
      ballsRub,
    } = frictionOf(balls, { ballSpin: 2 }, 30, {
      hand: 120,
      spun,
      spunRatios: { ballSpin: 5 },
    })
    expect(start).toEqual(startingTorque(balls, { ballSpin: 2 }, 30))
    const { min, max } = startingTorque(balls, { ballSpin: 5 }, 3)
    const turn = 4 * Math.PI
    const energy = (400 * 1e-6 * turn ** 2) / 2
    // a torque in N mm is a thousandth of one in N m
    expect(coasting.from).toBe(120)
    expect(coasting.turns.min).toBeWithin(1e-12, energy / (max / 1000) / (2 * Math.PI))
    expect(coasting.turns.max).toBeWithin(1e-12, energy / (min / 1000) / (2 * Math.PI))
    expect(coasting.seconds.min).toBeWithin(1e-12, (400 * 1e-6 * turn) / (max / 1000))
    expect(coasting.seconds.max).toBeWithin(1e-12, (400 * 1e-6 * turn) / (min / 1000))
    expect(rubbing).toBeWithin(1e-9, 120 * 2 * 2 * PER_RPM * 8)
    expect(ballsRub).toBe(true)
    const caged = frictionOf(ballsOf({}, 'caged'), { ballSpin: 2 }, 30, { hand: 1, spun, spunRatios: { ballSpin: 5 } })
    expect(caged.ballsRub).toBe(false)
  })
})

describe('seats', () => {
  const steel = { resolved: ballsOf({ material: 'steel' }) }
  const wooden = { resolved: ballsOf({}) }
  const maple = { wood: 'maple-sugar' } as Parameters<typeof substanceOf>[1]
  const round: Groove = { radius: mm(8.5), depth: mm(4) }
  const tight: Groove = { radius: mm(7), depth: mm(4) }
  const seatOn = (groove: Groove, load = maple): BallSeat =>
    grooveSeat(
      { groove, ballDiameter: mm(16), contactRadius: mm(30), rolling: 1 / 8 + 1 / 30 },
      substanceOf(steel, load),
    )

  test('a wooden ball is of the wood of the rings, or of its own; the softer side is dented, of two alike the groove', () => {
    expect(ballBody(wooden, maple).wood).toEqual(contactWood('maple-sugar'))
    expect(ballBody(steel, maple)).toMatchObject({ density: 7800 })
    const soft = { ...maple, ballWood: 'basswood-american' } as typeof maple
    expect(ballBody(wooden, soft).wood).toEqual(contactWood('basswood-american'))
    expect([maple, soft].map((load) => substanceOf(wooden, load).softer)).toEqual(['groove', 'ball'])
    expect(substanceOf(steel, soft).softer).toBe('groove')
    const [hard, softer] = [maple, soft].map((load) => substanceOf(wooden, load).hardness)
    const ratio = contactWood('basswood-american').sideHardness / contactWood('maple-sugar').sideHardness
    expect((softer ?? Number.NaN) / (hard ?? Number.NaN)).toBeWithin(1e-12, ratio)
  })

  test('a ball on the bottom touches at its radius, one on edges half the width of its groove beside it', () => {
    expect(centreToTouch(round, mm(16))).toBe(8)
    const half = Math.sqrt(7 * 7 - 3 * 3)
    expect(centreToTouch(tight, mm(16))).toBeWithin(1e-12, Math.sqrt(64 - half * half))
  })

  test('no groove is closer to the ball than a thousandth of it', () => {
    const same = seatOn({ radius: mm(8), depth: mm(4) })
    const close = seatOn({ radius: mm(8 / (1 - 0.001)), depth: mm(4) })
    expect(same.stiffness).toBeWithin(1e-9 * close.stiffness, close.stiffness)
  })

  test('on edges the load of a dent goes with the hardness, which is the pressure; on the bottom it is the dent of the law', () => {
    const edges = seatOn(tight)
    expect(edges.on.seat).toBe('edges')
    const load = loadThatDents(edges, mm(0.05), 1)
    expect(loadThatDents(edges, mm(0.05), 0.25)).toBeWithin(1e-12 * load, load / 4)
    const under = seatUnder(edges, load)
    expect(under).toMatchObject({ seat: 'edges', ballLoad: load, maxPressure: edges.hardness, reachesEdges: true })
    expect(under.dent).toBeWithin(1e-9, 0.05)
    expect(under).not.toHaveProperty('length')
    const bottom = seatOn(round)
    const there = seatUnder(bottom, loadThatDents(bottom, mm(0.05), 1))
    expect(there).toMatchObject({ seat: 'bottom' })
    expect(there.dent).toBeWithin(1e-9, 0.05)
    expect(there.width).toBeGreaterThan(there.length ?? Number.NaN)
  })

  test('a roller on its track has no edges to reach', () => {
    const line = { rolling: 1 / 8, modulus: 1000, length: 20 }
    const track = { ...seatOn(round), on: { seat: 'track', line } } as unknown as BallSeat
    expect(seatUnder(track, 100)).toMatchObject({ seat: 'bottom', width: 20, reachesEdges: false, ballLoad: 100 })
  })

  test('two seats one behind the other give as much as both together', () => {
    const seat = (stiffness: number) => ({ exponent: 1.5, stiffness }) as BallSeat
    expect(seatsStiffness(seat(100), seat(100))).toBeWithin(1e-9, 100 / 2 ** 1.5)
    const give = (stiffness: number) => (7 / stiffness) ** (1 / 1.5)
    expect(give(seatsStiffness(seat(30), seat(200)))).toBeWithin(1e-9, give(30) + give(200))
  })

  test('the weaker of two seats sets the limit, and a bearing without a seat has none', () => {
    const [soft, hard] = [seatOn(tight, { ...maple, wood: 'basswood-american' }), seatOn(tight)]
    const loadWhen = (ballLoad: number) => 3 * ballLoad
    const seats = [
      { part: 'outerRing', seat: hard },
      { part: 'innerRing', seat: soft },
    ] as const
    const depth = mm(0.05)
    const limit = limitAt({ seats, loadWhen }, depth)
    expect(limit).toMatchObject({ part: 'innerRing', depth, ballLoad: loadThatDents(soft, depth, 1) })
    expect(limit.load).toBe(3 * limit.ballLoad)
    expect(() => limitAt({ seats: [], loadWhen }, depth)).toThrow('there must be a seat')
    // On edges the load goes with the hardness: of the softest board in twenty, after years, and under a crank.
    const { still, slowHand, steadyCrank } = workingLoads({ seats, loadWhen }, depth)
    expect(slowHand.load / limit.load).toBeWithin(1e-12, 1 - 1.645 * 0.2)
    expect(still.load / slowHand.load).toBeWithin(1e-12, 0.6)
    expect(steadyCrank.load / slowHand.load).toBeWithin(1e-12, 0.8 * 0.6)
  })

  test('a mark is a thousandth of a ball, and never deeper than the dent that ruins', () => {
    expect(markDepth(mm(16), 0.005)).toBeWithin(1e-15, 0.016)
    expect(markDepth(mm(16), 0.0005)).toBeWithin(1e-15, 0.008)
  })
})
