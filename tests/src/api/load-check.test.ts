import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { ask, faultsIn, post, problemIn } from '#tests/support/ask.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** Larkmoor's tide clock (invented): fourteen marbles in sugar maple. */
const DESIGN = { units: 'mm', balls: { count: 14, diameter: 14, material: 'glass' }, bore: 10, ballGap: 0.7 }
const REQUEST = { design: DESIGN, radialLoad: 20, speed: 30 }

type Limit = { readonly radialLoad: number; readonly depth: number; readonly ring: string; readonly message: string }
type Seat = { readonly seat: string; readonly maxPressure: number; readonly width: number; readonly dent?: number }
type Check = {
  readonly units: string
  readonly forceUnits: string
  readonly pressureUnits: string
  readonly input: { readonly wood: string; readonly ballWood?: string }
  readonly summary: string
  readonly handTurned: { readonly message: string }
  readonly sharing: { readonly mostLoadedBall: number; readonly ballLoads: readonly number[] }
  readonly outerRing: Seat
  readonly innerRing: Seat
  readonly firstMark: Limit
  readonly ruinLoad: Limit
  readonly workingLoad: { readonly still: number; readonly slowHand: number; readonly message: string }
  readonly substitutes: readonly { readonly standsFor: string; readonly from: string }[]
  readonly atSpeed?: { readonly outerPassFrequency: number; readonly ballForce: number }
  readonly speedLimit: { readonly reason: string; readonly speed: number; readonly message: string }
  readonly warnings: readonly {
    readonly code: string
    readonly path: string
    readonly message: string
    readonly suggestion?: { readonly path: string; readonly value: number }
  }[]
  readonly cautions: readonly { readonly code: string }[]
  readonly sources: readonly { readonly id: string }[]
}

const address = async () => `${await sharedApp()}/v1/load-check`

async function checked(url: string, request: object): Promise<Check> {
  const answer = await post(url, request)
  expect(answer.status, answer.text).toBe(200)
  return JSON.parse(answer.text)
}

