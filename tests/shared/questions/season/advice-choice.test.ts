import { describe, expect, test } from 'vitest'
import type { DesignInput } from '#shared/bearing/arrangements.ts'
import { inAir } from '#shared/movement/states.ts'
import type { RingWood, Today } from '#shared/movement/year.ts'
import { adviceFor, type Freedom, SEASON_LENGTHS } from '#shared/questions/season/advice.ts'
import type { NeedName } from '#shared/questions/season/chances.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { fail, ok } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'

/*
 * Advice chooses among requests by their answers alone. Here a request is answered by a hundred bearings of which each needs a stated
 * size, so that every size, order and choice of it can be told beforehand.
 */

const MAPLE = { construction: 'flat-sawn', species: 'maple-sugar' } as const satisfies RingWood
const PLY = { construction: 'cross-laminated-ply' } as const
const QUARTER = { ...MAPLE, construction: 'quarter-sawn' } as const
const moist = (moistureContent: number): Today => ({ kind: 'moisture', moistureContent })

/** Balls of 15 mm: more than 1 mm of play rattles, and a gap that may be wider than 5 mm looks like a ball that is missing. */
const DESIGN = {
  units: 'mm',
  balls: { count: 14, diameter: mm(15), length: mm(20) },
  bore: mm(10),
  ballGap: mm(0.7),
  maxBallGap: mm(2.4),
  radialInternalClearance: mm(0.3),
} as const
const REQUEST: SeasonalFitInput = {
  design: DESIGN as DesignInput,
  woods: { outerRing: PLY, innerRing: PLY },
  climate: { kind: 'moisture', moistureContent: { min: 7, max: 9 } },
  today: moist(8),
}

interface Sizes {
  readonly ballGap: number
  readonly maxBallGap: number
  readonly radialInternalClearance: number
  readonly balls: { readonly length: number }
}
/** How much more of each size the n-th of a hundred bearings needs, n from 0; what is left out it has. */
type Lacks = (input: SeasonalFitInput, sizes: Sizes, n: number) => Partial<Record<NeedName, number>>
interface Year {
  readonly moistures?: readonly number[]
  readonly loses?: number
}

function answered(input: SeasonalFitInput, lacks: Lacks, { moistures = [7, 9], loses = 0 }: Year = {}) {
  const of = Array.from({ length: 100 }, (_, n) => lacks(input, input.design as unknown as Sizes, n))
  const names = new Set(of.flatMap((each) => Object.keys(each) as NeedName[]))
  const needs = new Map([...names].map((name) => [name, Float64Array.from(of, (each) => each[name] ?? -1).sort()]))
  const running = of.filter((each) => Object.entries(each).every(([name, much]) => name === 'excess' || much <= 0))
  const { today } = input
  const atRest = (moistureContent: number) => ({ name: '', temperature: 20, moistureContent })
  const state = today.kind === 'air' ? inAir('', today.air) : atRest(today.moistureContent)
  return {
    moving: {
      input,
      bearing: { resolved: { input: input.design, ballDiameter: mm(15) } },
      season: { today: state, states: moistures.map(atRest) },
    },
    needs,
    chances: { goesTogether: 1, knocks: 0, runs: [], runsAllYear: (running.length - loses) / 100 },
  }
}

function advised(request: Partial<SeasonalFitInput>, lacks: Lacks, year: Year = {}, freedom?: Freedom) {
  const input = { ...REQUEST, ...request }
  const answer = (one: SeasonalFitInput) => ok(answered(one, lacks, year))
  return adviceFor(answered(input, lacks, year), answer, answer, freedom)
}
const sizesOf = ({ changes }: ReturnType<typeof advised>) =>
  changes.flatMap((change) => (change.kind === 'length' ? [[change.path, change.from, change.to]] : []))
const run = (count: number) => (n: number) => (n < count ? -1 : 1)

describe('what runs in nine years of ten is left', () => {
  test.each([
    [90, 'leave'],
    [89, 'no-remedy'],
  ])('%s of a hundred: %s', (count, kind) => {
    const advice = advised({}, (_input, _sizes, n) => ({ gap: run(count)(n) }), {}, NOTHING)
    expect(advice).toMatchObject({ kind, changes: [], isLoose: false, chances: { runsAllYear: count / 100 } })
  })
})
const NOTHING: Freedom = { lengths: [], mayRebuild: () => false, mayRest: false }

