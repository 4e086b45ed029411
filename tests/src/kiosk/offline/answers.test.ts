import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { browserScript } from '#src/http/browser-script.ts'
import type { localAnswer } from '#src/kiosk/offline/answers.ts'
import { ask, post } from '#tests/support/ask.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/* The paths as a browser answers them, from the very script that it runs, held to what the service says. */

let answer: typeof localAnswer
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'answers-'))
  const file = join(folder, 'answers.mjs')
  writeFileSync(file, await browserScript({ root: process.cwd(), entry: 'src/kiosk/offline/answers.ts' }))
  const module: { readonly localAnswer: typeof localAnswer } = await import(file)
  answer = module.localAnswer
  rmSync(folder, { recursive: true })
})

const PATHS = {
  design: '/design',
  fitCorrection: '/fit-correction',
  seasonalFit: '/seasonal-fit',
  toleranceCheck: '/tolerance-check',
  ballSelection: '/ball-selection',
  loadCheck: '/load-check',
  jobSheet: '/job-sheet',
} as const

describe('the first example of every question', () => {
  test.each(Object.entries(PATHS))('%s', async (name, path) => {
    const { request } = JSON.parse(readFileSync(`openapi/examples/${name}.json`, 'utf8'))
    const told = await post(`${await sharedApp()}/v1${path}`, request)
    // The page always names the arrangement.
    const input = 'design' in request ? { ...request, design: radial(request.design) } : radial(request)
    const here = await answer({ method: 'POST', path, input })
    expect(here?.status).toBe(told.status)
    expect(JSON.parse(here?.body ?? '')).toEqual(JSON.parse(told.text))
  })
})

const radial = (design: object): object => ({ arrangement: 'radial', ...design })
const BEARING = { units: 'mm', arrangement: 'radial', balls: { count: 12, diameter: 16 }, bore: 12 }
const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

test.each([
  ['/drawings/assembly.svg', {}],
  ['/drawings/templates.dxf', {}],
  ['/drawings/gauges.svg', { paper: 'letter' }],
  ['/job-sheet', { format: 'html' }],
] as const)('%s is the same sheet, with the same mark', async (path, options) => {
  const told = await ask(`${await sharedApp()}/v1${path}?${QUERY}&${new URLSearchParams(options)}`)
  const here = await answer({ method: 'GET', path, input: { ...BEARING, ...options } })
  expect(here?.body).toBe(told.text)
})

test('a refusal has the words of the service; a PDF and an unknown path have no answer', async () => {
  const refused = await answer({ method: 'POST', path: '/design', input: { ...BEARING, bore: 60 } })
  expect(refused?.status).toBe(422)
  expect(refused?.body).toContain('cuts into the inner ring')
  expect(await answer({ method: 'GET', path: '/job-sheet', input: { ...BEARING, format: 'pdf' } })).toBeUndefined()
  expect(await answer({ method: 'GET', path: '/no-such', input: {} })).toBeUndefined()
})
