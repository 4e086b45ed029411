import { expect, test } from 'vitest'
import { outerSideOf } from '#shared/bearing/outer-side.ts'
import { sizeTable } from '#shared/bearing/size-table.ts'
import { mm } from '#shared/units/length.ts'

const diameters = [mm(10), mm(16)]
const counts = [8, 12, 20]

test('one row for every pair, counts running fastest, each the outer side of such a bearing', () => {
  const table = sizeTable({ units: 'mm', diameters, counts, groove: { conformity: 0.55 } })
  const sides = diameters.flatMap((diameter) =>
    counts.map((count) => {
      const side = outerSideOf({ units: 'mm', balls: { count, diameter }, bore: mm(1), groove: { conformity: 0.55 } })
      return side.ok && { ballCount: count, pitchRadius: side.value.pitchRadius, outerRing: side.value.outerRing }
    }),
  )
  expect(
    table.ok && table.value.map(({ ballCount, pitchRadius, outerRing }) => ({ ballCount, pitchRadius, outerRing })),
  ).toEqual(sides)
})

test('a pair that cannot be made is the answer', () => {
  const table = sizeTable({ units: 'mm', diameters, counts, ballGap: mm(9.9) })
  expect(!table.ok && table.error.map(({ code }) => code)).toEqual(['gap-takes-another-ball'])
})