/** Gap from 0.5 mm on, play from 0.2 on, each bearing a little more than the one before. */
const GROWING: Lacks = (_input, { ballGap, radialInternalClearance }, n) => ({
  gap: 0.5 + 0.01 * n - ballGap,
  excess: 0.01 * n - 0.5,
  play: 0.2 + 0.002 * n - radialInternalClearance,
})

describe('sizes', () => {
  test('each is what the 97th of a hundred needs, up to the next step; the widest gap is moved along', () => {
    const advice = advised({}, GROWING)
    expect(advice.kind).toBe('change-sizes')
    expect(sizesOf(advice)).toEqual([
      ['/design/ballGap', 0.7, 1.5],
      // 0.46 more than it may have, and 0.8 by which all gaps grow: 3.66
      ['/design/maxBallGap', 2.4, 3.7],
      ['/design/radialInternalClearance', 0.3, 0.4],
    ])
    expect(advice).toMatchObject({ isLoose: false, chances: { runsAllYear: 1 } })
  })

  test('in inches the steps are two thousandths', () => {
    const [gap, , play] = sizesOf(advised({ design: { ...DESIGN, units: 'in' } as DesignInput }, GROWING))
    expect(gap?.[2]).toBeWithin(1e-6, 25.4 * 0.058)
    expect(play?.[2]).toBeWithin(1e-6, 25.4 * 0.016)
  })

  test('a gap that is wide enough leaves the widest alone, though some are wider', () => {
    const advice = advised({}, (input, sizes, n) => ({ ...GROWING(input, sizes, n), gap: -1, excess: 1 }))
    expect(sizesOf(advice)).toEqual([['/design/radialInternalClearance', 0.3, 0.4]])
  })

  test('no gap may be allowed in which another ball finds room: a step below 0.95 of a ball; and that is loose', () => {
    const wide: Lacks = (_input, { ballGap }, n) => ({ gap: 0.5 + 0.01 * n - ballGap, excess: 100 })
    const advice = advised({}, wide)
    expect(sizesOf(advice)[1]).toEqual(['/design/maxBallGap', 2.4, 14.2])
    expect(advice.isLoose).toBe(true)
    const already = advised({ design: { ...DESIGN, maxBallGap: mm(14.24) } as DesignInput }, wide)
    expect(sizesOf(already)).toEqual([['/design/ballGap', 0.7, 1.5]])
  })

  test('they are chosen twice: the play that the new gap asks for is seen, what that play asks for is not', () => {
    const advice = advised({}, (_input, { ballGap, radialInternalClearance, balls }, n) => ({
      gap: n < 50 ? -1 : 1 - ballGap,
      play: n < 50 || ballGap < 1 ? -1 : 0.5 - radialInternalClearance,
      endPlay: n < 2 || radialInternalClearance < 0.5 ? -1 : n < 95 ? -0.001 : balls.length - 19,
    }))
    expect(sizesOf(advice)).toEqual([
      ['/design/ballGap', 0.7, 1],
      ['/design/maxBallGap', 2.4, 2.7],
      ['/design/radialInternalClearance', 0.3, 0.5],
    ])
  })

  test('a length that is in the way is made shorter, down to the next step', () => {
    const advice = advised({}, (_input, { balls }, n) => ({ endPlay: balls.length - 20 + 0.003 * n }))
    expect(sizesOf(advice)).toEqual([['/design/balls/length', 20, 19.7]])
  })

  test('what may not be changed is not, and a size that the design does not have is not invented', () => {
    const lengths = SEASON_LENGTHS.filter((path) => path !== '/radialInternalClearance')
    const advice = advised({}, GROWING, {}, { ...NOTHING, lengths })
    // One bearing in two has too little play still.
    expect(sizesOf(advice).map(([path]) => path)).toEqual(['/design/ballGap', '/design/maxBallGap'])
    const cage = advised({}, () => ({ cageClearance: 1 }))
    expect(cage).toMatchObject({ kind: 'no-remedy', changes: [] })
  })
})

