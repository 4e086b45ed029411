import { describe, expect, test } from 'vitest'
import { fullRingsOf, design as of } from '#shared/bearing/arrangements.ts'
import { METHODS } from '#shared/bearing/method.ts'
import { mm } from '#shared/units/length.ts'
import { operationsFor } from '#src/job-sheet/operations.ts'
import { ask, faultsIn, post } from '#tests/support/ask.ts'
import { PLAIN } from '#tests/support/inputs.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'

const BODY = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }
/** The same ring of twelve, with rollers and between plates. */
const ROLLERS = { ...BODY, arrangement: 'roller' }
const PLATES = { ...BODY, arrangement: 'thrust' }
/** Its balls in a cage. */
const CAGED = { ...BODY, arrangement: 'caged' }
const SISTERS = [
  ['radial', BODY],
  ['roller', ROLLERS],
  ['thrust', PLATES],
  ['caged', CAGED],
] as const
const OF_EACH = SISTERS.flatMap(([name, body]) => METHODS.map((method) => [name, method, body] as const))
const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

type Size = { readonly symbol?: string; readonly name: string; readonly value: number; readonly stopAt?: number }
type Operation = {
  readonly number: number
  readonly id: string
  readonly title: string
  readonly tool: string
  readonly how: string
  readonly counted?: string
  readonly check: string
  readonly mistake: { readonly looksLike: string; readonly costs: string; readonly remedy: string }
  readonly sizes: readonly Size[]
  readonly cautions: readonly { readonly code: string }[]
  readonly readings: readonly { readonly ring: string; readonly kind: string; readonly field: string }[]
}

async function sheet(body: object, at?: string): Promise<readonly Operation[]> {
  const answer = await post(`${at ?? (await sharedApp())}/v1/job-sheet`, body)
  expect(answer.status, answer.text).toBe(200)
  return (JSON.parse(answer.text) as { operations: readonly Operation[] }).operations
}

function plain() {
  const made = fullRingsOf(PLAIN)
  if (!made.ok) throw new RangeError('the plain input must give a bearing')
  return made.value
}

