import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DesignInput, design, isOfPlates } from '#shared/bearing/arrangements.ts'
import { LUMBERS, type MakingInput } from '#shared/bearing/making-input.ts'
import { METHODS } from '#shared/bearing/method.ts'
import { DRIVES, HOLDS, type Hold, PIN_HOLDS, PLATE_HOLDS, SHAFT_MATERIALS } from '#shared/bearing/mounting-input.ts'
import { SCREW_GAUGES } from '#shared/making/screws.ts'
import { lengthOf, mm, type Units } from '#shared/units/length.ts'
import { answerOf } from '#src/api/design/arrangements/all.ts'
import { toJobSheet } from '#src/api/job-sheet/present.ts'
import { show } from '#src/api/length.ts'
import { drawingOf } from '#src/drawings/views.ts'
import { between, likelyCaged, likelyInput, likelyPlates, likelyRollers } from '#tests/support/inputs.ts'
import { numberLeaves } from '#tests/support/number-leaves.ts'
import { textsOn } from '#tests/support/sheet-faults.ts'
import { withMaking } from '#tests/support/with-making.ts'

const some = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })
const count = fc.integer({ min: 3, max: 24 })
const glued = count.map((pieces) => ({ segments: { count: pieces } }))

const stated = <T extends object>(chosen: T): { [Name in keyof T]?: Exclude<T[Name], undefined> } =>
  Object.fromEntries(Object.entries(chosen).filter(([, value]) => value !== undefined)) as T

/** What a maker may choose, in the units of the design. */
const choices = ({ units, arrangement }: DesignInput): fc.Arbitrary<MakingInput> => {
  const isOfRings = arrangement !== 'thrust'
  const parts = isOfRings ? ['outerRing', 'innerRing', ...(arrangement === 'caged' ? ['cage'] : [])] : ['plates']
  const woods: fc.Arbitrary<MakingInput['woods']> = some(
    fc.record(Object.fromEntries(parts.map((part) => [part, glued])), { requiredKeys: [] }),
  )
  const length = (min: number, max: number) =>
    some(between(min, max).map((size) => lengthOf(units === 'in' ? size / 25.4 : size, units)))
  const shaftHeld = (holds: readonly Hold[]) =>
    some(
      fc
        .record({
          diameter: length(2, 60),
          material: some(fc.constantFrom(...SHAFT_MATERIALS)),
          hold: some(fc.constantFrom(...holds)),
        })
        .map(stated),
    )
  const ofRings = {
    mounting: some(
      fc
        .record({
          shaft: shaftHeld(HOLDS),
          housing: some(fc.record({ thickness: length(2, 60), hold: some(fc.constantFrom(...HOLDS)) }).map(stated)),
          drive: some(fc.constantFrom(...DRIVES)),
        })
        .map(({ housing, drive, ...rest }) => stated({ ...rest, ...(drive === undefined ? { housing } : { drive }) })),
    ),
    screws: some(
      fc.record(
        { count: fc.integer({ min: 2, max: 12 }), gauge: fc.constantFrom(...SCREW_GAUGES) },
        { requiredKeys: [] },
      ),
    ),
  }
  const ofPlates = {
    mounting: some(
      fc
        .record({
          shaft: shaftHeld(PIN_HOLDS),
          housing: some(
            fc.record({ thickness: length(2, 60), hold: some(fc.constantFrom(...PLATE_HOLDS)) }).map(stated),
          ),
        })
        .map(stated),
    ),
    screws: some(fc.record({ count: fc.integer({ min: 2, max: 12 }) })),
  }
  return fc
    .record({
      lumber: some(fc.constantFrom(...LUMBERS)),
      allowances: some(
        fc
          .record({
            turning: length(0, 12),
            side: length(0, 4),
            sawKerf: length(0, 3),
            miterKerf: length(0, 4),
            entryHole: length(3, 16),
          })
          .map(stated),
      ),
      boardLength: length(600, 4000),
      woods,
      ...((isOfRings ? ofRings : ofPlates) as Readonly<Record<string, fc.Arbitrary<unknown>>>),
    })
    .map(stated)
}

