import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { injectionOf } from './support/operations.ts'

const FOLDER = join(import.meta.dirname, '../openapi')
const EXAMPLES = readdirSync(join(FOLDER, 'examples'))

const app = await buildApp({ config: { ...DEFAULTS, logLevel: 'silent' } })
await app.ready()

test('openapi.json says what the service says: after a change, npm run openapi', () => {
  const committed: unknown = JSON.parse(readFileSync(join(FOLDER, 'openapi.json'), 'utf8'))
  expect(JSON.parse(JSON.stringify(app.swagger()))).toEqual(committed)
})

test('every operation has an id, a summary and a tag, and every path under /v1 its problems', () => {
  for (const [path, operations] of Object.entries(app.swagger().paths ?? {})) {
    for (const operation of Object.values(operations as Record<string, unknown>)) {
      expect(operation, path).toMatchObject({
        operationId: expect.any(String),
        summary: expect.any(String),
        tags: [expect.any(String)],
      })
      if (path.startsWith('/v1/'))
        expect(operation, path).toHaveProperty('responses.400.content.application/problem+json')
    }
  }
})

test.each(EXAMPLES)('the example %s gives the answer that it shows', async (file) => {
  const example: { summary: string; request: object; status?: number; response: unknown } = JSON.parse(
    readFileSync(join(FOLDER, 'examples', file), 'utf8'),
  )
  const answer = await app.inject(injectionOf(app.swagger(), file, example.request))
  expect(answer.statusCode).toBe(example.status ?? 200)
  expect(answer.statusCode).toBeLessThan(500)
  expect(answer.json()).toEqual(example.response)
})
