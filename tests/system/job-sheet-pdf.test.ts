import { expect } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { outputOf, testsThatNeed } from './needed.ts'

const { test } = testsThatNeed('pdftotext')

const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
const BODY = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

type Operation = {
  readonly number: number
  readonly title: string
  readonly sizes: readonly { readonly stopAt?: number }[]
}

test.each(['radial', 'roller', 'thrust', 'caged'])(
  '%s: on paper and as a page it says every operation and every figure to stop at',
  async (arrangement) => {
    const at = await sharedApp()
    const { operations } = JSON.parse((await post(`${at}/v1/job-sheet`, { ...BODY, arrangement })).text) as {
      operations: readonly Operation[]
    }
    const response = await fetch(`${at}/v1/job-sheet?${QUERY}&arrangement=${arrangement}&format=pdf`)
    const words = outputOf('pdftotext', ['-layout', '-', '-'], Buffer.from(await response.arrayBuffer())).toString()
    const squeezed = words.replace(/\s+/g, ' ')
    const { text } = await ask(`${at}/v1/job-sheet?${QUERY}&arrangement=${arrangement}&format=html`)
    const page = text.replace(/\s+/g, ' ')
    for (const { number, title } of operations)
      for (const said of [squeezed, page]) expect(said).toContain(`${number}. ${title}`)
    for (const { stopAt } of operations.flatMap(({ sizes }) => sizes))
      if (stopAt !== undefined)
        for (const said of [squeezed, page]) expect(said).toMatch(new RegExp(`\\b${Number(stopAt.toFixed(2))}0* mm`))
  },
)