describe('the operations', () => {
  test('go from choosing wood and balls to running in, outer ring before inner', async () => {
    const ids = (await sheet(BODY)).map(({ id }) => id)
    expect(ids).toEqual([
      'choose-wood',
      'choose-balls',
      'make-gauges',
      'outer-layout',
      'outer-bore',
      'outer-saw',
      'outer-outside',
      'outer-core',
      'outer-inside',
      'outer-groove',
      'outer-fit',
      'outer-sand',
      'inner-blank',
      'inner-split',
      'inner-outside',
      'inner-groove',
      'inner-fit',
      'inner-sand',
      'finish',
      'grain',
      'wax',
      'run-in',
      'mount',
      'care',
    ])
  })

  test('a lathe alone saws nothing; a router takes the place of saw, outside and core', async () => {
    const lathe = (await sheet({ ...BODY, making: { method: 'lathe-only' } })).map(({ id }) => id)
    expect(lathe).not.toContain('outer-saw')
    expect(lathe).toContain('outer-core')
    const router = (await sheet({ ...BODY, making: { method: 'router-and-lathe' } })).map(({ id }) => id)
    expect(router).toContain('outer-rout')
    for (const id of ['outer-saw', 'outer-outside', 'outer-core']) expect(router).not.toContain(id)
  })

  test.each([
    ['inner-ring', true, false],
    ['outer-ring', false, true],
    ['none', false, false],
  ])('split %s: halves are joined before they are turned', async (split, inner, outer) => {
    const ids = (await sheet({ ...BODY, split })).map(({ id }) => id)
    expect(ids.includes('inner-split')).toBe(inner)
    expect(ids.includes('outer-split')).toBe(outer)
    if (inner) expect(ids.indexOf('inner-split')).toBeLessThan(ids.indexOf('inner-outside'))
  })

  test.each(OF_EACH)(
    '%s, %s: every size with a symbol is that of the design, less the film',
    async (_name, method, plain) => {
      const at = await sharedApp()
      const body = { ...plain, finishAllowance: 0.05 }
      const designed = JSON.parse((await post(`${at}/v1/design`, body)).text) as {
        readonly ballDiameter: number
        readonly dimensions: readonly { readonly symbol: string; readonly value: number; readonly cutTo?: number }[]
      }
      const sizes = (await sheet({ ...body, making: { method } }, at)).flatMap((operation) => operation.sizes)
      const known = new Map([
        ...designed.dimensions.map(({ symbol, value, cutTo }) => [symbol, cutTo ?? value] as const),
        ['Dw', designed.ballDiameter] as const,
      ])
      const named = sizes.filter(({ symbol, name }) => symbol !== undefined && !name.includes('each disc'))
      expect(named.length).toBeGreaterThan(10)
      for (const { symbol = '', value } of named) expect(value).toBeWithin(1e-9, known.get(symbol) ?? Number.NaN)
    },
  )

  test.each([
    ['radial, split', BODY, 0, true],
    ['radial, in one piece, with a film to come', { ...BODY, split: 'none' }, 0.08, false],
    ['roller', ROLLERS, 0, false],
    ['caged', CAGED, 0.08, undefined],
  ] as const)('%s: an inner ring is thrown away for no play that is called good', async (_, body, film, hasFaces) => {
    const at = await sharedApp()
    const design = { ...body, finishAllowance: film }
    const asked = await post(`${at}/v1/fit-correction`, { design, ring: 'inner', readings: [] })
    const { target } = (JSON.parse(asked.text) as { input: { target: Record<string, number> } }).input
    const step = (await sheet(design, at)).find(({ id }) => id === 'inner-sand')
    const bare = (play = Number.NaN) => Number((play + 4 * film).toFixed(2))
    const [least, most] = [bare(target['minRadialInternalClearance']), bare(target['maxRadialInternalClearance'])]
    const isFinished = film === 0
    const largest = `${most} mm${isFinished ? '' : ' before the finish'}`
    expect(step?.check).toContain(`its play is from ${least} mm to ${largest}.`)
    expect(step?.mistake.looksLike).toBe(`The play is more than ${largest}.`)
    expect(step?.mistake.remedy).toContain('Look under “At the lathe” before you make a new inner ring')
    if (hasFaces !== undefined) expect(/mating faces/.test(step?.mistake.remedy ?? '')).toBe(hasFaces)
    // A sheet that stops at its size would leave too little play among uneven balls.
    expect(step?.check).toContain('The play decides, not the caliper')
  })

  // The balls seat on the bottoms: play = De − di − 2 Dw, and the gap by its law, g(R) = 2R sin(π − (Z−1) asin(Dw/2R)) − Dw.
  test.each([
    ['radial', BODY, 'De', 'di'],
    ['roller', ROLLERS, 'E', 'F'],
    ['caged', CAGED, 'De', 'di'],
  ])(
    '%s: gap, play and plugs before the finish are those of the grooves as they are cut',
    async (name, body, outer, inner) => {
      const film = 0.08
      const at = await sharedApp()
      const operations = await sheet({ ...body, finishAllowance: film }, at)
      const sizes = operations.flatMap((operation) => operation.sizes)
      const figureOf = (wanted: string) =>
        sizes.find(({ symbol, name }) => symbol === wanted || name === wanted)?.value ?? Number.NaN
      const across = figureOf(outer)
      expect(figureOf('play to reach before the finish')).toBeWithin(1e-6, across - figureOf(inner) - 2 * 16)
      if (name === 'caged') return expect(figureOf('plug that just enters')).toBeWithin(1e-6, across - 2 * 16)
      const radius = (across - 16) / 2
      const gap = 2 * radius * Math.sin(Math.PI - 11 * Math.asin(8 / radius)) - 16
      expect(figureOf(`${name === 'radial' ? 'ball' : 'roller'} gap to reach before the finish`)).toBeWithin(1e-6, gap)
      const { gauge } = JSON.parse((await post(`${at}/v1/design`, { ...body, finishAllowance: film })).text) as {
        readonly gauge: { readonly goDiameter: number; readonly noGoDiameter: number }
      }
      expect(figureOf('go plug')).toBeWithin(1e-6, gauge.goDiameter + 2 * film)
      expect(figureOf('no-go plug')).toBeWithin(1e-6, gauge.noGoDiameter + 2 * film)
    },
  )

  test.each(OF_EACH)(
    '%s, %s: what the sheet has you make is not among the tools to begin with',
    async (_name, method, body) => {
      const { text } = await post(`${await sharedApp()}/v1/job-sheet`, { ...body, making: { method } })
      const { tools } = JSON.parse(text) as { readonly tools: readonly string[] }
      expect(tools).toContain('lathe')
      for (const tool of tools)
        expect(tool).not.toMatch(/plugs?$|ground to|dowel for the groove|^(?:balls|rollers|fine)$/)
    },
  )

  test.each([
    ['radial', 12, 'Turn'],
    ['thrust', 12, 'Turn'],
    ['radial', 60, 'bars'],
    ['thrust', 60, 'bars'],
  ])(
    '%s, %i balls: a plug wider than 150 mm is a bar, on the sheet and in the plan',
    async (arrangement, count, word) => {
      const at = await sharedApp()
      const body = { ...BODY, arrangement, balls: { ...BODY.balls, count }, making: {} }
      expect((await sheet(body, at)).find(({ id }) => id === 'make-gauges')?.how).toMatch(
        new RegExp(`(?:^|: )(?:Turn|Saw) both plugs .*${word === 'bars' ? 'bars' : 'dense'}`),
      )
      const { making } = JSON.parse((await post(`${at}/v1/design`, body)).text) as {
        readonly making: { readonly gauges: { readonly plugs: readonly { readonly message: string }[] } }
      }
      for (const { message } of making.gauges.plugs)
        expect(message).toMatch(word === 'bars' ? /^Cut a bar / : /^Turn a disc /)
    },
  )

  test('halves that no screw holds are glued after the last cut, and nothing opens them then', async () => {
    const design = { ...BODY, balls: { count: 8, diameter: 16 }, bore: 8 }
    const mounting = { shaft: { diameter: 8 } }
    const glue = /glue the halves of the inner ring together/
    const made = of({ ...PLAIN, balls: { count: 8, diameter: mm(16) }, bore: mm(8) })
    if (!made.ok) throw new RangeError('eight balls must give a bearing')
    const bare = operationsFor(made.value)
    expect(bare.filter(({ how }) => glue.test(how)).map(({ id }) => id)).toEqual(['run-in'])
    expect(bare.find(({ id }) => id === 'run-in')?.how).toMatch(/every seat and hole is cut and tried, glue/)
    const planned = await sheet({ ...design, making: { mounting } })
    expect(planned.filter(({ how }) => glue.test(how)).map(({ id }) => id)).toEqual(['mount'])
    const mount = planned.find(({ id }) => id === 'mount')
    expect(mount?.title).toMatch(/^Glue it shut and mount it/)
    expect(mount?.how).toMatch(/^Cut seats.* apart.* Try every seat without glue\. .*glue the halves.* Then mount it\./)
    for (const operations of [bare, planned]) {
      const opens = /(?<!not )open it|apart|ease the grooves/
      for (const { id, how, check, mistake } of operations.slice(operations.findIndex(({ how }) => glue.test(how)))) {
        const after = [how.split(glue).at(-1), check, mistake.costs, mistake.remedy].join(' ')
        if (id === 'mount' || id === 'care') expect(after).not.toMatch(opens)
      }
      expect(operations.at(-1)?.how).toMatch(/glued shut: do not open it/)
    }
    const pinned = { ...BODY, making: { mounting: { shaft: { hold: 'pinned' } } } }
    // What opens has its grooves waxed, but never cut for one season: the other makes them too loose.
    const open = (await sheet(pinned)).at(-1)
    expect(open?.how).toMatch(/wax the grooves again/)
    expect(open?.how).not.toMatch(/do not open it/)
    expect(open?.mistake.remedy).toMatch(/^Do not force it, and cut nothing/)
  })

  test('halves that are screwed, or a ring in one piece, are not glued', async () => {
    for (const body of [BODY, { ...BODY, split: 'none' }, PLATES]) {
      const operations = await sheet(body)
      expect(operations.find(({ id }) => id === 'run-in')?.how).not.toContain('glue')
      expect(operations.find(({ id }) => id === 'mount')?.title).toMatch(/^Mount it/)
    }
  })

  // Twice the scatter of a tool of 0.2 mm and a tenth of the depth: by hand for 3.2 mm, 2 × 0.3774 mm.
  test('both grooves are stopped short, the outer one below its size and the inner one above', async () => {
    const operations = await sheet(BODY)
    const { outerRing, innerRing } = plain()
    const stop = (id: string, symbol: string) =>
      operations.find((operation) => operation.id === id)?.sizes.find((size) => size.symbol === symbol)?.stopAt
    expect(stop('outer-groove', 'he')).toBeWithin(0.001, outerRing.grooveDepth - 0.755)
    expect(stop('outer-groove', 'De')).toBeWithin(0.002, outerRing.grooveBottomDiameter - 1.51)
    const innerShort = 2 * Math.hypot(0.2, 0.1 * innerRing.grooveDepth)
    expect(stop('inner-groove', 'di')).toBeWithin(1e-6, innerRing.grooveBottomDiameter + 2 * innerShort)
  })

  test('cautions stand at the step where the hazard is', async () => {
    const operations = await sheet({ ...BODY, balls: { ...BODY.balls, material: 'glass' } })
    const at = (id: string) => operations.find((operation) => operation.id === id)?.cautions.map(({ code }) => code)
    expect(at('outer-saw')).toContain('sawing')
    expect(at('outer-core')).toContain('core-loose')
    expect(at('outer-groove')).toContain('turning')
    expect(at('outer-sand')).toContain('sanding-inside')
    expect(at('finish')).toContain('finish')
    expect(at('choose-balls')).toEqual(['glass-balls'])
    expect(at('outer-layout')).toEqual([])
  })

  test.each(OF_EACH)('%s, %s: whoever takes a machine is told what of it can hurt', async (_name, method, body) => {
    const hazards = [
      [/\bsaw\b/, 'sawing'],
      [/\bdrill\b/, 'drilling'],
      [/\brouter\b/, 'routing'],
      [/\blathe\b/, 'turning', 'sanding-inside'],
    ] as const
    for (const { id, tool, cautions } of await sheet({ ...body, making: { method } })) {
      const codes = cautions.map(({ code }) => code)
      for (const [machine, ...known] of hazards)
        if (machine.test(tool))
          expect(
            known.some((code) => codes.includes(code)),
            `${id}: ${codes}`,
          ).toBe(true)
    }
  })

  test('rollers: cut to length before they are chosen, tried for skew before they run', async () => {
    const operations = await sheet(ROLLERS)
    const ids = operations.map(({ id }) => id)
    expect(ids.indexOf('cut-rollers')).toBeLessThan(ids.indexOf('choose-balls'))
    expect(operations.find(({ id }) => id === 'outer-layout')?.how).toMatch(
      /how long the rollers came out, and plane the ring/,
    )
    for (const id of ['inner-fit', 'run-in']) {
      const codes = operations.find((operation) => operation.id === id)?.cautions.map(({ code }) => code)
      expect(codes).toContain('roller-skew')
    }
  })

  // 6 mm a side: the default of `making.allowances.turning`.
  test('a router leaves on the track what a saw leaves, for the lathe to take', async () => {
    const routed = (await sheet({ ...ROLLERS, making: { method: 'router-and-lathe' } })).find(
      ({ id }) => id === 'outer-rout',
    )
    const hole = routed?.sizes.find(({ symbol }) => symbol === 'E')
    expect(hole?.stopAt).toBeWithin(1e-9, (hole?.value ?? Number.NaN) - 12)
  })

  test('rollers as small as can be are stopped at sizes that there are', async () => {
    const tiny = { units: 'mm', arrangement: 'roller', balls: { count: 3, diameter: 0.5, length: 0.4 }, bore: 0.02 }
    for (const method of METHODS)
      for (const { stopAt = 1 } of (await sheet({ ...tiny, width: 0.5, making: { method } })).flatMap(
        ({ sizes }) => sizes,
      ))
        expect(stopAt).toBeGreaterThan(0)
  })

  test('a turntable: a shallow groove and a try of the balls come before the deep one, and that before the other plate', async () => {
    expect((await sheet(PLATES)).map(({ id }) => id)).toEqual([
      'choose-wood',
      'choose-balls',
      'make-gauges',
      'plate-layout',
      'plate-shape',
      'trial-groove',
      'try-balls',
      'groove',
      'second-plate',
      'finish',
      'grain',
      'wax',
      'run-in',
      'mount',
      'care',
    ])
  })

  test('the first groove of a turntable is a third as deep; rows, gaps and plugs that decide are all that is read at one', async () => {
    const operations = await sheet({ ...PLATES, balls: { ...PLATES.balls, standardDeviation: 0.01 } })
    const trial = operations.find(({ id }) => id === 'trial-groove')?.sizes.find(({ symbol }) => symbol === 'h')
    expect(trial?.stopAt).toBeWithin(1e-6, (trial?.value ?? Number.NaN) / 3)
    for (const reading of operations.flatMap(({ readings }) => readings)) expect(reading).not.toHaveProperty('ring')
    const kinds = new Set(operations.flatMap(({ readings }) => readings.map(({ kind }) => kind)))
    expect(kinds).toEqual(new Set(['ball-row', 'ball-gap', 'plug']))
  })

  test('a cage is made after the rings, by what they came to, and closed over the balls at last', async () => {
    const ids = async (body: object) => (await sheet(body)).map(({ id }) => id)
    const order = ['outer-groove', 'inner-fit', 'inner-sand', 'cage-ring', 'cage-pockets', 'finish', 'fill']
    expect((await ids(CAGED)).filter((id) => order.includes(id))).toEqual(order)
    expect(await ids(CAGED)).not.toContain('outer-sand')
    expect(await ids({ ...CAGED, split: 'inner-ring' })).toContain('inner-split')
    expect(await ids({ ...CAGED, split: 'outer-ring' })).toContain('outer-split')
  })

  test('a cage turns with its balls, of few the slower: (1 − Dw/Dpw)/2 of the inner ring (Harris, chapter 8; from memory)', async () => {
    const saidOf = async (count: number, pitchDiameter: number) => {
      const body = { ...CAGED, balls: { ...BODY.balls, count, diameter: 16 }, bore: 4, cage: { pitchDiameter } }
      return (await sheet(body)).find(({ id }) => id === 'fill')?.check
    }
    expect(await saidOf(3, 40)).toMatch(/about 3 times while the inner ring turns ten/) // (1 - 16/40) / 2 = 0.3
    expect(await saidOf(12, 200)).toMatch(/about 5 times while the inner ring turns ten/) // (1 - 16/200) / 2 = 0.46
  })

  test('in every caged bearing the play is tried on three balls, which stand by themselves', async () => {
    for (const split of ['none', 'inner-ring', 'outer-ring']) {
      const fit = (await sheet({ ...CAGED, split })).find(({ id }) => id === 'inner-fit')
      expect(fit?.how).toMatch(/three balls/i)
      expect(fit?.check).toMatch(/travel is 1\.5 times the play: divide it by 1\.5/)
      const [travel, play] = fit?.sizes ?? []
      expect(travel?.value).toBeCloseTo(1.5 * (play?.value ?? Number.NaN), 5)
    }
  })

  test('a cage leaves no gap: none is read, none is spoken of, and the outer groove is cut to a plug', async () => {
    for (const split of ['none', 'inner-ring', 'outer-ring']) {
      const operations = await sheet({ ...CAGED, split })
      expect(JSON.stringify(operations.map(({ cautions: _, ...said }) => said))).not.toMatch(/the gap\b|gap to reach/)
      const groove = operations.find(({ id }) => id === 'outer-groove')?.sizes ?? []
      expect(groove.map(({ symbol }) => symbol)).toContain('Dg')
      const rings = operations.flatMap(({ readings }) => readings.map(({ ring }) => ring))
      expect(new Set(rings)).toEqual(new Set(['inner']))
    }
  })

  test.each([
    ['radial', BODY, 10],
    ['roller', ROLLERS, 10],
    ['caged', CAGED, 3],
  ])(
    '%s: every blank to write in is a reading that the fit correction takes at that ring',
    async (_name, body, more) => {
      const at = await sharedApp()
      const figures: Record<string, unknown> = { '/value': 20, '/landDiameter': 70, '/result': 'enters' }
      const extra: Record<string, object> = {
        plug: { diameter: 45, result: 'enters' },
        'groove-depth': { value: 2, landDiameter: 70 },
        'ball-row': { value: 192, count: 12 },
        'ball-gap': { value: 0.5 },
      }
      const readings = (await sheet(body, at)).flatMap((operation) => operation.readings)
      expect(readings.length).toBeGreaterThan(more)
      for (const { ring, kind, field } of readings) {
        const reading = { kind, ...(field === '' ? {} : { [field.slice(1)]: figures[field] }), ...extra[kind] }
        const answer = await post(`${at}/v1/fit-correction`, { design: body, ring, readings: [reading] })
        expect([200, 422], `${kind}: ${answer.text}`).toContain(answer.status)
      }
    },
  )
})