describe('wood that rests', () => {
  const atRestNear =
    (middle: number): Lacks =>
    ({ today }) => ({ play: today.kind === 'moisture' && Math.abs(today.moistureContent - middle) < 0.3 ? -1 : 1 })
  const only: Freedom = { ...NOTHING, mayRest: true }

  test.each([
    { moistures: [7, 9], today: 8.6, to: 8 },
    { moistures: [7, 9], today: 14, to: 8 },
    { moistures: [7, 9.25, 8], today: 4, to: 8.1 },
    // damper than fibre saturation is not felt
    { moistures: [20, 40], today: 12, to: 25 },
  ])('at $today % in a year of $moistures: to the middle, $to %', ({ moistures, today, to }) => {
    const advice = advised({ today: moist(today) }, atRestNear(to), { moistures }, only)
    expect(advice.kind).toBe('rest-wood')
    expect(advice.changes).toEqual([{ kind: 'today', path: '/climate/today', to: moist(to) }])
  })

  test('play that rattles then is brought down again as far as nine in ten allow, and the advice is one', () => {
    const lacks: Lacks = ({ today }, { radialInternalClearance }, n) =>
      today.kind === 'moisture' && today.moistureContent === 8
        ? { play: (n < 92 ? 0.9 : 1.2) - radialInternalClearance }
        : { gap: 1 }
    const freedom: Freedom = { ...only, lengths: ['/radialInternalClearance'] }
    expect(advised({ today: moist(14) }, lacks, {}, freedom)).toMatchObject({
      kind: 'rest-wood',
      changes: [
        { kind: 'today', path: '/climate/today', to: moist(8) },
        { kind: 'length', path: '/design/radialInternalClearance', from: 0.3, to: 1 },
      ],
      isLoose: false,
      chances: { runsAllYear: 0.92 },
    })
  })

  test('half a per cent is not worth it, nor may it be where nothing may rest', () => {
    expect(advised({ today: moist(8.5) }, atRestNear(8), {}, only).kind).toBe('no-remedy')
    expect(advised({ today: moist(14) }, atRestNear(8), {}, NOTHING).kind).toBe('no-remedy')
  })

  const inRoom = (relativeHumidity: number): Today => ({ kind: 'air', air: { temperature: 20, relativeHumidity } })
  const yearOfAir = (...humidities: readonly number[]) =>
    humidities.map((relativeHumidity) => inAir('', { temperature: 20, relativeHumidity }).moistureContent)
  const inAirNear =
    (middle: number): Lacks =>
    ({ today }) => ({ play: today.kind === 'air' && Math.abs(today.air.relativeHumidity - middle) < 3 ? -1 : 1 })

  test('in air its place is told by a whole per cent of humidity', () => {
    const advice = advised({ today: inRoom(80) }, inAirNear(40), { moistures: yearOfAir(35, 45) }, only)
    expect(advice.changes).toEqual([{ kind: 'today', path: '/climate/today', to: inRoom(40) }])
  })

  test.each([
    ['drier than a box with a drier', yearOfAir(8, 24), 16],
    ['damper than a cellar', yearOfAir(86, 92), 89],
  ])('air %s is not to be had', (_what, moistures, middle) => {
    expect(advised({ today: inRoom(50) }, inAirNear(middle), { moistures }, only).kind).toBe('no-remedy')
  })
})

describe('another construction', () => {
  const runsIn =
    (...constructions: readonly string[]): Lacks =>
    ({ woods }) => ({ play: constructions.includes(woods.outerRing?.construction ?? '') ? -1 : 1 })
  const wood = (part: 'outerRing' | 'innerRing', to: RingWood) => ({ kind: 'wood', path: `/woods/${part}`, to })
  const both = (from: RingWood) => ({ woods: { outerRing: from, innerRing: from } })

  test.each([
    ['flat-sawn wood is taken from a quarter-sawn board', MAPLE, ['quarter-sawn', PLY.construction], QUARTER],
    ['else ply is', MAPLE, [PLY.construction], PLY],
    ['of a quarter-sawn board there is nothing but ply', QUARTER, [PLY.construction], PLY],
    ['and of segments', { ...MAPLE, construction: 'segmented' }, ['quarter-sawn', PLY.construction], PLY],
  ] as const)('%s', (_what, from, good, to) => {
    const advice = advised(both(from), runsIn(...good))
    expect(advice.kind).toBe('change-construction')
    expect(advice.changes).toEqual([wood('outerRing', to), wood('innerRing', to)])
  })

  test('ply has nothing steadier, and a part that may not be rebuilt is not', () => {
    expect(advised(both(PLY), runsIn('quarter-sawn')).kind).toBe('no-remedy')
    const one: Freedom = { ...NOTHING, mayRebuild: (part, to) => part === 'outerRing' && to !== 'quarter-sawn' }
    expect(advised(both(MAPLE), runsIn('quarter-sawn', PLY.construction), {}, one).changes).toEqual([
      wood('outerRing', PLY),
    ])
  })

  test('wood is rested before it is rebuilt, and rebuilt wood is rested too where that alone helps', () => {
    const lacks: Lacks = ({ today, woods }) => ({
      play: today.kind === 'moisture' && today.moistureContent === 8 && woods.outerRing === QUARTER ? -1 : 1,
    })
    const rests: Lacks = ({ today }) => ({ play: today.kind === 'moisture' && today.moistureContent === 8 ? -1 : 1 })
    expect(advised({ ...both(MAPLE), today: moist(14) }, rests).kind).toBe('rest-wood')
    const sawn: Lacks = (input, sizes, n) =>
      lacks(
        { ...input, woods: { outerRing: input.woods.outerRing?.construction === 'quarter-sawn' ? QUARTER : MAPLE } },
        sizes,
        n,
      )
    const advice = advised({ ...both(MAPLE), today: moist(14) }, sawn)
    expect(advice.kind).toBe('change-construction')
    expect(advice.changes.map(({ kind }) => kind)).toEqual(['wood', 'wood', 'today'])
  })
})