const CASES = fc
  .oneof<fc.Arbitrary<DesignInput>[]>(likelyInput, likelyRollers, likelyCaged, likelyPlates)
  .chain((input) => fc.tuple(fc.constant(input), choices(input)))

type Ring = {
  readonly roughCircle: number
  readonly roughHole?: number
  readonly thickness: number
  readonly pieces: number
  readonly segments?: Readonly<
    Record<'count' | 'pieces' | 'miter' | 'stripWidth' | 'stockLength' | 'outerEdge', number>
  >
}
type Screws = {
  readonly size: string
  readonly count: number
  readonly length: number
  readonly clearanceHole: string
  readonly pilotHole: string
  readonly pilotDepth: number
  readonly countersinkDepth: number
  readonly counterboreDepth?: number
}
type Dowels = Readonly<Record<'count' | 'diameter' | 'length' | 'depthEachHalf', number>>
interface Gauges {
  readonly plugs: readonly {
    readonly kind: string
    readonly diameter: number
    readonly tolerance: number
    readonly barWidth?: number
  }[]
  readonly profiles: readonly {
    readonly ring: 'outerRing' | 'innerRing'
    readonly radius: number
    readonly depth: number
    readonly stopDepth: number
  }[]
  readonly setBlocks: readonly { readonly ring: string; readonly at: 'stop' | 'done'; readonly length: number }[]
  readonly dowels: readonly { readonly ring: string; readonly diameter: number }[]
}
interface Mounting {
  readonly shaft: { readonly shaftDiameter: number; readonly seatDiameter: number; readonly message: string }
  readonly housing?: {
    readonly seatDiameter: number
    readonly seatDepth: number
    readonly leastWidth: number
    readonly message: string
  }
  readonly drive?: { readonly message: string }
}
/** What a design answers of plates between two boards. */
interface PlatePlan {
  readonly gauges: {
    readonly plugs: Gauges['plugs']
    readonly profile: { readonly radius: number; readonly depth: number }
    readonly depthBlock: { readonly step: number }
    readonly circle: { readonly fromBore: number }
  }
  readonly mounting: {
    readonly shaft: {
      readonly shaftDiameter: number
      readonly seatDiameter: number
      readonly upperHole: number
      readonly upperPlay: { readonly min: number }
      readonly wood: number
      readonly leastWood: number
      readonly length: number
      readonly message: string
    }
    readonly boards: {
      readonly hold: string
      readonly thickness: number
      readonly message: string
      readonly screws?: Screws & { readonly screwCircle: number; readonly headDiameter: number }
    }
  }
}

const BAR_WIDTH = 'width of a plug that is a bar, at least'

/** The sheets of one design, as they are read. */
interface PlateSheets {
  readonly sizes: (id: string) => Readonly<Record<string, number>>
  readonly words: readonly string[]
  readonly notes: string
  readonly circles: (role: string) => readonly number[]
  readonly how: string
  readonly shown: (diameter: number) => number
  readonly units: Units
}

