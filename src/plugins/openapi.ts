import { hash } from 'node:crypto'
import swagger from '@fastify/swagger'
import type { FastifyInstance } from 'fastify'
import { Type } from 'typebox'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { lazy } from '#shared/lazy.ts'
import { addDocsPage } from '#src/docs/route.ts'
import { ASK_AGAIN, isKept } from '#src/http/caching.ts'
import { constantBody } from '#src/http/content-coding.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import type { QueryParameter } from '#src/http/query-parameters.ts'
import { complete } from '#src/openapi/document.ts'
import { VERSION } from '#src/version.ts'
import { inList } from '#src/words/list.ts'
import { TERMS } from '#src/words/terms.ts'

const NAMES = inList(ARRANGEMENT_NAMES.map((name) => `\`${name}\` (${TERMS[name].bearings})`))
const DESCRIPTION = [
  'Designs, checks and corrects shop-made wooden bearings:',
  `${NAMES}. Each request states its \`units\`. A length is a number in those units,`,
  'or a text such as `"5/8"`, `"1 3/16"` or `"16 mm"`. An invalid request gets one problem document (RFC 9457) that lists',
  'all its errors.',
].join('\n')

const TAGS = [
  { name: 'bearing', description: 'What to cut, whether it will run, and what to do next.' },
  { name: 'reference', description: 'Reference data, each figure with its source.' },
  { name: 'drawings', description: 'Drawings, gauges and job sheets to read, print and cut by.' },
  { name: 'service', description: 'Health, metrics and this document.' },
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
    const body = constantBody(JSON.stringify(app.swagger()))
    return { body, digest: hash('sha256', body) }
  })
  app.get(
    '/openapi.json',
    {
      schema: {
        operationId: 'openapi',
        tags: ['service'],
        summary: 'This document',
        description: 'The OpenAPI document that describes every path of the service. Generate a client from it.',
        response: {
          200: Type.Object({}, { description: 'OpenAPI 3.1', additionalProperties: true }),
          304: { description: 'The document that the caller has is still the document', type: 'null' },
        },
      },
    },
    async (request, reply) => {
      const { body, digest } = await made()
      if (isKept(request, reply, { input: digest, mediaType: JSON_TYPE, cacheControl: ASK_AGAIN }))
        return reply.code(304).send()
      return reply.type(`${JSON_TYPE}; charset=utf-8`).send(body)
    },
  )
  addDocsPage(app)
}