describe('a clock and a curious finger', () => {
  test('the whole answer: shares, touches, limits, speeds, cautions, and no claim of safety', async () => {
    const answer = await checked(await address(), REQUEST)
    expect(answer).toMatchObject({ units: 'mm', forceUnits: 'N', pressureUnits: 'MPa' })
    expect(answer.input.wood).toBe('maple-sugar')
    expect(answer.input).not.toHaveProperty('ballWood')
    expect(answer.sharing.ballLoads.length).toBe(14)
    expect(answer.summary).toMatch(/estimate for light work, not a safety rating/)
    expect(answer.speedLimit.message).toMatch(/^From about .* stay well below that\.$/)
    expect(answer.summary).toMatch(
      /^Your load of 20 N \(2 kg\) leaves no mark .* Load it with at most .* Turn it by hand or with a crank, at most 120 turns a minute/,
    )
    expect(answer.workingLoad.still).toBeLessThan(answer.workingLoad.slowHand)
    expect(answer.workingLoad.slowHand).toBeLessThan(answer.ruinLoad.radialLoad)
    expect(answer.substitutes).toMatchObject([{ from: 'basswood-american', standsFor: 'maple-sugar' }])
    const codes = answer.cautions.map(({ code }) => code)
    expect(codes[0]).toBe('estimate-only')
    expect(codes).toContain('glass-balls')
    expect(answer.sources.map(({ id }) => id)).toContain('hertz')
    for (const [path, number] of numberLeaves(answer)) expect(Number.isFinite(number), path).toBe(true)
  })

  test('without a speed there is no answer at speed', async () => {
    const { speed, ...still } = REQUEST
    const url = await address()
    expect(await checked(url, still)).not.toHaveProperty('atSpeed')
    expect((await checked(url, REQUEST)).atSpeed?.outerPassFrequency).toBeGreaterThan(speed / 60)
  })

  test('a wood that nobody gave is said to be assumed', async () => {
    const assumed = /is for sugar maple, which is assumed because no wood was given/
    const woods = { outerRing: { species: 'maple-sugar' }, innerRing: { species: 'maple-sugar' } }
    const url = await address()
    expect((await checked(url, REQUEST)).summary).toMatch(assumed)
    expect((await checked(url, { ...REQUEST, wood: 'maple-sugar' })).summary).not.toMatch(/assumed/)
    const planned = { ...REQUEST, design: { ...DESIGN, making: { woods } } }
    expect((await checked(url, planned)).summary).not.toMatch(/assumed/)
  })

  test('pounds and inches are the same load and the same bearing', async () => {
    const url = await address()
    const mm = await checked(url, REQUEST)
    const inches = await checked(url, {
      ...REQUEST,
      design: {
        ...DESIGN,
        units: 'in',
        balls: { ...DESIGN.balls, diameter: '14 mm' },
        bore: '10 mm',
        ballGap: '0.7 mm',
      },
      radialLoad: 20 / 4.4482216152605,
    })
    expect(inches).toMatchObject({ units: 'in', forceUnits: 'lbf', pressureUnits: 'lbf/in2' })
    // What the caller left out is rounded in the units of the request: by half of a ten-millionth of an inch, 1.3e-6 mm.
    expect(inches.innerRing.width * 25.4).toBeWithin(5e-6, mm.innerRing.width)
    // 1 MPa is 145.038 lbf/in²
    expect(inches.innerRing.maxPressure / mm.innerRing.maxPressure).toBeWithin(0.0005, 145.038)
    expect((inches.ruinLoad.radialLoad * 4.4482216152605) / mm.ruinLoad.radialLoad).toBeWithin(1e-6, 1)
    const mixed = await checked(url, { ...REQUEST, forceUnits: 'lbf' })
    expect(mixed).toMatchObject({ units: 'mm', forceUnits: 'lbf' })
    expect(mixed.workingLoad.message).toMatch(/ lbf /)
  })

  test('a load above all that it may carry is told first, as a fault, and gives no leave to turn it', async () => {
    const url = await address()
    const { slowHand } = (await checked(url, REQUEST)).workingLoad
    const answer = await checked(url, { ...REQUEST, radialLoad: 3 * slowHand })
    expect(answer.summary).toMatch(
      /^Your load of \d+ N \(\d+ kg\) is too much, about [\d.]+ times the \d+ N \([\d.]+ kg\) that the bearing may carry: do not load it so, and do not turn it/,
    )
    expect(answer.summary).not.toMatch(/Turn it by hand/)
    // The product of the two figures that a reader sees is the load, within the two digits of either.
    for (const factor of [1.3, 7.3, 41, 277]) {
      const told = (await checked(url, { ...REQUEST, radialLoad: factor * slowHand })).summary
      const [, load, times, most] = /^Your load of (\d+) N .*, about ([\d.]+) times the (\d+) N/.exec(told) ?? []
      expect((Number(times) * Number(most)) / Number(load)).toBeWithin(0.051, 1)
    }
    expect(answer.summary).toMatch(/Never drive it with a drill or a motor\./)
    expect(answer.handTurned.message).toMatch(/^Under a load that it may carry, turn it by hand/)
    expect(answer.warnings[0]).toMatchObject({ severity: 'fault', path: '/radialLoad' })
    const within = await checked(url, { ...REQUEST, radialLoad: 0.99 * slowHand })
    expect(within.summary).not.toMatch(/too much/)
    expect(within.warnings[0]).toMatchObject({ code: 'above-working-load', severity: 'note' })
  })

  test.each(ARRANGEMENT_NAMES)(
    'no summary of a bearing of kind %s leaves out the drill, whatever its load',
    async (arrangement) => {
      const url = await address()
      for (const load of [5, 200, 50_000]) {
        const design = { units: 'mm', arrangement, balls: { count: 12, diameter: 16 }, bore: 12 }
        const { text } = await post(url, { design, [arrangement === 'thrust' ? 'axialLoad' : 'radialLoad']: load })
        expect(JSON.parse(text)).toMatchObject({
          summary: expect.stringContaining('Never drive it with a drill or a motor'),
        })
      }
    },
  )

  test.each(ARRANGEMENT_NAMES)(
    'whatever load is too much for a bearing of kind %s is a fault, and no other load is',
    async (arrangement) => {
      const url = await address()
      const design = { units: 'mm', arrangement, balls: { count: 12, diameter: 16 }, bore: 12 }
      const ask = async (load: number) =>
        JSON.parse((await post(url, { design, [arrangement === 'thrust' ? 'axialLoad' : 'radialLoad']: load })).text)
      const { slowHand } = (await ask(5)).workingLoad
      for (const part of [0.5, 0.99, 1.01, 2, 10, 100, 1000]) {
        const { summary, warnings } = await ask(Math.min(part * slowHand, 100_000))
        // What the summary allows while it is turned slowly, no warning denies.
        const isBorne = summary.includes('no mark in') && warnings[0]?.code === 'above-working-load'
        if (isBorne)
          expect(warnings[0].message).toMatch(/^Soft boards bear this load while you turn the bearing slowly/)
        expect(/is too much, /.test(summary.split('. ')[0])).toBe(part > 1)
        const [worst] = warnings
        expect(worst?.severity === 'fault', `${part}: ${worst?.message}`).toBe(part > 1)
      }
    },
  )

  test('where forces are in pounds, how fast surfaces rub is told in feet', async () => {
    const url = await address()
    const fast = { ...REQUEST, speed: 90_000 }
    expect(JSON.stringify(await checked(url, fast))).toMatch(/faster than 1 metre a second/)
    const inPounds = JSON.stringify(await checked(url, { ...fast, forceUnits: 'lbf' }))
    expect(inPounds).toMatch(/faster than about 3 feet a second/)
    expect(inPounds).not.toMatch(/1 metre a second/)
  })

  test('a suggestion of the answer, taken, clears its warning', async () => {
    const url = await address()
    const request = { ...REQUEST, radialLoad: 90_000, speed: 90_000 }
    const taken = (await checked(url, request)).warnings.flatMap(({ suggestion }) => (suggestion ? [suggestion] : []))
    expect(taken.map(({ path }) => path)).toEqual(['/radialLoad', '/speed'])
    const mended = Object.fromEntries(taken.map(({ path, value }) => [path.slice(1), value]))
    const codes = (await checked(url, { ...request, ...mended })).warnings.map(({ code }) => code)
    expect(codes).not.toContain('too-fast')
    expect(codes).not.toContain('dents-deeper')
    expect(codes).not.toContain('ball-sinks-in')
  })

  test('balls on edges: the flats, the way out, and the wood of wooden balls', async () => {
    const tight = await checked(await address(), {
      design: { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12, groove: { conformity: 0.45 } },
      radialLoad: 10,
      ballWood: 'basswood-american',
    })
    expect(tight.input.ballWood).toBe('basswood-american')
    expect(tight.innerRing).toMatchObject({ seat: 'edges' })
    expect(tight.innerRing).not.toHaveProperty('length')
    expect(tight.firstMark.radialLoad).toBeLessThan(1)
    const codes = tight.warnings.map(({ code }) => code)
    expect(codes).toEqual(expect.arrayContaining(['edges-crush', 'balls-softer']))
  })
})

