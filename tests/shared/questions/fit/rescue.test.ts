import { describe, expect, test } from 'vitest'
import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { fitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { BallsOnHand, Rescue } from '#shared/questions/fit/rescue.ts'
import { mm } from '#shared/units/length.ts'
import { DIAL, RULE } from '#tests/support/fit-workshop.ts'

/* Ways out of a groove that is too deep: fourteen balls of 14 mm, a gap of 3.5 mm where 2.3 mm is the most. */

const DESIGN: DesignInput = {
  units: 'mm',
  balls: { count: 14, diameter: mm(14), material: 'wood', standardDeviation: mm(0.1) },
  bore: mm(10),
  ballGap: mm(0.7),
  maxBallGap: mm(2.3),
  radialInternalClearance: mm(0.28),
}

function rescued(value: number, ballsOnHand: readonly BallsOnHand[] = [], design = DESIGN) {
  const answer = fitCorrection({
    design,
    ring: design.arrangement === 'thrust' ? 'plate' : 'outer',
    readings: [{ kind: 'ball-gap', value, error: RULE }],
    earlier: [],
    target: {},
    tools: {},
    removalHistory: [],
    ballsOnHand,
  })
  if (!answer.ok || answer.value.rescue === undefined) throw new Error('this groove must be too deep')
  const options = answer.value.rescue
  const of = <Option extends Rescue['option']>(option: Option) =>
    options.find((each): each is Extract<Rescue, { option: Option }> => each.option === option)
  return { fit: answer.value.fit, options, of }
}

test('the ways out stand in the order in which a maker would try them, and last what cannot be done', () => {
  const { options } = rescued(3.5)
  const [possible, others] = [true, false].map((is) => options.filter((each) => each.possible === is))
  const names = (all: typeof options | undefined) => all?.map(({ option }) => option)
  expect(names(possible)).toEqual(['larger-balls', 'spacers', 'accept', 'one-ball-more', 'new-blank'])
  expect(names(others)).toEqual(['balls-on-hand', 'mixed-balls', 'lining'])
  expect(names(options)).toEqual([...(names(possible) ?? []), ...(names(others) ?? [])])
})

test.each([2.75, 3.5, 6])('a gap of %s mm is left before what cannot be undone, and after what is free', (gap) => {
  for (const material of ['wood', 'glass'] as const)
    for (const onHand of [[], [14.1, 14.15, 14.2, 14.25, 14.3].map((diameter) => ({ diameter, quantity: 14 }))]) {
      const { options, of } = rescued(gap, onHand, { ...DESIGN, balls: { ...DESIGN.balls, material } })
      const possible = options.filter((each) => each.possible).map(({ option }) => option)
      const before = possible.slice(0, possible.indexOf('accept'))
      const after = possible.slice(possible.indexOf('accept') + 1)
      for (const option of ['lining', 'one-ball-more', 'new-blank'] as const) expect(before).not.toContain(option)
      expect(after).not.toContain('balls-on-hand')
      const isLeftFirst = of('accept')?.life === 'hardly-noticed'
      if (possible.includes('larger-balls')) expect(isLeftFirst ? after : before).toContain('larger-balls')
      // Nobody who has a full set mixes balls.
      expect(of('mixed-balls') === undefined).toBe(of('balls-on-hand')?.possible)
    }
})

test('whatever makes another inner ring has its sizes, which a finish on all four surfaces makes smaller', () => {
  const film = 0.05
  const finished = rescued(4, [], { ...DESIGN, finishAllowance: mm(film) })
  for (const { options } of [rescued(3.5), rescued(3.5, [{ diameter: 14.15, quantity: 14 }]), finished])
    for (const { inner, innerToCut } of options) expect(innerToCut === undefined).toBe(inner === undefined)
  const { inner, innerToCut } = finished.of('accept') ?? {}
  expect(innerToCut?.grooveBottomDiameter).toBeWithin(1e-9, (inner?.grooveBottomDiameter ?? 0) - 4 * film)
  expect(innerToCut?.landDiameter).toBeWithin(1e-9, (inner?.landDiameter ?? 0) - 4 * film)
})

test('one ball more makes the design of that count: its grooves, and no place for an inner ring that is finished', () => {
  for (const film of [0, 0.05]) {
    const { of, fit } = rescued(4, [], { ...DESIGN, finishAllowance: mm(film) })
    const { until, innerToCut, deeper } = of('one-ball-more') ?? {}
    const pitch = closedPitchRadiusWithGap(fit.ballDiameter.value, 15, 0.7)
    const bottom = 2 * pitch + fit.ballDiameter.value
    expect(until?.grooveBottomDiameter).toBeWithin(1e-6, bottom + 2 * film)
    expect(deeper).toBeWithin(1e-6, bottom / 2 + film - fit.grooveRadius.value)
    const inner = bottom - 2 * fit.ballDiameter.value - 0.28
    expect(innerToCut).toMatchObject({ isFinishedTooSmall: true })
    expect(innerToCut?.grooveBottomDiameter).toBeWithin(1e-6, inner - 2 * film)
  }
})

/** By trying, without the closed form for it: the gap grows with the radius. */
function closedPitchRadiusWithGap(diameter: number, count: number, gap: number): number {
  let [low, high] = [diameter / (2 * Math.sin(Math.PI / count)), diameter * count]
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    if (ballGap(mm(middle), mm(diameter), count) < gap) low = middle
    else high = middle
  }
  return low
}

