import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { arrangementsOf, OPERATIONS } from '#tests/fuzz/document.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { EXAMPLES, examplesProgram } from './examples-program.ts'
import { GENERATORS, runWithClient } from './generated-client.ts'

const PAIRS = OPERATIONS.flatMap((operation) =>
  arrangementsOf(operation).map((arrangement) => `${operation.operationId} ${arrangement}`),
).toSorted()

const isReference = (operationId: string): boolean =>
  OPERATIONS.find((operation) => operation.operationId === operationId)?.method === 'GET'

const CALLER = readFileSync(join(import.meta.dirname, 'callers/arrangements.ts'), 'utf8')

test('every arrangement has an example on every path whose JSON serves it', () => {
  const shown = EXAMPLES.filter(({ status }) => status === 200).map(
    ({ operationId, response }) => `${operationId} ${response.arrangement}`,
  )
  expect(shown).toEqual(expect.arrayContaining(PAIRS.filter((pair) => !pair.includes('ByQuery'))))
})

test.each(GENERATORS)(
  'the client of %s compiles every example, gets the answer that it shows, and knows one arrangement from another before it runs',
  async (generator) => {
    const programs = { examples: examplesProgram(isReference), caller: CALLER }
    const { examples, caller } = await runWithClient(generator, programs, await sharedApp())
    const shown = EXAMPLES.map(({ name, response }) => [name, { answered: response, shown: response }])
    expect(examples).toEqual(Object.fromEntries(shown))

    const all = ['radial', 'thrust', 'roller', 'caged']
    const served = PAIRS.filter((pair) => pair.includes('ByQuery'))
    const drawn = ['drawing', 'drawingByQuery'].flatMap((operation) => all.map((name) => `${operation} ${name}`))
    const { told, problem } = caller as {
      readonly told: readonly { readonly operation: string; readonly arrangement: string; readonly size?: number }[]
      readonly problem: object
    }
    const pairs = told.map(({ operation, arrangement }) => `${operation} ${arrangement}`)
    expect(pairs.toSorted()).toEqual([...served, ...drawn, ...all.map((name) => `design ${name}`)].toSorted())
    expect(told.filter(({ size }) => size !== undefined && !(size > 0))).toEqual([])
    expect(problem).toMatchObject({
      status: 400,
      errors: [{ path: '/boer', message: expect.stringContaining('bore') }],
    })
  },
)
