import { expect, test } from 'vitest'
import { assemblyOf } from '#shared/bearing/assembly.ts'
import { mm } from '#shared/units/length.ts'

const ways = { fromInside: mm(2), overLand: mm(0.5) }

test('the easiest way that is open gives the gap', () => {
  expect(assemblyOf(ways, 'inner-ring')).toEqual({ assemblyGap: 0.5, easiestWay: 'over-land' })
  expect(assemblyOf(ways, 'none').easiestWay).toBe('over-land')
})

test('no easier over the land: straight from inside', () => {
  const equal = { fromInside: mm(2), overLand: mm(2) }
  expect(assemblyOf(equal, 'inner-ring')).toMatchObject({ assemblyGap: 2, easiestWay: 'from-inside' })
})

test('an outer ring in two halves is open at its side: any closed ring will do', () => {
  expect(assemblyOf(ways, 'outer-ring')).toMatchObject({ assemblyGap: 0, easiestWay: 'open-side' })
})