test('what it is like to live with a gap follows from its share of a ball, and from what the balls are made of', () => {
  const glass: DesignInput = { ...DESIGN, balls: { ...DESIGN.balls, material: 'glass' } }
  expect(rescued(2.75).of('accept')?.life).toBe('hardly-noticed')
  expect(rescued(2.75, [], glass).of('accept')?.life).toBe('knocks')
  expect(rescued(6).of('accept')?.life).toBe('balls-bunch')
  const short = rescued(9).of('accept')
  expect(short?.life).toBe('ball-short')
  expect(short?.possible).toBe(false)
})

test('whoever leaves it needs a larger inner ring: by what the circle inside the balls has grown', () => {
  const { fit, of } = rescued(3.5)
  const inner = of('accept')?.inner
  const ball = fit.ballDiameter.value
  const circle = 2 * (fit.grooveRadius.value - ball)
  // The design's play is 0.02 of a ball.
  expect(inner?.grooveBottomDiameter).toBeWithin(0.03, circle - 0.02 * ball)
})

test('one ball of 16 mm among 14 mm rides on the edges of a groove cut for 14, and is none', () => {
  const { of } = rescued(3.5, [{ diameter: 16, quantity: 1 }])
  const mixed = of('mixed-balls')
  expect(mixed?.possible).toBe(false)
  expect(mixed?.standsOut).toBeWithin(0.2, 2)
})

test('a few balls a little larger are mixed in, and the inner ring is made for them', () => {
  const { of, fit } = rescued(2.9, [{ diameter: 14.2, quantity: 7 }])
  const mixed = of('mixed-balls')
  expect(mixed?.possible).toBe(true)
  expect(mixed?.ballGap).toBeLessThanOrEqual(2.3)
  const circle = 2 * (fit.grooveRadius.value - 14.2)
  expect(mixed?.inner?.grooveBottomDiameter).toBeWithin(0.05, circle - 0.02 * 14)
})

test('a larger set closes the groove to the aim, by the closed form of a full ring', () => {
  const { of, fit } = rescued(3.5)
  const larger = of('larger-balls')
  const diameter = larger?.diameter ?? Number.NaN
  expect(larger?.possible).toBe(true)
  const gap = ballGap(mm(fit.grooveRadius.value - diameter / 2), mm(diameter), 14)
  expect(gap).toBeWithin(1e-6, 0.7)
  const onHand = rescued(3.5, [{ diameter, quantity: 14 }]).of('balls-on-hand')
  expect(onHand?.possible).toBe(true)
})

test('spacers all round leave the aim: balls larger by them on the same circle', () => {
  const { of, fit } = rescued(3.5)
  const spacers = of('spacers')
  const ball = fit.ballDiameter.value
  const size = mm(ball + (spacers?.eachThickness ?? Number.NaN))
  expect(ballGap(mm(fit.grooveRadius.value - ball / 2), size, 14)).toBeWithin(1e-6, 0.7)
})

test('plates take no lining', () => {
  const plates: DesignInput = { ...DESIGN, arrangement: 'thrust' }
  expect(rescued(3.5, [], plates).options.map(({ option }) => option)).not.toContain('lining')
})

test('a single larger ball, or two, would push the inner ring off centre: refused, and said so', () => {
  const mixed = rescued(2.9, [{ diameter: 14.15, quantity: 1 }]).of('mixed-balls')
  expect(mixed).toMatchObject({ possible: false, obstacle: 'too-few-larger', replacedCount: 1 })
})

test('a gap of more than half a ball is not one to leave', () => {
  expect(rescued(9).of('accept')).toMatchObject({ possible: false, obstacle: 'out-of-band' })
})

