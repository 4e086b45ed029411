import { describe, expect, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** Larkmoor's gate hinge (invented): dowels between plain rings. */
const ROLLERS = { units: 'mm', arrangement: 'roller', balls: { count: 14, diameter: 12 }, bore: 16, ballGap: 0.6 }
/** Larkmoor's chart table (invented) turns on marbles. */
const PLATES = {
  units: 'mm',
  arrangement: 'thrust',
  balls: { count: 24, diameter: 16, material: 'glass' },
  bore: 60,
}
/** Larkmoor's lantern wheel (invented) turns on nine marbles in a cage. */
const CAGED = { units: 'mm', arrangement: 'caged', balls: { count: 9, diameter: 16, material: 'glass' }, bore: 20 }
const BALLS = { units: 'mm', balls: { count: 14, diameter: 12 }, bore: 16, ballGap: 0.6 }

const MAPLE = { construction: 'flat-sawn', species: 'maple-sugar' }
const SEASON = {
  design: {
    ...ROLLERS,
    balls: { ...ROLLERS.balls, material: 'steel' },
    making: {
      woods: { outerRing: MAPLE, innerRing: MAPLE },
      climate: { today: { relativeHumidity: 50 }, relativeHumidity: { min: 30, max: 65 } },
    },
  },
}

/** Every text of an answer that is more than one word, but for what stands in quotes of ours. */
function sentencesIn(value: unknown): string {
  if (typeof value === 'string') return value.includes(' ') ? `${value}\n` : ''
  return typeof value === 'object' && value !== null ? Object.values(value).map(sentencesIn).join('') : ''
}
/** How a refusal speaks of bearings of each arrangement. */
const BEARINGS: Readonly<Record<string, string>> = {
  radial: 'radial bearings',
  roller: 'roller bearings',
  thrust: 'turntables',
  caged: 'caged bearings',
}
const OF_BALLS = /groove|\bballs?\b|\bdeep/i

const asked = async (path: string, body: object) => post(`${await sharedApp()}/v1/${path}`, body)

async function answered(path: string, body: object) {
  const answer = await asked(path, body)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('design', () => {
  test('every answer says its arrangement, and all come as one media type', async () => {
    const bodies = { roller: ROLLERS, radial: { ...BALLS, arrangement: 'radial' }, thrust: PLATES, caged: CAGED }
    for (const [arrangement, body] of Object.entries(bodies)) {
      const { headers, text } = await asked('design', body)
      expect(headers['content-type']).toBe('application/json; charset=utf-8')
      expect(JSON.parse(text)).toMatchObject({ arrangement, input: { arrangement } })
    }
  })

  test('whoever takes JSON takes a sister; whoever takes none is told', async () => {
    const address = `${await sharedApp()}/v1/design`
    expect((await post(address, ROLLERS, { accept: 'application/json' })).status).toBe(200)
    expect((await post(address, ROLLERS, { accept: 'text/html' })).status).toBe(406)
  })

  test('the same as a query, with a tag', async () => {
    const query = 'units=mm&arrangement=roller&balls.count=14&balls.diameter=12&bore=16&ballGap=0.6'
    const answer = await ask(`${await sharedApp()}/v1/design?${query}`)
    expect(answer.status, answer.text).toBe(200)
    expect(answer.headers['etag']).toBeDefined()
    expect(JSON.parse(answer.text)).toEqual(await answered('design', ROLLERS))
  })

  test('whoever names no arrangement asks for a radial one: as a body, as a query, and in a question', async () => {
    const radial = await answered('design', { ...BALLS, arrangement: 'radial' })
    expect(await answered('design', BALLS)).toEqual(radial)
    const query = 'units=mm&balls.count=14&balls.diameter=12&bore=16&ballGap=0.6'
    expect(JSON.parse((await ask(`${await sharedApp()}/v1/design?${query}`)).text)).toEqual(radial)
    const [said, unsaid] = [{ ...BALLS, arrangement: 'radial' }, BALLS].map((design) => ({ design, radialLoad: 50 }))
    expect(await answered('load-check', unsaid ?? {})).toEqual(await answered('load-check', said ?? {}))
  })

  test.each([null, 7, 'roler', 'RADIAL', ''])(
    '%o is no arrangement: nothing is put in its place',
    async (arrangement) => {
      for (const [path, at, body] of [
        ['design', '', { ...BALLS, arrangement }],
        ['load-check', '/design', { design: { ...BALLS, arrangement }, radialLoad: 50 }],
      ] as const) {
        expect(problemIn(await asked(path, body), 400).errors).toEqual([
          {
            path: `${at}/arrangement`,
            message: expect.stringMatching(/^must be one of "radial", "thrust", "roller" or "caged"; .* was given/),
          },
        ])
      }
    },
  )

  test('no groove and no ball is spoken of, in figures or in words', async () => {
    const { input, ...answer } = await answered('design', {
      ...ROLLERS,
      ballGap: 0,
      balls: { count: 4, diameter: 12 },
      bore: 2,
    })
    const { sources: _sources, cautions, ...said } = answer
    expect(sentencesIn(said)).not.toMatch(OF_BALLS)
    expect(input).not.toHaveProperty('groove')
    expect(cautions.map(({ code }: { code: string }) => code)).toContain('roller-skew')
  })

  test('what only other arrangements have is refused where it was given, all at once', async () => {
    for (const [body, ...paths] of [
      [
        {
          ...ROLLERS,
          outerRing: { engagement: 0.2, groove: { conformity: 0.53 } },
          innerRing: { engagement: 0.4 },
          groove: { conformity: 0.53 },
          split: 'none',
        },
        ...['/groove', '/innerRing', '/outerRing/engagement', '/outerRing/groove', '/split'],
      ],
      [{ ...BALLS, balls: { ...BALLS.balls, length: 10 }, cage: { width: 20 } }, '/balls/length', '/cage'],
      [
        { ...PLATES, width: 20, outerRing: { wall: 10 }, radialInternalClearance: 0.3 },
        ...['/outerRing', '/radialInternalClearance', '/width'],
      ],
      [{ ...CAGED, ballGap: 1, maxBallGap: 1, plates: { thickness: 20 } }, ...['/ballGap', '/maxBallGap', '/plates']],
    ] as const) {
      const { errors = [] } = problemIn(await asked('design', body), 400)
      expect(errors.toSorted((one, other) => (one.path < other.path ? -1 : 1))).toEqual(
        paths.map((path) => ({
          path,
          message: `does not apply to ${BEARINGS['arrangement' in body ? body.arrangement : 'radial']}: remove it`,
        })),
      )
    }
  })
})

describe('what rollers can be asked', () => {
  test('size table: the rows of the same ring', async () => {
    const row = async (arrangement: string) =>
      (await answered('size-table', { units: 'mm', arrangement, diameters: [12], counts: [14], ballGap: 0.6 })).rows[0]
    const [rollers, balls] = [await row('roller'), await row('radial')]
    expect(rollers.pitchRadius).toBe(balls.pitchRadius)
    expect(rollers.outerRing.trackDiameter).toBe(balls.outerRing.grooveBottomDiameter)
    expect(rollers.outerRing).not.toHaveProperty('landDiameter')
  })

  test('tolerance check: the gap of the same circles, and where to stop at the track', async () => {
    const contributors = {
      ballDiameter: { kind: 'normal', standardDeviation: 0.1 },
      outerGrooveBottomRadius: { kind: 'uniform', plusMinus: 0.1 },
    }
    const check = (design: object) => answered('tolerance-check', { design, contributors, trials: 20_000 })
    const [rollers, balls] = [await check(ROLLERS), await check(BALLS)]
    expect(rollers.ballGap.monteCarlo).toEqual(balls.ballGap.monteCarlo)
    expect(rollers.aim.bestYield).not.toHaveProperty('grooveDepth')
    expect(rollers.aim.bestYield.wider).not.toBe(0)
    expect(sentencesIn([rollers.summary, rollers.assumed, rollers.notes, rollers.aim])).not.toMatch(OF_BALLS)
    expect(rollers.aim.message).toMatch(/outer track [\d.]+ mm across/)
  })

  test('fit correction: a gap that was read, and a depth that cannot be', async () => {
    const target = { minBallGap: 0.4 }
    const reading = (design: object, readings: readonly object[]) => ({ design, ring: 'outer', readings, target })
    const gap = [{ kind: 'ball-gap', value: 0.1, graduation: 0.1 }]
    const answer = await answered('fit-correction', reading(ROLLERS, gap))
    expect(answer.state).toBe('more-to-remove')
    expect(answer.remaining.radial).toBeWithin(0.03, 0.5 / 6.2)
    const depth = [{ kind: 'groove-depth', value: 3, landDiameter: 60 }]
    problemIn(await asked('fit-correction', reading(ROLLERS, depth)), 422)
    const inner = { design: ROLLERS, ring: 'inner', readings: [{ kind: 'binds' }] }
    expect((await answered('fit-correction', inner)).state).toBe('more-to-remove')
  })

  test('fit correction of a track that is too wide: every rescue is worked out', async () => {
    const readings = [{ kind: 'ball-gap', value: 3.2, graduation: 0.1 }]
    const { sources: _, ...answer } = await answered('fit-correction', { design: ROLLERS, ring: 'outer', readings })
    expect(answer.state).toBe('too-deep')
    expect(answer.rescue.map(({ option }: { option: string }) => option)).toContain('lining')
    expect(sentencesIn(answer)).not.toMatch(OF_BALLS)
  })

  test('load check: a line is loaded less than a point, and spreads the load to fewer of them', async () => {
    const check = (design: object) => answered('load-check', { design, radialLoad: 100, wood: 'maple-sugar' })
    const [rollers, balls] = [await check(ROLLERS), await check(BALLS)]
    expect(rollers.outerRing.width).toBeWithin(1e-9, 23.4)
    expect(rollers.innerRing.maxPressure).toBeLessThan(balls.innerRing.maxPressure)
    expect(rollers.ruinLoad.radialLoad).toBeGreaterThan(balls.ruinLoad.radialLoad)
  })

  test('ball selection: which dowels of a lot', async () => {
    const measured = Array.from({ length: 20 }, (_, index) => 11.8 + 0.02 * index)
    const body = { design: ROLLERS, measured, goal: 'close-groove' }
    const { sources: _, ...answer } = await answered('ball-selection', body)
    expect(sentencesIn(answer)).not.toMatch(OF_BALLS)
  })
})

describe('sheets of rollers', () => {
  test('the operations turn tracks and cut no groove, cut rollers to length, and end with cheeks', async () => {
    const sheet = await answered('job-sheet', ROLLERS)
    const ids = sheet.operations.map(({ id }: { readonly id: string }) => id)
    expect(ids).toEqual([
      'choose-wood',
      'cut-rollers',
      'choose-balls',
      'make-gauges',
      'outer-layout',
      'outer-bore',
      'outer-saw',
      'outer-outside',
      'outer-core',
      'outer-track',
      'outer-fit',
      'outer-sand',
      'inner-blank',
      'inner-track',
      'inner-fit',
      'inner-sand',
      'cheeks',
      'finish',
      'grain',
      'wax',
      'run-in',
      'mount',
      'care',
    ])
    const said = sheet.operations.map(({ cautions: _, ...operation }: { readonly cautions: unknown }) => operation)
    expect(sentencesIn(said)).not.toMatch(/groove|\bballs?\b/i)
  })

  test('the size to stop at before the abrasive is in the wood: a hole smaller, an outside larger', async () => {
    const design = await answered('design', ROLLERS)
    const { operations } = await answered('job-sheet', ROLLERS)
    const sizeOf = (id: string) => operations.find((operation: { id: string }) => operation.id === id).sizes[0]
    expect(sizeOf('outer-track')).toMatchObject({ symbol: 'E', value: design.outerRing.trackDiameter })
    expect(sizeOf('outer-track').stopAt).toBeLessThan(design.outerRing.trackDiameter)
    expect(sizeOf('inner-track')).toMatchObject({ symbol: 'F', value: design.innerRing.trackDiameter })
    expect(sizeOf('inner-track').stopAt).toBeGreaterThan(design.innerRing.trackDiameter)
  })

  test.each(['assembly', 'templates', 'gauges'])('%s: as a picture, for a machine, and to print', async (view) => {
    const svg = await asked(`drawings/${view}.svg`, ROLLERS)
    expect(svg.status).toBe(200)
    expect(svg.text).not.toMatch(/NaN|Infinity|undefined/)
    expect(svg.text).not.toMatch(/\b(groove|ball)/i)
    expect((await asked(`drawings/${view}.html`, ROLLERS)).text).toMatch(/14 wooden rollers of 12 mm, 85 mm outside/)
    expect((await asked(`drawings/${view}.dxf`, ROLLERS)).text).not.toMatch(/NaN|Infinity/)
    expect((await asked(`drawings/${view}.pdf`, ROLLERS)).text).toMatch(/^%PDF/)
  })
})

describe('a turntable', () => {
  test.each(['assembly', 'templates', 'gauges'])('%s: as a picture, in a frame, and to print', async (view) => {
    const svg = await asked(`drawings/${view}.svg`, PLATES)
    expect(svg.status).toBe(200)
    expect(svg.text).not.toMatch(/NaN|Infinity|undefined/)
    expect((await asked(`drawings/${view}.html`, PLATES)).text).toMatch(/24 glass balls of 16 mm, 175 mm outside/)
    expect((await asked(`drawings/${view}.pdf`, PLATES)).text).toMatch(/^%PDF/)
  })
})

describe('what plates can be asked', () => {
  test('load check: beside the axis it turns slower, and the summary says what happens first', async () => {
    const checkAt = async (offset: number, more: object = {}) =>
      answered('load-check', { design: PLATES, axialLoad: 30, offset, wood: 'maple-sugar', ...more })
    const [beside, over] = [await checkAt(20), await checkAt(0)]
    expect(beside.speedLimit.reason).toBe('load-slides-off')
    expect(beside.summary).toMatch(/from about \d+ turns a minute on, the load slides off the plate/)
    expect(beside.speedLimit.speed).toBeLessThan(over.speedLimit.speed)
    expect(beside.input).toMatchObject({ load: { turnsWithPlate: true }, friction: 0.3 })
    const tall = await checkAt(20, { load: { height: 300 }, friction: 1 })
    expect(tall.speedLimit.reason).toBe('plate-tips')
    expect(tall.handTurned.speed).toBeLessThan(tall.speedLimit.speed)
    expect(over.speedLimit).toEqual(over.speedLimits[0])
  })

  const WITH_GAP = { ...PLATES, ballGap: 1 }
  const NOT_OF_PLATES = /\b(?:inner|outer) ring|\bland|too deep|groove bottom/

  test('size table: the rows of turntables, and the same for a spreadsheet', async () => {
    const body = { units: 'mm', arrangement: 'thrust', diameters: [16], counts: [18, 24], ballGap: 1 }
    const { rows } = await answered('size-table', body)
    expect(rows[1]).toMatchObject({
      balls: { count: 24, diameter: 16 },
      plateGap: expect.closeTo(6.4),
      height: expect.closeTo(38.4),
    })
    expect(rows[1].pitchRadius).toBe((await answered('design', WITH_GAP)).pitchRadius)
    const sheet = await post(`${await sharedApp()}/v1/size-table`, body, { accept: 'text/csv' })
    expect(sheet.text.split('\r\n')[0]).toMatch(
      /^balls\.diameter \(mm\),balls\.count,.*,plateGap \(mm\),height \(mm\),gapPerPitchRadius$/,
    )
  })

  test('fit correction: no ring is named, and none is spoken of', async () => {
    const read = (value: number) => ({ design: WITH_GAP, readings: [{ kind: 'ball-gap', value, graduation: 0.1 }] })
    const tight = await answered('fit-correction', { ...read(0.1), target: { minBallGap: 0.5 } })
    expect(tight).toMatchObject({ arrangement: 'thrust', state: 'more-to-remove' })
    expect(tight).not.toHaveProperty('ring')
    expect(tight.nextStep.until).toEqual({ grooveCircleDiameter: expect.any(Number) })
    const loose = await answered('fit-correction', read(4))
    expect(loose.state).toBe('too-deep')
    for (const { sources: _, ...answer } of [tight, loose]) expect(sentencesIn(answer)).not.toMatch(NOT_OF_PLATES)
  })

  const SCATTER = {
    ballLotMean: { kind: 'uniform', plusMinus: 0.1 },
    grooveCircleRadius: { kind: 'uniform', plusMinus: 0.1 },
  }

  test('tolerance check: the gap and the space between the plates, in words of plates, and as a picture', async () => {
    const body = { design: WITH_GAP, contributors: SCATTER, limits: { minPlateGap: 5 } }
    const answer = await answered('tolerance-check', body)
    expect(answer.arrangement).toBe('thrust')
    expect(answer).not.toHaveProperty('radialInternalClearance')
    expect(answer.plateGap.nominal).toBeWithin(1e-9, 6.4)
    expect(answer.input.limits).toEqual({
      minBallGap: 0,
      maxBallGap: 2,
      minPlateGap: 5,
      maxPlateGap: expect.closeTo(9.6),
    })
    expect(answer.aim.bestYield.grooveCircleDiameter).toBeGreaterThan(100)
    expect(sentencesIn(answer)).not.toMatch(/\bouter groove|\binner|\bland\b|\bthe play\b|too deep/)
    const picture = await post(`${await sharedApp()}/v1/tolerance-check`, body, { accept: 'image/svg+xml' })
    expect(picture.text).toMatch(/^<svg/)
    expect(picture.text).not.toMatch(/ deep\b/)
  })

  test('tolerance check: what only rings have is refused by name, and the weather counts', async () => {
    const ofRings = { outerGrooveBottomRadius: { kind: 'uniform', plusMinus: 0.1 } }
    const problem = problemIn(await asked('tolerance-check', { design: WITH_GAP, contributors: ofRings }), 422)
    expect(problem.errors).toEqual([
      {
        path: '/contributors/outerGrooveBottomRadius',
        message: 'does not apply to turntables: remove it',
      },
    ])
    const making = { ...SEASON.design.making, woods: { plates: MAPLE } }
    const weather = {
      design: { ...WITH_GAP, balls: { ...PLATES.balls, material: 'steel' }, making },
      contributors: SCATTER,
    }
    const answer = await answered('tolerance-check', weather)
    const moved = answer.sensitivities.find(
      ({ contributor }: { readonly contributor: string }) => contributor === 'climate',
    )
    expect(moved.ballGap.shareOfVariance).toBeGreaterThan(0.1)
  })

  test('load check: a load along the axis, in words of plates; a suggestion, taken, clears its warning', async () => {
    const body = { design: WITH_GAP, axialLoad: 40, offset: 10, speed: 30 }
    const answer = await answered('load-check', body)
    expect(answer).toMatchObject({
      arrangement: 'thrust',
      input: { axialLoad: 40, offset: 10 },
      perTurn: { ballSet: 0.5, passes: 12 },
    })
    for (const name of ['radialLoad', 'turning']) expect(answer.input).not.toHaveProperty(name)
    for (const name of ['outerRing', 'innerRing']) expect(answer).not.toHaveProperty(name)
    expect(answer.atSpeed).toMatchObject({ ballSetSpeed: 15, passFrequency: 6 })
    expect(answer.sharing.ballLoads.length).toBe(24)
    expect(answer.sharing.uneven.message).toMatch(/three of the tallest/)
    const { units: _units, ...request } = { units: 'mm', ...body, axialLoad: 90_000, speed: 90_000, offset: 0 }
    const heavy = await answered('load-check', request)
    const tight = await answered('load-check', { ...body, design: { ...WITH_GAP, groove: { conformity: 0.45 } } })
    const taken = heavy.warnings.flatMap((warning: { suggestion?: object }) => warning.suggestion ?? [])
    expect(taken.map(({ path }: { path: string }) => path)).toEqual(['/axialLoad', '/speed'])
    const mended = Object.fromEntries(
      taken.map(({ path, value }: { path: string; value: number }) => [path.slice(1), value]),
    )
    const left = (await answered('load-check', { ...request, ...mended })).warnings
    for (const { code } of left) expect(code).not.toMatch(/dents-deeper|ball-sinks-in|too-fast/)
    for (const each of [answer, heavy, tight]) {
      const { sources: _sources, cautions: _cautions, ...said } = each
      expect(sentencesIn(said)).not.toMatch(/\b(?:inner|outer) (?:ring|groove)|\bland|\brings?\b|the play/)
    }
    expect(sentencesIn(answer.cautions)).not.toMatch(/\bthe ring\b/)
  })

  test('load check: the load of each arrangement is asked for, that of the other refused by name', async () => {
    const load = async (body: object, status: number) => problemIn(await asked('load-check', body), status).errors
    expect(await load({ design: WITH_GAP }, 400)).toEqual([{ path: '/axialLoad', message: '"axialLoad" is missing' }])
    expect(await load({ design: BALLS, axialLoad: 1 }, 400)).toEqual([
      { path: '/radialLoad', message: '"radialLoad" is missing' },
    ])
    const foreign = (bearings: string, path: string) => ({ path, message: `does not apply to ${bearings}: remove it` })
    expect(await load({ design: WITH_GAP, axialLoad: 1, radialLoad: 1, turning: 'outer-ring' }, 422)).toEqual([
      foreign('turntables', '/radialLoad'),
      foreign('turntables', '/turning'),
    ])
    expect(await load({ design: BALLS, axialLoad: 1, radialLoad: 1, offset: 0 }, 422)).toEqual([
      foreign('radial bearings', '/axialLoad'),
      foreign('radial bearings', '/offset'),
    ])
    expect(await load({ design: WITH_GAP, axialLoad: 1, offset: 100 }, 422)).toEqual([
      { path: '/offset', message: expect.stringMatching(/^A load 100 mm from the axis can tip the upper plate/) },
    ])
    expect(await load({ design: { ...WITH_GAP, bore: 500 }, axialLoad: 1 }, 422)).toMatchObject([
      { path: '/design/bore' },
    ])
  })

  test('ball selection: the balls for a circle, how the upper plate lies on them, in words of plates', async () => {
    const measured = Array.from({ length: 30 }, (_, ball) => 15.9 + 0.2 * ((ball * 0.618) % 1))
    const { grooveCircleDiameter } = (await answered('design', WITH_GAP)).plates.lower
    const body = { design: WITH_GAP, measured, goal: 'close-groove', grooveCircleDiameter: grooveCircleDiameter + 0.1 }
    const answer = await answered('ball-selection', body)
    expect(answer).toMatchObject({
      arrangement: 'thrust',
      input: { grooveCircleDiameter: expect.closeTo(grooveCircleDiameter + 0.1, 6) },
    })
    expect(answer.input).not.toHaveProperty('grooveBottomDiameter')
    expect(answer.ballGap).toBeWithin(0.01, 1)
    const { carriers, plateGap, rise, mostClearance } = answer.plateRest
    expect(carriers.length).toBe(3)
    expect(carriers.reduce((sum: number, { share }: { share: number }) => sum + share, 0)).toBeWithin(1e-9, 1)
    expect(plateGap).toBeWithin(0.2, 6.4)
    expect(rise).toBeLessThan(answer.spread)
    expect(mostClearance).toBeLessThan(2 * answer.spread)
    const small = await answered('ball-selection', { ...body, measured: measured.map((size) => size - 0.3) })
    const large = await answered('ball-selection', { ...body, measured: measured.map((size) => size + 0.3) })
    expect(large.warnings[0]).toMatchObject({ code: 'does-not-close', path: '/measured' })
    expect(large.warnings[0].suggestion.path).toBe('/grooveCircleDiameter')
    for (const each of [answer, small, large]) {
      expect(
        sentencesIn([each.summary, each.assumed, each.bounds, each.orderEffect, each.warnings, each.plateRest]),
      ).not.toMatch(NOT_OF_PLATES)
    }
  })

  test('ball selection: a groove bottom is refused by name, to rings a circle is', async () => {
    const lot = { measured: Array.from({ length: 30 }, () => 16), goal: 'close-groove' }
    const ofRings = await asked('ball-selection', { ...lot, design: WITH_GAP, grooveBottomDiameter: 80 })
    expect(problemIn(ofRings, 422).errors).toEqual([
      { path: '/grooveBottomDiameter', message: 'does not apply to turntables: remove it' },
    ])
    const ofPlates = await asked('ball-selection', { ...lot, design: BALLS, grooveCircleDiameter: 80 })
    expect(problemIn(ofPlates, 422).errors?.[0]?.path).toBe('/grooveCircleDiameter')
    const tight = await asked('ball-selection', { ...lot, design: WITH_GAP, grooveCircleDiameter: 60 })
    expect(problemIn(tight, 422).errors).toEqual([
      {
        path: '/grooveCircleDiameter',
        message: expect.stringMatching(/^60 mm across the groove's circle is far too small/),
      },
    ])
  })

  test('a ring is named for rings, and for them alone', async () => {
    const readings = [{ kind: 'ball-gap', value: 0.1, graduation: 0.1 }]
    expect(problemIn(await asked('fit-correction', { design: WITH_GAP, ring: 'outer', readings }), 400).errors).toEqual(
      [{ path: '/ring', message: 'does not apply to plates, which are cut alike: remove it' }],
    )
    expect(problemIn(await asked('fit-correction', { design: BALLS, readings }), 400).errors).toEqual([
      { path: '/ring', message: 'must say which ring is being cut: "outer" or "inner"' },
    ])
  })

  test('a depth says nothing of the circle, and is not read', async () => {
    const readings = [{ kind: 'groove-depth', value: 4, landDiameter: 80 }]
    problemIn(await asked('fit-correction', { design: WITH_GAP, readings }), 422)
  })
})

describe('balls in a cage', () => {
  test('design: no gap, a cage, and how it is filled; said of it by its tag', async () => {
    const { sources: _, ...answer } = await answered('design', CAGED)
    expect(answer).toMatchObject({ arrangement: 'caged', cage: { pieces: 2, width: 24 }, filling: { mostBalls: 9 } })
    expect(answer.filling.limit).toBeGreaterThan(180)
    // To the last digit of the cage's lengths, 1e-6 mm.
    expect(answer.filling.angle).toBeWithin(1e-5, 180)
    for (const name of ['ballGap', 'gauge', 'closedPitchRadius', 'gapPerPitchRadius']) {
      expect(answer).not.toHaveProperty(name)
    }
    expect(answer.warnings).toEqual([])
    expect(sentencesIn(answer)).not.toMatch(/\bgap\b/)
  })

  test('the same as a query, its cage by dots', async () => {
    const query = 'units=mm&arrangement=caged&balls.count=9&balls.diameter=16&balls.material=glass&bore=20&cage.web=12'
    const answer = await ask(`${await sharedApp()}/v1/design?${query}`)
    expect(answer.status, answer.text).toBe(200)
    expect(JSON.parse(answer.text)).toEqual(await answered('design', { ...CAGED, cage: { web: 12 } }))
  })

  test('both ways to say how far apart the balls stand, and a gap that there is not, are refused by name', async () => {
    const both = { ...CAGED, cage: { web: 9, pitchDiameter: 90 } }
    expect(problemIn(await asked('design', both), 400).errors?.[0]?.path).toMatch(/^\/cage/)
    expect(problemIn(await asked('design', { ...CAGED, ballGap: 1 }), 400).errors).toEqual([
      { path: '/ballGap', message: 'does not apply to caged bearings: remove it' },
    ])
    const misspelt = problemIn(await asked('design', { ...CAGED, cage: { webb: 9 } }), 400)
    expect(misspelt.errors?.[0]?.message).toMatch(/web/)
  })

  test('too many balls for a half turn: both reasons are said, and what helps', async () => {
    const crowded = { ...CAGED, cage: { web: 3 }, innerRing: { engagement: 0.4 } }
    const { warnings } = await answered('design', crowded)
    const found = warnings.find(({ code }: { code: string }) => code === 'cannot-assemble')
    expect(found.message).toMatch(/9 balls reach too far round.* The lands are too close/)
    expect(found.suggestion).toEqual({ path: '/split', value: 'inner-ring' })
  })

  test('fit correction: the inner ring by its play; the outer one has no gap to read', async () => {
    const readings = [{ kind: 'radial-play', value: 0.1, graduation: 0.02 }]
    const answer = await answered('fit-correction', { design: CAGED, ring: 'inner', readings })
    expect(answer).toMatchObject({ ring: 'inner', state: 'more-to-remove' })
    expect(answer.remaining.diametral).toBeWithin(0.02, answer.input.design.radialInternalClearance - 0.1)
    const outer = { design: CAGED, ring: 'outer', readings: [{ kind: 'groove-bottom-diameter', value: 98 }] }
    expect(problemIn(await asked('fit-correction', outer), 422).errors).toEqual([
      { path: '/ring', message: expect.stringMatching(/the cage keeps the balls apart/) },
    ])
  })

  test('load check: the same rings carry less on fewer balls, and each ball more', async () => {
    const check = (design: object) => answered('load-check', { design, radialLoad: 50, wood: 'maple-sugar' })
    // The usual play grows with the balls' scatter and count, and with more of it one ball carries all.
    const caged = { ...CAGED, radialInternalClearance: 0.32 }
    const [nine, six] = [await check(caged), await check({ ...caged, balls: { ...CAGED.balls, count: 6 } })]
    // Without play the most loaded of Z balls carries 4.37 Fr / Z (Stribeck), with play more: at least that.
    expect(nine.sharing.mostLoadedBall).toBeGreaterThan((4.37 * 50) / 9)
    expect(six.sharing.mostLoadedBall).toBeGreaterThan(nine.sharing.mostLoadedBall)
    expect(six.ruinLoad.radialLoad).toBeLessThan(nine.ruinLoad.radialLoad)
  })

  test.each(['assembly', 'templates', 'gauges'])(
    '%s: as a picture, in a frame, for a machine, and to print',
    async (view) => {
      const svg = await asked(`drawings/${view}.svg`, CAGED)
      expect(svg.status).toBe(200)
      expect(svg.text).not.toMatch(/NaN|Infinity|undefined/)
      expect((await asked(`drawings/${view}.html`, CAGED)).text).toMatch(/9 glass balls of 16 mm, 120 mm outside/)
      expect((await asked(`drawings/${view}.dxf`, CAGED)).text).not.toMatch(/NaN|Infinity/)
      expect((await asked(`drawings/${view}.pdf`, CAGED)).text).toMatch(/^%PDF/)
    },
  )

  test.each([
    [
      'tolerance-check',
      { design: CAGED, contributors: { ballDiameter: { kind: 'normal', standardDeviation: 0.1 } } },
      '/design',
    ],
    [
      'ball-selection',
      { design: CAGED, measured: Array.from({ length: 12 }, () => 16), goal: 'close-groove' },
      '/design',
    ],
  ])('%s says that it does not answer for one', async (path, body, at) => {
    const answer = await asked(path, body)
    expect(problemIn(answer, 422).errors).toEqual([
      { path: `${at}/arrangement`, message: expect.stringMatching(/is not available for caged bearings/) },
    ])
  })

  test('a size table has no rows of cages, and says of what it has', async () => {
    const body = { units: 'mm', arrangement: 'caged', diameters: [16], counts: [9] }
    expect(problemIn(await asked('size-table', body), 400).errors).toEqual([
      { path: '/arrangement', message: 'must be one of "radial", "thrust" or "roller"; "caged" was given' },
    ])
  })
})

test('a year of wooden rollers: told of rollers, but by the names that a request has', async () => {
  const answer = await asked('seasonal-fit', {
    design: { ...SEASON.design, balls: { ...ROLLERS.balls, material: 'wood' } },
  })
  expect(problemIn(answer, 422).errors).toEqual([
    {
      path: '/design/making/woods/balls',
      message: expect.stringMatching(/^The rollers are of wood. Name it, as "balls": /),
    },
  ])
})
