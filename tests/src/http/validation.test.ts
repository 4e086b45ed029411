import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DEFAULTS } from '#src/config.ts'
import { FaultList } from '#src/http/fault-list.ts'
import { findFaults } from '#src/http/faults.ts'
import { isSchema, schemaNamesOf } from '#src/http/schema.ts'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { spoiled } from '#tests/fuzz/spoil.ts'
import { near, valid } from '#tests/fuzz/valid.ts'
import { testedApp } from '#tests/support/started-app.ts'

const POSTS = OPERATIONS.filter(({ method, body }) => method === 'POST' && body !== undefined)

describe('faults are found in an input exactly where the validator refuses it', () => {
  test.each(POSTS)('$operationId', async (operation) => {
    const { body: described = {}, examples } = operation
    const url = operation.path.replace('{view}', 'assembly').replace('{format}', 'svg')
    const app = await testedApp()
    let schema: unknown
    app.addHook('onRequest', async (request) => {
      schema = request.routeOptions.schema?.body
    })
    // As far as an input has been found valid: what becomes of it is not asked here.
    app.addHook('preHandler', async (_request, reply) => reply.code(204).send())
    const inputs = fc.oneof(valid(described), ...examples.map((example) => near(example, described)))
    await fc.assert(
      fc.asyncProperty(fc.oneof(inputs, spoiled(inputs), spoiled(spoiled(inputs))), async (input) => {
        const body = JSON.stringify(input)
        fc.pre(body !== undefined && Buffer.byteLength(body) <= DEFAULTS.bodyLimitBytes)
        const { statusCode } = await app.inject({
          method: 'POST',
          url,
          body,
          headers: { 'content-type': 'application/json' },
        })
        expect([204, 400]).toContain(statusCode)
        const found = new FaultList()
        if (isSchema(schema)) findFaults(found, JSON.parse(body), schema, schemaNamesOf(app))
        expect(found.isEmpty, JSON.stringify(found.told())).toBe(statusCode === 204)
      }),
      { numRuns: 150 },
    )
  })
})

test('a schema that does not compile is a fault of ours: 500, not 400', async () => {
  const app = await testedApp({
    route: async (instance) => {
      instance.post('/broken', { schema: { body: { type: 'object', unheardOf: true } } }, () => 'never')
    },
  })
  const answer = await app.inject({ method: 'POST', url: '/test/broken', payload: {} })
  expect(answer.statusCode).toBe(500)
  expect(answer.body).not.toMatch(/unheardOf/)
})