describe('an inner ring', () => {
  const GLASS: DesignInput = { ...DESIGN, balls: { ...DESIGN.balls, material: 'glass' } }
  const CAGED: DesignInput = {
    units: 'mm',
    arrangement: 'caged',
    balls: { count: 9, diameter: mm(14), standardDeviation: mm(0.1) },
    bore: mm(10),
    radialInternalClearance: mm(0.28),
  }
  const ROLLER: DesignInput = {
    units: 'mm',
    arrangement: 'roller',
    balls: { count: 14, diameter: mm(14), standardDeviation: mm(0.1) },
    bore: mm(10),
    radialInternalClearance: mm(0.28),
  }

  function loose(design: DesignInput, play: number, ballsOnHand: readonly BallsOnHand[] = []) {
    const answer = fitCorrection({
      design,
      ring: 'inner',
      readings: [{ kind: 'radial-play', value: play, error: DIAL }],
      earlier: [],
      target: {},
      tools: {},
      removalHistory: [],
      ballsOnHand,
    })
    if (!answer.ok || answer.value.rescue === undefined) throw new Error('this groove must be too deep')
    const { fit, rescue: options, target } = answer.value
    const of = <Option extends Rescue['option']>(option: Option) =>
      options.find((each): each is Extract<Rescue, { option: Option }> => each.option === option)
    return { fit, options, of, target }
  }

  test('its options stand in the order in which a maker would try them, without balls on hand those last', () => {
    const names = ['accept-play', 'lining', 'new-inner-ring', 'balls-on-hand', 'larger-balls']
    const split = loose({ ...DESIGN, split: 'inner-ring' }, 0.9)
    expect(split.options.map(({ option }) => option)).toEqual(['mating-faces', ...names])
    // Play that is hardly noticed is left before anything is sanded.
    const little = loose({ ...DESIGN, split: 'inner-ring' }, 0.7)
    expect(little.options.map(({ option }) => option)).toEqual(['accept-play', 'mating-faces', ...names.slice(1)])
    for (const design of [{ ...DESIGN, split: 'none' } as DesignInput, ROLLER, CAGED])
      expect(
        loose(design, 0.9)
          .options.map(({ option }) => option)
          .toSorted(),
      ).toEqual(names.toSorted())
  })

  test('the share of a ball says how it runs; with too much play it does not', () => {
    expect(loose(DESIGN, 0.7).of('accept-play')?.life).toBe('hardly-noticed')
    expect(loose(GLASS, 1.2).of('accept-play')?.life).toBe('rattles')
    expect(loose(DESIGN, 4).of('accept-play')?.possible).toBe(false)
  })

  test('a lining takes half the play that is too much, as long as the balls do not ride on its edges', () => {
    const { of, fit, target } = loose(DESIGN, 0.8)
    const lining = of('lining')
    expect(lining?.thickness).toBeWithin(1e-9, (fit.figure.value - target.aim) / 2)
    expect(lining).toMatchObject({ possible: true, radialInternalClearance: target.aim })
    expect(loose(DESIGN, 3).of('lining')).toMatchObject({ possible: false, obstacle: 'rides-on-edges' })
  })

  test('a new ring is made to the circle inside the balls as it is', () => {
    const { of, fit, target } = loose(DESIGN, 0.9)
    const circle = 2 * fit.pitchRadius.value - fit.ballDiameter.value
    expect(of('new-inner-ring')?.inner?.grooveBottomDiameter).toBeWithin(1e-6, circle - target.aim)
  })

  test('larger balls close a full ring long before they fill the play; a cage takes them, with pockets of its own', () => {
    expect(loose(DESIGN, 0.9).of('larger-balls')).toMatchObject({ possible: false, obstacle: 'last-ball-stays-out' })
    const { of, fit, target } = loose(CAGED, 0.9, [{ diameter: 14.3, quantity: 9 }])
    const larger = of('larger-balls')
    expect(larger).toMatchObject({ possible: true, pocketDiameter: expect.any(Number) })
    expect(larger?.ballGap).toBeUndefined()
    // The circle inside balls on one groove shrinks by twice what they grow.
    expect(larger?.largerBy).toBeWithin(1e-6, (fit.figure.value - target.aim) / 2)
    expect(of('balls-on-hand')).toMatchObject({ possible: true, diameter: 14.3 })
  })

  test('once a 500: balls so large that they do not even close', () => {
    expect(loose(DESIGN, 3).of('larger-balls')).toMatchObject({ possible: false, obstacle: 'last-ball-stays-out' })
  })
})
