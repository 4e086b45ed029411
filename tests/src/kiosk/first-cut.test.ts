import { expect, test } from 'vitest'
import { lengthOf } from '#shared/units/length.ts'
import { firstCut } from '#src/kiosk/first-cut.ts'
import { designHere, readBearing } from '#src/kiosk/job/bearing.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { caliperFigure } from '#src/words/figure.ts'
import { TERMS } from '#src/words/terms.ts'
import { post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

const MM: BearingTexts = { units: 'mm', 'balls.count': '12', 'balls.diameter': '16', bore: '12' }
const IN: BearingTexts = { units: 'in', 'balls.count': '10', 'balls.diameter': '5/8', bore: '1/2' }
const FILM = { finishAllowance: '0.05' }

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
    const read = readBearing({ ...texts, arrangement })
    const design = designHere(read)
    if (!design?.ok) throw new Error('there is such a bearing')
    const { text } = await post(`${await sharedApp()}/v1/job-sheet`, read.request)
    type Sized = { readonly name: string; readonly stopAt?: number }
    const { operations } = JSON.parse(text) as {
      operations: readonly { readonly id: string; readonly sizes: readonly Sized[] }[]
    }
    const names = ['across the groove bottoms', 'track', 'groove depth']
    const { sizes = [] } = operations.find(({ id }) => id === operation) ?? {}
    const stopAt = names
      .map((name) => sizes.find((size) => size.name === name)?.stopAt)
      .find((each) => each !== undefined)
    const size = caliperFigure(lengthOf(stopAt ?? Number.NaN, read.units), read.units)
    expect(firstCut({ design: design.value, terms: TERMS[arrangement] }, ring)).toBe(
      `No ${raceway} yet? Cut with the sharp tool until ${size} ${at}, then measure.`,
    )
  },
)
