import { expect, test } from 'vitest'
import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { ballGap } from '#shared/geometry/ring-of-balls.ts'
import { fitCorrection } from '#shared/questions/fit/fit-correction.ts'
import type { BallsOnHand, Rescue } from '#shared/questions/fit/rescue.ts'
import { mm } from '#shared/units/length.ts'
import { RULE } from '#tests/support/fit-workshop.ts'

/* Ways out of a groove that is too deep: fourteen balls of 14 mm, a gap of 3.5 mm where 2.3 mm is the most. */

const DESIGN: DesignInput = {
  units: 'mm',
  balls: { count: 14, diameter: mm(14), material: 'wood', standardDeviation: mm(0.1) },
  bore: mm(10),
  ballGap: mm(0.7),
  maxBallGap: mm(2.3),
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

test('the ways out stand in the order in which a maker would try them', () => {
  expect(rescued(3.5).options.map(({ option }) => option)).toEqual([
    'accept',
    'balls-on-hand',
    'mixed-balls',
    'larger-balls',
    'spacers',
    'lining',
    'one-ball-more',
    'new-blank',
  ])
})

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
