import { hash } from 'node:crypto'
import swagger from '@fastify/swagger'
import type { FastifyInstance } from 'fastify'
import { Type } from 'typebox'
import { lazy } from '#shared/lazy.ts'
import { ASK_AGAIN, isKept } from '#src/http/caching.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import type { QueryParameter } from '#src/http/query-parameters.ts'
import { complete } from '#src/openapi/document.ts'
import { VERSION } from '#src/version.ts'
import { addDocsPage } from './docs-page.ts'

const DESCRIPTION = [
  'Designs shop-made wooden ball bearings: two rings, turned or routed, with a ring of bought balls running between.',
  'Every request states its `units`; a length is a number in those units, or a text such as `"5/8"`, `"1 3/16"` or',
  '`"16 mm"`. Whatever is wrong with a request comes back at once, as a problem document (RFC 9457).',
].join('\n')

const TAGS = [
  { name: 'bearing', description: 'What to cut, and whether it will run.' },
  { name: 'reference', description: 'What the service knows by itself, each figure with its source.' },
  { name: 'drawings', description: 'Drawings, templates and gauges to look at, print and cut by.' },
  { name: 'service', description: 'The service about itself.' },
]

/**
 * The OpenAPI document at `/openapi.json`, made when it is first asked for, and a page to read and try it at `/docs`. Before the
 * routes, or it misses them.
 */
export async function describe(app: FastifyInstance): Promise<void> {
  const queries = new Map<string, readonly QueryParameter[]>()

  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Racewright',
        version: VERSION,
        description: DESCRIPTION,
        license: { name: 'MIT', identifier: 'MIT' },
      },
      servers: [{ url: '/' }],
      tags: TAGS,
    },
    convertConstToEnum: false,
    refResolver: {
      buildLocalReference: ({ $id }, _base, _fragment, index) => (typeof $id === 'string' ? $id : `def-${index}`),
    },
    transform: ({ schema, url, route }) => {
      const query = route.config?.queryParameters
      if (query === undefined) return { schema, url }
      const { querystring: _body, ...rest } = schema
      queries.set(String(schema.operationId), query)
      return { schema: rest, url }
    },
    transformObject: (documents) =>
      complete('openapiObject' in documents ? documents.openapiObject : {}, queries, app.getSchemas()),
  })

  // What is in it depends on the build and on how it is set up.
  const made = lazy(async () => {
    const text = JSON.stringify(app.swagger())
    return { text, digest: hash('sha256', text) }
  })
  app.get(
    '/openapi.json',
    {
      schema: {
        operationId: 'openapi',
        tags: ['service'],
        summary: 'This document',
        response: {
          200: Type.Object({}, { description: 'OpenAPI 3.1', additionalProperties: true }),
          304: { description: 'The document that the caller has is still the document', type: 'null' },
        },
      },
    },
    async (request, reply) => {
      const { text, digest } = await made()
      if (isKept(request, reply, { input: digest, mediaType: JSON_TYPE, cacheControl: ASK_AGAIN }))
        return reply.code(304).send()
      return reply.type(`${JSON_TYPE}; charset=utf-8`).send(text)
    },
  )
  addDocsPage(app)
}