function platesAgree({ gauges, mounting }: PlatePlan, chosen: MakingInput, sheets: PlateSheets) {
  const { sizes, words, notes, circles, how, shown, units } = sheets
  const { shaft, boards } = mounting
  const { mounting: asked } = chosen
  if (asked?.shaft?.diameter !== undefined) expect(shaft.shaftDiameter).toBeWithin(1e-6, shown(asked.shaft.diameter))
  if (asked?.housing?.thickness !== undefined) expect(boards.thickness).toBeWithin(1e-6, shown(asked.housing.thickness))
  if (asked?.housing?.hold !== undefined) expect(boards.hold).toBe(asked.housing.hold)
  expect(how).toContain(shaft.message)
  expect(how).toContain(boards.message)
  if (shaft.wood >= shaft.leastWood && asked?.shaft?.diameter === undefined)
    expect(shaft.upperPlay.min).toBeGreaterThan(0)
  expect(sizes('mount')).toMatchObject({
    'pin in the middle': shaft.shaftDiameter,
    'length of the pin': shaft.length,
    'bore of the lower plate': shaft.seatDiameter,
    'bore of the upper plate, opened': shaft.upperHole,
    'boards below and above, at least': boards.thickness,
  })
  const digit = units === 'in' ? 0.0006 : 0.006
  const opened = /Bore of the upper plate opened to Ø([\d.]+)/.exec(notes)?.[1]
  expect(Number(opened)).toBeWithin(digit, shaft.upperHole)
  const template = words.find((text) => text.startsWith('upper plate: open the bore to Ø'))
  expect(Number(/Ø([\d.]+)/.exec(template ?? '')?.[1])).toBeWithin(digit, shaft.upperHole)
  const { screws } = boards
  if (screws !== undefined) {
    expect(screws).toMatchObject(chosen.screws ?? {})
    expect(circles('centre')).toContain(screws.screwCircle)
    expect(words.some((text) => text.startsWith(`${screws.count} screws ${screws.size} × `))).toBe(true)
    expect(notes).toContain(`${screws.count} screws ${screws.size} × `)
    expect(sizes('mount')).toMatchObject({
      [`circle of the ${screws.count} screws`]: screws.screwCircle,
      'length of the screws': screws.length,
      'depth of the pilot hole in the second piece': screws.pilotDepth,
    })
  }
  const kit = sizes('make-gauges')
  for (const { kind, diameter, barWidth } of gauges.plugs) {
    expect(kit[`${kind} plug`]).toBe(diameter)
    expect(kit[BAR_WIDTH]).toBe(barWidth)
  }
  expect(kit).toMatchObject({
    'groove: radius of profile and scraper': gauges.profile.radius,
    'groove: from their shoulders to the tip': gauges.profile.depth,
    'step of the depth block': gauges.depthBlock.step,
    'circle gauge, from the bore to the tip': gauges.circle.fromBore,
  })
  expect(sizes('groove')).toMatchObject({
    'groove depth': gauges.profile.depth,
    'groove radius': gauges.profile.radius,
  })
}

/** What a design answers of either kind of stock. */
type Stock = {
  readonly outerRing?: Ring
  readonly innerRing?: Ring
  readonly plates?: Ring
  readonly cheeks?: Ring
  readonly cage?: Ring
  readonly entryHole?: { readonly diameter: number; readonly fromCentre: number }
  readonly split?: {
    readonly ring: 'outerRing' | 'innerRing'
    readonly screwCircle: number
    readonly screws?: Screws
    readonly dowels?: Dowels
  }
  readonly cheekScrews?: Screws & { readonly screwCircle: number }
}

/** Where the job sheet says how a part is laid out. */
const LAID_OUT = {
  outerRing: 'outer-layout',
  innerRing: 'inner-blank',
  plates: 'plate-layout',
  cheeks: 'cheeks',
  cage: 'cage-ring',
} as const
const GLUED = { outerRing: 'outer-glue', innerRing: 'inner-glue', plates: 'plate-glue', cage: 'cage-glue' } as const
const PARTS = Object.keys(LAID_OUT) as (keyof typeof LAID_OUT)[]

