import { expect, test } from 'vitest'
import { thrustBearingOf } from '#shared/bearing/arrangements/thrust/geometry.ts'
import { ARRANGEMENTS } from '#shared/bearing/arrangements.ts'
import { sizeTable } from '#shared/questions/size-table/size-table.ts'
import { mm } from '#shared/units/length.ts'

const diameters = [mm(10), mm(16)]
const counts = [8, 12, 20]

test('one row for every pair, counts running fastest, each the outer side of such a bearing', () => {
  const table = sizeTable({ units: 'mm', diameters, counts, groove: { conformity: 0.55 } })
  const sides = diameters.flatMap((diameter) =>
    counts.map((count) => {
      const side = ARRANGEMENTS.radial.outerSideOf({
        units: 'mm',
        balls: { count, diameter },
        bore: mm(1),
        groove: { conformity: 0.55 },
      })
      return side.ok && { ballCount: count, pitchRadius: side.value.pitchRadius, outerRing: side.value.outerRing }
    }),
  )
  if (!table.ok) throw new Error('there must be a table')
  const rows = table.value.map((row) => {
    const { ballCount, pitchRadius } = row
    return { ballCount, pitchRadius, outerRing: 'outerRing' in row && row.outerRing }
  })
  expect(rows).toEqual(sides)
})

test('of plates: each the bearing of such a pair', () => {
  const shared = { units: 'mm', arrangement: 'thrust', plates: { wall: mm(20) } } as const
  const table = sizeTable({ ...shared, diameters, counts })
  const bearings = diameters.flatMap((diameter) =>
    counts.map((count) => {
      const made = thrustBearingOf({ ...shared, balls: { count, diameter }, bore: mm(1) })
      return made.ok && [made.value.pitchRadius, made.value.plate.outsideDiameter, made.value.height]
    }),
  )
  if (!table.ok) throw new Error('there must be a table')
  const rows = table.value.map((row) => 'plate' in row && [row.pitchRadius, row.plate.outsideDiameter, row.height])
  expect(rows).toEqual(bearings)
})

test('a pair that cannot be made is the answer', () => {
  const table = sizeTable({ units: 'mm', diameters, counts, ballGap: mm(9.9) })
  expect(!table.ok && table.error.map(({ code }) => code)).toEqual(['gap-takes-another-ball'])
})

// Found by fuzzing: the usual depth of the inner groove refused the table, with a pointer to what its caller cannot give.
test('an arc too small for an inner ring refuses no table, which has none', () => {
  const groove = { grooveRadius: mm(4) } // balls of 16 mm: 3.2 mm deep outside, 6.4 mm inside
  const table = sizeTable({ units: 'mm', diameters: [mm(16)], counts: [12], groove })
  expect(table).toMatchObject({ ok: true, value: [{ outerRing: { grooveRadius: 4 } }] })
})

test.each([
  ['radial', '/outerRing/outsideDiameter', { outerRing: { outsideDiameter: mm(60) } }],
  ['roller', '/outerRing/outsideDiameter', { outerRing: { outsideDiameter: mm(60) } }],
  ['thrust', '/plates/outsideDiameter', { plates: { outsideDiameter: mm(60) } }],
] as const)('%s: an outside within what rolls is no ring for a table either', (arrangement, path, outside) => {
  // 8 balls of 10 mm run on a circle of some 26 mm, 20 on one of 64 mm.
  const table = (...asked: number[]) =>
    sizeTable({ units: 'mm', arrangement, diameters: [mm(10)], counts: asked, ...outside })
  expect(table(8)).toMatchObject({ ok: true })
  expect(table(8, 20)).toMatchObject({ ok: false, error: [{ code: 'wall-below-zero', path }] })
})

// Found by fuzzing: the pointer was that of a design, which a table has not.
test('balls that leave no room for a plate are pointed to in the lists', () => {
  const groove = { cutterDiameter: mm(47) }
  const table = sizeTable({ units: 'mm', arrangement: 'thrust', diameters: [mm(12.7)], counts: [20, 6], groove })
  expect(table).toMatchObject({ ok: false, error: [{ code: 'no-room-inside', path: '/counts/1', ballCount: 6 }] })
})

test('what would be echoed and nobody could send is refused, in the place of this input', () => {
  const pathsOf = (input: Parameters<typeof sizeTable>[0]) => {
    const table = sizeTable(input)
    return table.ok ? [] : table.error.map(({ code, path }) => `${code} ${path}`)
  }
  const tooLarge = mm(10_000 * 25.4)
  expect(pathsOf({ units: 'mm', diameters, counts, outerRing: { wall: tooLarge } })).toEqual([
    'beyond-bounds /outerRing/wall',
  ])
  expect(pathsOf({ units: 'mm', diameters: [mm(10), tooLarge], counts, ballGap: mm(1) })).toEqual([
    'beyond-bounds /diameters/1',
    'beyond-bounds /outerRing/wall',
  ])
  // Two thirds of a ball of 0.001 in: less than an input in inches may hold.
  expect(pathsOf({ units: 'in', diameters: [mm(0.0254)], counts })).toEqual(['beyond-bounds /outerRing/wall'])
})
