import { expect, test } from 'vitest'
import { lengthOf } from '#shared/units/length.ts'
import { besidesOf, cutToPlug, firstCut } from '#src/kiosk/first-cut.ts'
import { designHere, readBearing } from '#src/kiosk/job/bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { caliperFigure } from '#src/words/figure.ts'
import { TERMS } from '#src/words/terms.ts'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const MM: BearingTexts = { units: 'mm', 'balls.count': '12', 'balls.diameter': '16', bore: '12' }
const IN: BearingTexts = { units: 'in', 'balls.count': '10', 'balls.diameter': '5/8', bore: '1/2' }
const FILM = { finishAllowance: '0.05' }

interface Sized {
  readonly name: string
  readonly value: number
  readonly stopAt?: number
}

/** A bearing, and the operations of its job sheet. */
async function sheetOf(texts: BearingTexts) {
  const read = readBearing(texts)
  const design = designHere(read)
  if (!design?.ok) throw new Error('there is such a bearing')
  const { text } = await post(`${await sharedApp()}/v1/job-sheet`, read.request)
  const { operations } = JSON.parse(text) as {
    operations: readonly { readonly id: string; readonly sizes: readonly Sized[] }[]
  }
  const caliper = (size: number | undefined) => caliperFigure(lengthOf(size ?? Number.NaN, read.units), read.units)
  return { design: design.value, operations, caliper }
}

test.each([
  ['radial', 'outer', 'outer-groove', MM, 'groove', 'across the bottoms'],
  ['radial', 'inner', 'inner-groove', MM, 'groove', 'across the bottoms'],
  ['radial', 'outer', 'outer-groove', IN, 'groove', 'across the bottoms'],
  ['radial', 'outer', 'outer-groove', { ...MM, ...FILM }, 'groove', 'across the bottoms'],
  ['caged', 'inner', 'inner-groove', MM, 'groove', 'across the bottoms'],
  ['roller', 'outer', 'outer-track', MM, 'track', 'across'],
  ['roller', 'inner', 'inner-track', { ...IN, finishAllowance: '0.002' }, 'track', 'across'],
  ['thrust', 'outer', 'trial-groove', MM, 'groove', 'deep'],
  ['thrust', 'outer', 'trial-groove', IN, 'groove', 'deep'],
] as const)(
  'a fresh blank of a %s bearing, %s, is cut to where the job sheet stops',
  async (...[arrangement, ring, operation, texts, raceway, at]) => {
    const { design, operations, caliper } = await sheetOf({ ...texts, arrangement })
    const circle = operations
      .find(({ id }) => id === operation)
      ?.sizes.find(({ name }) => name === 'circle of the groove')
    const names = ['across the groove bottoms', 'track', 'groove depth']
    const { sizes = [] } = operations.find(({ id }) => id === operation) ?? {}
    const stopAt = names
      .map((name) => sizes.find((size) => size.name === name)?.stopAt)
      .find((each) => each !== undefined)
    expect(firstCut({ design, terms: TERMS[arrangement] }, ring)).toBe(
      `No ${raceway} yet? Cut with the sharp tool until ${caliper(stopAt)} ${at}${circle === undefined ? '' : ` on a circle of ${caliper(circle.value)}`}, then measure.`,
    )
  },
)

test.each([MM, IN, { ...MM, ...FILM }])(
  'an outer groove whose balls leave no gap is cut, and sanded to a plug, as the job sheet has both',
  async (texts) => {
    const { design, operations, caliper } = await sheetOf({ ...texts, arrangement: 'caged' })
    const { sizes = [] } = operations.find(({ id }) => id === 'outer-groove') ?? {}
    const stopAt = sizes.find(({ name }) => name === 'across the groove bottoms')?.stopAt
    const plug = sizes.find(({ name }) => name === 'plug that just enters')?.value
    const told = cutToPlug({ design, terms: TERMS.caged })
    expect(told?.headline).toBe(`Cut until ${caliper(stopAt)} across the bottoms`)
    expect(told?.summary).toContain(`the plug of ${caliper(plug)} `)
  },
)

test('balls that leave a gap need no plug', async () => {
  const { design } = await sheetOf(MM)
  expect(cutToPlug({ design, terms: TERMS.radial })).toBeUndefined()
})

test.each([
  ['radial', undefined, []],
  ['caged', /^The cage comes once both rings fit.*Measure both lands first/, ['inner-sand', 'cage-ring']],
  ['roller', /^The two cheeks come once both tracks fit/, ['inner-sand', 'cheeks']],
  ['thrust', /^The gap shows .*cut to a depth of 4.80 mm .*the other plate/, ['try-balls', 'groove', 'second-plate']],
] as const)('what a %s bearing has besides its raceways is told, in the order of the job sheet', async (...row) => {
  const [arrangement, words, order] = row
  const { design, operations } = await sheetOf({ ...MM, arrangement })
  const told = besidesOf({ arrangement, design, terms: TERMS[arrangement] })
  if (words === undefined) expect(told).toBeUndefined()
  else expect(told).toMatch(words)
  const ids = operations.map(({ id }) => id)
  expect(ids.slice(ids.indexOf(order[0] ?? ''))).toEqual(expect.arrayContaining([...order]))
  expect(order.map((id) => ids.indexOf(id))).toEqual(order.map((_, index) => ids.indexOf(order[0] ?? '') + index))
})
