import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { Type } from 'typebox'
import { expect, test } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { PROBE, probeRoute } from '#tests/support/probe-route.ts'
import { startedApp, testedApp } from '#tests/support/started-app.ts'

const Odd = Type.Object({ whole: Type.Integer() }, { $id: 'Odd' })

/** A plugin that adds a schema of its own once lost the serializer of the app, and an answer its fractions. */
const oddRoute: FastifyPluginAsyncTypebox = async (app) => {
  app.addSchema(Odd)
  app.get('/odd', { schema: { hide: true, response: { 200: Type.Ref('Odd') } } }, async (_request, reply) =>
    reply.send({ whole: 3.7, more: [1, { deep: true }] } as never),
  )
}

test('an answer leaves as it was made, whatever its schema says', async () => {
  const at = await startedApp({ route: oddRoute })
  expect((await ask(`${at}/test/odd`)).text).toBe('{"whole":3.7,"more":[1,{"deep":true}]}')
})

test('the first of a kind is held to its schema like every later one', async () => {
  const app = await testedApp({ route: probeRoute })
  const send = (payload: object) => app.inject({ method: 'POST', url: '/test/probe', payload })
  expect((await send({ ...PROBE, bore: 0 })).statusCode).toBe(400)
  expect((await send(PROBE)).statusCode).toBe(200)
})

test('two services at once keep out of each other’s way', async () => {
  const [one, other] = [
    await startedApp({ route: probeRoute }),
    await startedApp({ config: { bodyLimitBytes: 1_024 } }),
  ]
  expect((await post(`${one}/test/probe`, PROBE)).status).toBe(200)
  expect((await post(`${other}/test/probe`, PROBE)).status).toBe(404)
})