describe('refused in words, with the place', () => {
  test('the wood of balls of something else', async () => {
    const asked = {
      ...REQUEST,
      design: { ...DESIGN, balls: { ...DESIGN.balls, material: 'glass' } },
      ballWood: 'maple-sugar',
    }
    expect(faultsIn(await post(await address(), asked))).toEqual([
      '/ballWood: does not apply unless `design.balls.material` is "wood": remove it',
    ])
  })

  test('a bearing that cannot be made: 422 at its place in the request', async () => {
    const refused = problemIn(await post(await address(), { ...REQUEST, design: { ...DESIGN, bore: 60 } }), 422)
    expect(refused.errors).toMatchObject([{ path: '/design/bore', message: expect.stringMatching(/60 mm/) }])
  })

  test('what is not of the schema: 400 with everything at once, and the next request is served', async () => {
    const url = await address()
    const faults = faultsIn(
      await post(url, {
        design: DESIGN,
        radialLoad: -1,
        wood: 'maple-suger',
        turning: 'both',
        speed: '30',
        load: 1,
        lode: 1,
        balls: 1,
      }),
    ).join('\n')
    expect(faults).toMatch(/\/radialLoad: /)
    expect(faults).toMatch(/\/wood: .*Did you mean "maple-sugar"/)
    expect(faults).toMatch(/\/turning: /)
    expect(faults).toMatch(/\/speed: /)
    expect(faults).toMatch(/\/load: must be an object/)
    expect(faults).toMatch(/\/lode: .*Did you mean "load"/)
    expect(faults).not.toMatch(/Did you mean "wood"/)
    for (const odd of ['', '[]', 'null', '1', '{"design":null}', '{"design":{"units":"mm"}}']) {
      problemIn(await post(url, odd), 400)
    }
    for (const radialLoad of [0, 1e9, null, '20', [20], {}]) problemIn(await post(url, { ...REQUEST, radialLoad }), 400)
    for (const dentFraction of [0, 1, -0.1]) problemIn(await post(url, { ...REQUEST, dentFraction }), 400)
    expect(await checked(url, REQUEST)).toMatchObject({ units: 'mm' })
  })

  test('the ends of what may be asked are answered', async () => {
    const url = await address()
    for (const radialLoad of [0.001, 100_000]) {
      for (const speed of [0.001, 100_000]) {
        for (const dentFraction of [0.0001, 0.05]) {
          const answer = await checked(url, { ...REQUEST, radialLoad, speed, dentFraction })
          for (const [path, number] of numberLeaves(answer)) expect(Number.isFinite(number), path).toBe(true)
        }
      }
    }
  })

  test('the picture of a turntable, and none of rings', async () => {
    const url = await address()
    const svg = { accept: 'image/svg+xml' }
    const design = { units: 'mm', arrangement: 'thrust', balls: { count: 18, diameter: 16 }, bore: 30 }
    const drawn = await post(url, { design, axialLoad: 30, offset: 15 }, svg)
    expect(drawn.status, drawn.text).toBe(200)
    expect(drawn.text).toMatch(
      /^<svg.*Safe offset of the load against speed.*turns a minute.*by hand, at most 94 turns a minute †.*friction 0.3 †.*† common practice/s,
    )
    expect((await post(url, { design, axialLoad: 30, offset: 15 }, svg)).text).toBe(drawn.text)
    problemIn(await post(url, REQUEST, svg), 406)
    problemIn(await post(url, { design, axialLoad: 30, offset: 1500 }, svg), 422)
  })

  test('GET is not offered', async () => {
    expect(problemIn(await ask(await address()), 405).status).toBe(405)
  })
})
