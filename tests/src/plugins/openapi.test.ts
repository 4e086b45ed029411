import { expect, test } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { startedApp } from '#tests/support/started-app.ts'

type Operation = {
  readonly operationId: string
  readonly parameters?: readonly Readonly<Record<string, unknown>>[]
  readonly requestBody?: unknown
  readonly responses: Readonly<Record<string, { readonly content?: unknown; readonly headers?: unknown }>>
}
type Document = {
  readonly openapi: string
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> }
}

async function documentOf(): Promise<Document> {
  const at = await startedApp({ route: probeRoute })
  return JSON.parse((await ask(`${at}/openapi.json`)).text)
}

test('a computing path is described twice: with a body, and with the same as a query', async () => {
  const { openapi, paths } = await documentOf()
  expect(openapi).toBe('3.1.0')
  expect(Object.keys(paths['/test/probe'] ?? {}).toSorted()).toEqual(['get', 'post'])
  const { post, get } = paths['/test/probe'] ?? {}
  expect(post).toMatchObject({
    operationId: 'probe',
    requestBody: { content: { 'application/json': { schema: { $ref: '#/components/schemas/ProbeRequest' } } } },
  })
  expect(get).toMatchObject({ operationId: 'probeByQuery' })
  expect(get).not.toHaveProperty('requestBody')
  expect(Object.keys(post?.responses ?? {})).toEqual(['200', '400', '406', '413', '415', '422', '429', '503'])
  expect(Object.keys(get?.responses ?? {})).toEqual(['200', '304', '400', '406', '414', '422', '429', '503'])
})

test('the names of a query come from the schema of the body', async () => {
  const parameters = (await documentOf()).paths['/test/probe']?.['get']?.parameters ?? []
  expect(parameters.map(({ name, required }) => `${name}${required ? '!' : ''}`)).toEqual([
    ...['units!', 'balls.count!', 'balls.diameter!', 'balls.material', 'balls.diameters', 'bore!'],
    ...['ring.engagement', 'ring.grooveDepth', 'ring.outsideDiameter', 'ring.wall', 'ring.roundTo', 'split'],
  ])
  expect(parameters.every((parameter) => parameter['in'] === 'query')).toBe(true)
  expect(parameters.find(({ name }) => name === 'balls.count')).toEqual({
    name: 'balls.count',
    in: 'query',
    required: true,
    description: 'How many balls.',
    schema: { type: 'integer', minimum: 3, maximum: 200 },
  })
  expect(parameters.find(({ name }) => name === 'balls.diameters')).toMatchObject({
    style: 'form',
    explode: false,
    schema: { type: 'array', items: { $ref: '#/components/schemas/ProbeLength' } },
  })
})

test('a problem has one schema, and variants say which tag leads to them', async () => {
  const { paths, components } = await documentOf()
  expect(paths['/test/probe']?.['post']?.responses['400']).toMatchObject({
    content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
  })
  expect(Object.keys(components.schemas)).toEqual(expect.arrayContaining(['Problem', 'ProbeRequest', 'ProbeRing']))
  expect(Object.keys(components.schemas).filter((name) => name.startsWith('def-'))).toEqual([])
  expect(components.schemas['ProbeRequest']).toMatchObject({
    properties: {
      scatter: {
        discriminator: {
          propertyName: 'kind',
          mapping: { normal: '#/components/schemas/ProbeNormal', uniform: '#/components/schemas/ProbeUniform' },
        },
      },
    },
  })
})

test('media types stand side by side', async () => {
  const get = (await documentOf()).paths['/test/table']?.['get']
  expect(Object.keys(get?.responses['200']?.content ?? {})).toEqual(['application/json', 'text/csv'])
})

test('the page loads only what it brings, from here', async () => {
  const at = await startedApp()
  const page = await ask(`${at}/docs`)
  expect(page.status).toBe(200)
  expect(page.headers['content-security-policy']).toMatch(
    /^default-src 'none'; script-src 'self'; .*frame-ancestors 'self'/,
  )
  expect(page.text).not.toMatch(/<script(?![^>]*\bsrc=)/)
  const links = Array.from(page.text.matchAll(/(?:src|href)="([^"]+)"/g), ([, link = '']) => link)
  expect(links.length).toBeGreaterThan(4)
  for (const link of links) {
    expect(link).toMatch(/^\/docs\/static\//)
    expect((await ask(`${at}${link}`)).status, link).toBe(200)
  }
  expect((await ask(`${at}/openapi.json`)).status).toBe(200)
})

test('the page goes with HEAD and is refused to POST, like any other', async () => {
  const at = await startedApp()
  expect((await ask(`${at}/docs`, { method: 'HEAD' })).status).toBe(200)
  expect((await ask(`${at}/openapi.json`, { method: 'POST' })).status).toBe(405)
})

test('the headers that let an answer be kept are described where they are sent', async () => {
  const { paths } = await documentOf()
  const { post, get } = paths['/test/probe'] ?? {}
  for (const status of ['200', '304'])
    expect(Object.keys(get?.responses[status]?.headers ?? {})).toEqual(['ETag', 'Cache-Control', 'X-Engine'])
  expect(post?.responses['200']?.headers).toBeUndefined()
  const ready = paths['/health/ready']?.['get']
  expect(Object.keys(ready?.responses['503']?.headers ?? {})).toEqual(['Retry-After'])
})