describe('the forms that it comes in', () => {
  test('JSON unless another is asked for, by Accept or by the address', async () => {
    const at = await sharedApp()
    const typeOf = async (query: string, accept: string) =>
      (await ask(`${at}/v1/job-sheet?${QUERY}${query}`, { headers: { accept } })).headers['content-type']
    expect(await typeOf('', '*/*')).toBe('application/json; charset=utf-8')
    expect(await typeOf('', 'text/html,application/xhtml+xml,*/*;q=0.8')).toBe('text/html; charset=utf-8')
    expect(await typeOf('', 'application/pdf')).toBe('application/pdf')
    expect(await typeOf('&format=pdf', 'text/html,*/*;q=0.8')).toBe('application/pdf')
    expect(await typeOf('&format=html', '*/*')).toBe('text/html; charset=utf-8')
  })

  test('the JSON of every arrangement says which it is, and comes as one media type', async () => {
    const at = await sharedApp()
    for (const [arrangement, body] of [
      ['thrust', PLATES],
      ['thrust', { ...PLATES, format: 'json' }],
      ['caged', CAGED],
      ['roller', ROLLERS],
      ['radial', PLAIN],
    ] as const) {
      const { headers, text } = await post(`${at}/v1/job-sheet`, body)
      expect(headers['content-type']).toBe('application/json; charset=utf-8')
      expect(JSON.parse(text)).toMatchObject({ arrangement })
    }
    const query = `${QUERY}&arrangement=thrust`
    const asked = await ask(`${at}/v1/job-sheet?${query}`, { headers: { accept: 'application/json' } })
    expect(JSON.parse(asked.text)).toMatchObject({ arrangement: 'thrust' })
  })

  test('the page carries its style sheet by hash, runs nothing, and says who may frame it', async () => {
    const at = await startedApp({ config: { frameAncestors: ['https://courses.example'] } })
    const { headers, text } = await ask(`${at}/v1/job-sheet?${QUERY}&format=html`)
    const policy = String(headers['content-security-policy'])
    expect(policy).toMatch(
      /^default-src 'none'; style-src 'sha256-[\w+/=]+'; .*frame-ancestors https:\/\/courses\.example$/,
    )
    expect(text).not.toMatch(/<script|style="|javascript:/)
    expect(text.match(/class="box" role/g)).toHaveLength(24)
  })

  test('what the design warns of stands on the sheet, before anything is cut', async () => {
    const at = await sharedApp()
    const body = { ...BODY, split: 'none' }
    const { text } = await post(`${at}/v1/job-sheet`, body)
    const { warnings } = JSON.parse(text) as { readonly warnings: readonly { severity: string; message: string }[] }
    const fault = warnings.find(({ severity }) => severity === 'fault')?.message ?? 'no fault'
    for (const form of ['full', 'short']) {
      const page = (await post(`${at}/v1/job-sheet`, { ...body, form, format: 'html' })).text
      expect(page.indexOf(fault)).toBeGreaterThan(0)
      expect(page.indexOf(fault)).toBeLessThan(page.indexOf('1. Choose'))
    }
  })

  test('in inches it speaks of inches', async () => {
    const at = await sharedApp()
    const page = await ask(`${at}/v1/job-sheet?units=in&balls.count=10&balls.diameter=5/8&bore=1/2&format=html`)
    expect(page.text).toContain('3 1/2 in')
    expect(page.text).not.toMatch(/\d mm(?! and|, and)/)
  })
})

test('what cannot exist is refused, and what is not known is a fault', async () => {
  const at = await sharedApp()
  const refused = await ask(`${at}/v1/job-sheet?units=mm&balls.count=12&balls.diameter=16&bore=50&format=html`)
  expect(refused).toMatchObject({ status: 422, headers: { 'content-type': 'text/html; charset=utf-8' } })
  expect(refused.text).toContain('A bore of 50 mm')
  expect(refused.text).toContain('<a href="/#v=1&amp;units=mm&amp;balls.count=12&amp;balls.diameter=16&amp;bore=50">')
  const unread = await ask(`${at}/v1/drawings/assembly.html?units=mm&balls.count=2&balls.diameter=16&bore=12&paper=a3`)
  expect(unread.text).toContain('<b>Number of balls:</b> Enter a whole number from 3 to 200.')
  expect(unread.text).toContain('<a href="/#v=1&amp;units=mm&amp;balls.count=2&amp;balls.diameter=16&amp;bore=12">')
  expect(faultsIn(await ask(`${at}/v1/job-sheet?${QUERY}&making.method=laser`))).toHaveLength(1)
})

test.each(SISTERS)(
  'a sheet of kind %s says of glue that nobody chose that it is the usual',
  async (arrangement, design) => {
    const hold = { hold: 'glued' }
    const mounting = { shaft: hold, housing: hold }
    const careOf = async (making?: object) =>
      (await sheet({ ...design, ...(making && { making }) })).find(({ id }) => id === 'care')
    const [open, chosen] = [await careOf(), await careOf({ mounting })]
    const isShut = arrangement === 'radial' || arrangement === 'caged'
    expect(/the hold of its seats at “Put together”. Glue is assumed/.test(open?.counted ?? '')).toBe(isShut)
    expect(/The glue of its seats keeps it shut/.test(chosen?.how ?? '')).toBe(isShut)
    expect(chosen?.counted).toBeUndefined()
  },
)
