import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DesignInput, design } from '#shared/bearing/arrangements.ts'
import { LUMBERS, type MakingInput } from '#shared/bearing/making-input.ts'
import { METHODS } from '#shared/bearing/method.ts'
import { SCREW_GAUGES } from '#shared/making/screws.ts'
import { lengthOf, mm, type Units } from '#shared/units/length.ts'
import { answerOf } from '#src/api/design/answers.ts'
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

/** What a maker may choose, in the units of the design; the same of plates, which have neither segments nor screws. */
const choices = (units: Units, isOfRings: boolean): fc.Arbitrary<MakingInput> => {
  const length = (min: number, max: number) =>
    some(between(min, max).map((size) => lengthOf(units === 'in' ? size / 25.4 : size, units)))
  const ofRings = {
    woods: some(fc.record({ outerRing: glued, innerRing: glued }, { requiredKeys: [] })),
    screws: some(
      fc.record(
        { count: fc.integer({ min: 2, max: 12 }), gauge: fc.constantFrom(...SCREW_GAUGES) },
        { requiredKeys: [] },
      ),
    ),
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
      ...(isOfRings ? ofRings : {}),
    })
    .map(stated)
}

const CASES = fc
  .oneof<fc.Arbitrary<DesignInput>[]>(likelyInput, likelyRollers, likelyCaged, likelyPlates)
  .chain((input) => fc.tuple(fc.constant(input), choices(input.units, input.arrangement !== 'thrust')))

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
        expect(words.some((text) => /^thickness of (the blank|each of the two blanks): /.test(text))).toBe(true)
      }

      // The hole of the outer ring, and where the saw enters.
      const { entryHole, outerRing, split, cheekScrews } = stock
      const core = sizes('outer-core')
      if (outerRing?.roughHole !== undefined && method !== 'router-and-lathe')
        expect(core['largest core']).toBe(outerRing.roughHole)
      if (outerRing?.roughHole !== undefined) expect(circles('saw')).toContain(outerRing.roughHole)
      if (entryHole !== undefined) {
        expect(circles('hole')).toContain(entryHole.diameter)
        if (method === 'saw-and-lathe')
          expect(sizes('outer-bore')).toEqual({
            'hole for the blade': entryHole.diameter,
            'from the centre to the middle of that hole': entryHole.fromCentre,
          })
      }

      // Segments.
      for (const part of ['outerRing', 'innerRing'] as const) {
        const segments = stock[part]?.segments
        const glue = operation(part === 'outerRing' ? 'outer-glue' : 'inner-glue')
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
        expect(words.some((text) => text.startsWith(`glued up from ${segments.pieces} segments`))).toBe(true)
      }

      // Screws, or dowels where none fits.
      const joint = split && operation(split.ring === 'outerRing' ? 'outer-split' : 'inner-split')
      expect(joint === undefined).toBe(split === undefined)
      const held = [
        [split?.screws, split?.screwCircle, joint],
        [cheekScrews, cheekScrews?.screwCircle, operation('cheeks')],
      ] as const
      for (const [screws, circle, step] of held) {
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
        expect(step.tool).toContain(`${many} wood screws ${size}`)
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

      // Nothing is below 0, but for the core, which has room to spare there, a seat that is tight, and a rule that reads too little.
      const below = numberLeaves({ stock, sizes: sheet.operations.map((each) => each.sizes) }).filter(
        ([path, value]) => !(value >= 0) && !/shortBy|play|shopError/.test(path),
      )
      expect(below).toEqual([])
    }),
    { numRuns: 500 },
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
