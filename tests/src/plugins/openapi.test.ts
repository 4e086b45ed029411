import { brotliCompressSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import { ask, post } from '#tests/support/ask.ts'
import { probeRoute } from '#tests/support/probe-route.ts'
import { sharedApp } from '#tests/support/started-app.ts'

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
  const at = await sharedApp({ route: probeRoute })
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

describe('the page that describes the paths', () => {
  const linksIn = (page: string) =>
    Array.from(page.matchAll(/href="([^"]+)"/g), ([, link = '']) => link.replaceAll('&amp;', '&'))

  test('is one file of less than 60 KB compressed, which loads nothing', async () => {
    const at = await sharedApp()
    const { status, headers, text } = await ask(`${at}/docs`)
    expect(status).toBe(200)
    expect(headers['content-security-policy']).toMatch(
      /^default-src 'none'; style-src 'sha256-.*frame-ancestors 'self'/,
    )
    expect(text).not.toMatch(/<(?:script|img|link|iframe)[^>]* (?:src|href)=/)
    expect(brotliCompressSync(text).length).toBeLessThan(60_000)
  })

  test('says what each choice means once', async () => {
    const at = await sharedApp()
    for (const path of ['/docs', '/openapi.json'])
      expect((await ask(at + path)).text).not.toMatch(/([\w-]+(?:`|<\/code>): )(?:`|<code>)?\1/)
  })

  test('leads nowhere that is not there: each example of a GET can be opened, each shape is on the page', async () => {
    const at = await sharedApp()
    const { text } = await ask(`${at}/docs`)
    const links = linksIn(text)
    const outside = links.filter((link) => link.startsWith('/'))
    expect(outside.length).toBeGreaterThan(12)
    for (const link of new Set(outside)) expect((await ask(at + link)).status, link).toBe(200)
    const ids = new Set(Array.from(text.matchAll(/ id="([^"]+)"/g), ([, id = '']) => id))
    expect(links.filter((link) => link.startsWith('#') && !ids.has(link.slice(1)))).toEqual([])
  })

  test('has a request for every path that takes one, the radial example first, and each is answered', async () => {
    const at = await sharedApp()
    const { text } = await ask(`${at}/docs`)
    const plain = (part: string) =>
      part
        .replaceAll('&quot;', '"')
        .replaceAll('&#39;', "'")
        .replaceAll('&lt;', '<')
        .replaceAll('&gt;', '>')
        .replaceAll('&amp;', '&')
    const forms = Array.from(text.matchAll(/<form action="([^"]+)">[\s\S]*?<textarea[^>]*>([\s\S]*?)<\/textarea>/g))
    expect(forms.map(([, path]) => path)).toHaveLength(10)
    for (const [, path = '', body = ''] of forms) {
      const answer = await post(at + path, plain(body))
      expect(answer.status, path).toBe(200)
      if (String(answer.headers['content-type']).includes('json'))
        expect(JSON.parse(answer.text).arrangement).toBe('radial')
    }
  })

  test('tells the story of every operation', async () => {
    const at = await sharedApp()
    const { text } = await ask(`${at}/docs`)
    const { paths } = JSON.parse((await ask(`${at}/openapi.json`)).text) as Document
    for (const { operationId } of Object.values(paths).flatMap((path) => Object.values(path)))
      if (!operationId.endsWith('ByQuery')) expect(text).toContain(`<section id="${operationId}">`)
  })
})

test('of each operation the document has every request, and the answer to the first', async () => {
  const { paths } = await documentOf()
  const content = (of: unknown) => Object.values((of as { content: Record<string, { examples?: object }> }).content)
  const post = paths['/v1/design']?.['post']
  const [asked] = content(post?.requestBody)
  const [answered] = content(post?.responses['200'])
  expect(Object.keys(asked?.examples ?? {}).length).toBeGreaterThan(4)
  expect(Object.keys(asked?.examples ?? {})[0]).toBe('design')
  expect(Object.keys(answered?.examples ?? {})).toEqual(['design'])
})

test('the page goes with HEAD and is refused to POST, like any other', async () => {
  const at = await sharedApp()
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