describe('which of several', () => {
  /** So many run as it is, with more play, and in ply. */
  const counted =
    (asItIs: number, withPlay: number, inPly: number, play = 0.5): Lacks =>
    ({ woods }, { radialInternalClearance }, n) => {
      if (woods.outerRing?.construction === PLY.construction) return { play: run(inPly)(n) }
      return radialInternalClearance >= play
        ? { gap: run(withPlay)(n) }
        : { gap: run(withPlay)(n), play: n < asItIs ? -1 : play - radialInternalClearance }
    }
  const flat = { woods: { outerRing: MAPLE } }
  const lengths = ['/radialInternalClearance']
  const free: Freedom = { lengths, mayRebuild: (_part, to) => to !== 'quarter-sawn', mayRest: false }

  test.each([
    ['a gain of five in a hundred is worth it', [50, 55, 50], 'change-sizes', 0.55],
    ['a gain of four is not', [50, 54, 50], 'no-remedy', 0.5],
    ['one in a hundred is, where it comes to ninety', [89, 90, 50], 'change-sizes', 0.9],
    ['of gains the largest', [50, 60, 70], 'change-construction', 0.7],
    ['whichever it is', [50, 70, 60], 'change-sizes', 0.7],
    ['the first that is good enough ends the search', [50, 95, 100], 'change-sizes', 0.95],
  ] as const)('%s', (_what, [asItIs, withPlay, inPly], kind, chance) => {
    const advice = advised(flat, counted(asItIs, withPlay, inPly), {}, free)
    expect(advice).toMatchObject({ kind, chances: { runsAllYear: chance } })
  })

  test.each([
    ['play that does not rattle, just', 1, 'change-sizes', false],
    ['play that rattles is passed over for a ring that does not', 1.05, 'change-construction', false],
  ])('%s', (_what, play, kind, isLoose) => {
    expect(advised(flat, counted(50, 95, 95, play), {}, free)).toMatchObject({ kind, isLoose })
  })

  test('a bearing that rattles is better than one that does not run', () => {
    expect(advised(flat, counted(50, 95, 89, 1.05), {}, free)).toMatchObject({ kind: 'change-sizes', isLoose: true })
  })

  test('what is advised has been answered in full, and what is refused is not advised', () => {
    const lacks = counted(50, 95, 92)
    const input = { ...REQUEST, ...flat }
    const sketch = (one: SeasonalFitInput) => ok(answered(one, lacks))
    const isPly = ({ woods }: SeasonalFitInput) => woods.outerRing?.construction === PLY.construction
    const exact = adviceFor(answered(input, lacks), (one) => ok(answered(one, lacks, { loses: 1 })), sketch, free)
    expect(exact).toMatchObject({ kind: 'change-sizes', chances: { runsAllYear: 0.94 } })
    const worse = adviceFor(answered(input, lacks), (one) => ok(answered(one, lacks, { loses: 44 })), sketch, free)
    expect(worse).toMatchObject({ kind: 'no-remedy', chances: { runsAllYear: 0.5 } })
    const refused = adviceFor(answered(input, lacks), () => fail('no'), sketch, free)
    expect(refused).toMatchObject({ kind: 'no-remedy', changes: [] })
    const plyAlone = (one: SeasonalFitInput) => (isPly(one) ? sketch(one) : fail('no'))
    expect(adviceFor(answered(input, lacks), plyAlone, plyAlone, free).kind).toBe('change-construction')
  })
})