test('design, job sheet and template show the same figures, and those that the maker chose', () => {
  fc.assert(
    fc.property(CASES, fc.constantFrom(...METHODS), ([input, chosen], method) => {
      const made = design(input)
      if (!made.ok) return
      const { units } = input
      const ours = withMaking(made.value, { ...chosen, method })
      const answer = answerOf(ours)
      const stock = answer.making as unknown as Stock
      const sheet = toJobSheet(ours, { units })
      const drawing = drawingOf('templates', ours, 'a4')
      const words = textsOn(drawing).map(({ text }) => text)
      const shown = (diameter: number): number => show(mm(diameter), units)
      const circles = (role: string): readonly number[] =>
        drawing.shapes.flatMap((shape) =>
          shape.kind === 'circle' && shape.role === role ? [shown(2 * shape.radius)] : [],
        )
      const operation = (id: string) => sheet.operations.find((each) => each.id === id)
      const sizes = (id: string): Readonly<Record<string, number>> =>
        Object.fromEntries((operation(id)?.sizes ?? []).map(({ name, value }) => [name, value]))

      // What was asked is echoed alike, with the same defaults.
      expect(sheet.input).toMatchObject({ making: answer.input.making })
      expect(sheet.warnings).toEqual(answer.warnings)

      for (const part of PARTS) {
        const ring = stock[part]
        if (ring === undefined) continue
        const laidOut = sizes(LAID_OUT[part])
        if (part === 'innerRing') expect(laidOut['cutting line (dashed)']).toBe(ring.roughCircle)
        else if (method === 'saw-and-lathe') expect(laidOut['sawing line (dashed)']).toBe(ring.roughCircle)
        expect(circles('saw')).toContain(ring.roughCircle)
        const side = chosen.allowances?.side ?? 0
        const [blank, each] = [laidOut['thickness of the blank'], laidOut['thickness of each blank']]
        if (side > 0) expect(ring.pieces === 1 ? blank : each).toBe(ring.thickness)
        else expect(Object.values(laidOut)).toContain(ring.thickness)
        expect(words.some((text) => /^thickness(?: of (?:the blank|each of the two blanks))?: /.test(text))).toBe(true)
      }

      // The hole of the outer ring, and where the saw enters.
      const { entryHole, outerRing, split, cheekScrews } = stock
      const core = sizes('outer-core')
      if (outerRing?.roughHole !== undefined && method !== 'router-and-lathe')
        expect(core['largest core']).toBe(outerRing.roughHole)
      if (entryHole !== undefined) {
        expect(method).toBe('saw-and-lathe')
        expect(circles('saw')).toContain(outerRing?.roughHole)
        expect(circles('hole')).toContain(entryHole.diameter)
        expect(sizes('outer-bore')).toEqual({
          'hole for the blade': entryHole.diameter,
          'from the centre to the middle of that hole': entryHole.fromCentre,
        })
      }

      // Segments.
      for (const part of ['outerRing', 'innerRing', 'plates', 'cage'] as const) {
        const segments = stock[part]?.segments
        const glue = operation(GLUED[part])
        expect(glue !== undefined).toBe(segments !== undefined)
        expect(chosen.woods?.[part]?.segments?.count).toBe(segments?.count)
        if (segments === undefined || glue === undefined) continue
        expect(sizes(glue.id)).toMatchObject({
          'width of the strips': segments.stripWidth,
          'length of all strips together': segments.stockLength,
          'long edge of a segment': segments.outerEdge,
        })
        expect(glue.how).toContain(`cut ${segments.pieces} segments`)
        expect(glue.how).toContain(`Glue ${segments.count} of them`)
        expect(glue.how).toContain(`${Number(segments.miter.toFixed(2))}°`)
        const inAll = segments.pieces === segments.count ? '' : ` a layer, ${segments.pieces} in all`
        expect(words.some((text) => text.startsWith(`glued up from ${segments.count} segments${inAll},`))).toBe(true)
      }

      // Screws, or dowels where none fits.
      const joint = split && operation(split.ring === 'outerRing' ? 'outer-split' : 'inner-split')
      expect(joint === undefined).toBe(split === undefined)
      const held = [
        [split?.screws, split?.screwCircle, joint, 1],
        // Each of both cheeks has its own.
        [cheekScrews, cheekScrews?.screwCircle, operation('cheeks'), 2],
      ] as const
      for (const [screws, circle, step, times] of held) {
        if (screws === undefined || step === undefined || circle === undefined) continue
        expect(screws).toMatchObject(chosen.screws ?? {})
        const { count: many, size, length, clearanceHole, pilotHole } = screws
        expect(sizes(step.id)).toMatchObject({
          [`circle of the ${many} screws`]: circle,
          'length of the screws': length,
          'depth of the pilot hole in the second piece': screws.pilotDepth,
          'depth of the countersink': screws.countersinkDepth,
          ...(screws.counterboreDepth ? { 'depth of the counterbore': screws.counterboreDepth } : {}),
        })
        expect(step.tool).toContain(`${times * many} wood screws ${size}`)
        expect(step.tool).toContain(`drills of ${pilotHole} and ${clearanceHole}`)
        expect(words.some((text) => text.startsWith(`${many} screws ${size} × `))).toBe(true)
        expect(words.some((text) => text.includes(`clearance ${clearanceHole}, pilot ${pilotHole}`))).toBe(true)
        expect(circles('centre')).toContain(circle)
      }
      if (split !== undefined && joint !== undefined && split.screws === undefined && split.dowels !== undefined) {
        const { dowels, screwCircle } = split
        expect(sizes(joint.id)).toMatchObject({
          [`circle of the ${dowels.count} dowels`]: screwCircle,
          dowel: dowels.diameter,
          'length of the dowels': dowels.length,
          'depth of the dowel holes in each half': dowels.depthEachHalf,
        })
        expect(circles('centre')).toContain(screwCircle)
        expect(words.some((text) => text.startsWith(`${dowels.count} dowels Ø`))).toBe(true)
      }

      // The gauges are made before they are used, to the sizes of the plan and of the grooves that they check.
      const { gauges, mounting } = (isOfPlates(ours) ? {} : answer.making) as unknown as {
        gauges?: Gauges
        mounting?: Mounting
      }
      expect(gauges === undefined).toBe(input.arrangement === 'thrust')
      const kit = operation('make-gauges')?.sizes ?? []
      const gauge = (name: string) => kit.find((size) => size.name === name)
      for (const { kind, diameter, tolerance, barWidth } of gauges?.plugs ?? []) {
        expect(gauge(kind === 'snug' ? 'plug that just enters' : `${kind} plug`)).toMatchObject({
          value: diameter,
          tolerance,
        })
        expect(gauge(BAR_WIDTH)?.value).toBe(barWidth)
      }
      for (const { ring, radius, depth, stopDepth } of gauges?.profiles ?? []) {
        const [groove, step] = ring === 'outerRing' ? ['outer', 'outer-groove'] : ['inner', 'inner-groove']
        expect(gauge(`${groove} groove: radius of profile and scraper`)?.value).toBe(radius)
        expect(gauge(`${groove} groove: from their shoulders to the tip`)).toMatchObject({
          value: depth,
          stopAt: stopDepth,
        })
        const blocks = gauges?.setBlocks.filter((block) => block.ring === ring) ?? []
        const [stop, done] = (['stop', 'done'] as const).map((at) => blocks.find((block) => block.at === at)?.length)
        expect(gauge(`${groove} groove: set-block “stop”`)?.value).toBe(stop)
        expect(gauge(`${groove} groove: set-block “done”`)?.value).toBe(done)
        const dowel = gauges?.dowels.find((each) => each.ring === ring)
        expect(gauge(`${groove} groove: bare dowel for the abrasive`)?.value).toBe(dowel?.diameter)
        const cut = operation(step)?.sizes
        expect(cut?.find(({ name }) => name === 'groove radius')?.value).toBe(radius)
        expect(cut?.find(({ name }) => name === 'across the groove bottoms')).toMatchObject({
          value: done,
          stopAt: stop,
        })
      }

      // The seats, where they are cut and where the bearing is mounted.
      const mount = operation('mount')
      expect(mount).toBeDefined()
      if (mount !== undefined && mounting !== undefined) {
        const { shaft, housing, drive } = mounting
        const bored = /^Bore the ring to [^ ]+ (in|mm)\. /
        for (const part of [shaft, housing, drive])
          expect(mount.how).toContain((part?.message ?? '').replace(bored, ''))
        const { mounting: asked } = chosen
        if (asked?.shaft?.diameter !== undefined)
          expect(shaft.shaftDiameter).toBeWithin(1e-6, shown(asked.shaft.diameter))
        expect(sizes('mount')).toMatchObject({ shaft: shaft.shaftDiameter, 'bore on the shaft': shaft.seatDiameter })
        expect(sizes('inner-blank')).toMatchObject({ shaft: shaft.shaftDiameter, bore: shaft.seatDiameter })
        if (housing !== undefined) {
          expect(sizes('mount')).toMatchObject({
            'seat in the housing': housing.seatDiameter,
            'depth of the seat': housing.seatDepth,
            'board of the housing, at least across': housing.leastWidth,
          })
          const outside = sizes(method === 'router-and-lathe' ? 'outer-rout' : 'outer-outside')
          expect(outside['seat in the housing']).toBe(housing.seatDiameter)
        }
      }

      // The assembly drawing names the same screws and the same seats.
      const notes = textsOn(drawingOf('assembly', ours, 'a4'))
        .map(({ text }) => text)
        .join(' ')
      const fastened = split?.screws ?? cheekScrews
      if (fastened !== undefined) expect(notes).toContain(`${fastened.count} screws ${fastened.size} × `)
      const drawn = /Shaft: \w+, Ø([\d.]+) (?:in|mm), in a bore cut to Ø([\d.]+) /.exec(notes)?.slice(1).map(Number)
      expect(drawn === undefined).toBe(mounting === undefined)
      if (isOfPlates(ours)) {
        const { making } = answer as unknown as { making: PlatePlan }
        platesAgree(making, chosen, { sizes, words, notes, circles, how: mount?.how ?? '', shown, units })
      }
      if (mounting !== undefined) {
        const { shaft, housing } = mounting
        const digit = units === 'in' ? 0.0006 : 0.006
        expect(drawn?.[0]).toBeWithin(digit, shaft.shaftDiameter)
        expect(drawn?.[1]).toBeWithin(digit, shaft.seatDiameter)
        const seat = /Housing: seat Ø([\d.]+)/.exec(notes)?.[1]
        expect(seat === undefined).toBe(housing === undefined)
        if (housing !== undefined) expect(Number(seat)).toBeWithin(digit, housing.seatDiameter)
      }

      // Nothing is below 0, but for the core, which has room to spare there, a seat that is tight, and a rule that reads too little.
      const below = numberLeaves({ stock, sizes: sheet.operations.map((each) => each.sizes) }).filter(
        ([path, value]) => !(value >= 0) && !/shortBy|play|upperPlay|shopError/.test(path),
      )
      expect(below).toEqual([])
    }),
    { numRuns: 300 },
  )
})

// Bearings of which the stock once said screws of another gauge than the job sheet, or dowels where that said screws.
test.each<readonly [string, DesignInput, string]>([
  ['16 balls of 30 mm', { units: 'mm', balls: { count: 16, diameter: mm(30) }, bore: mm(20) }, 'screws'],
  ['12 balls of 1/2 in', { units: 'in', balls: { count: 12, diameter: mm(12.7) }, bore: mm(12.7) }, 'dowels'],
])('%s: what the stock takes, the job sheet tells', (_name, input, held) => {
  const made = design(input)
  if (!made.ok) throw new Error('the input must give a bearing')
  const ours = withMaking(made.value, {})
  const { split } = answerOf(ours).making as unknown as Stock
  const { operations } = toJobSheet(ours, { units: input.units })
  const tool = operations.find(({ id }) => id === 'inner-split')?.tool
  expect(tool).toContain(split?.screws ? `${split.screws.count} wood screws ${split.screws.size}` : 'dowels')
  expect(tool).toContain(held)
})
