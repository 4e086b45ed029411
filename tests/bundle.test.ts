import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { request } from 'undici'
import { beforeAll, expect, test } from 'vitest'
import { ended, listening, start } from './support/started-process.ts'

/*
 * The bundled program, as the container starts it: the committed document, the answers of the examples, work done in a thread, and
 * the page with the document.
 */
beforeAll(() => {
  execFileSync('npm', ['run', 'build'], { stdio: 'ignore' })
}, 60_000)

const exampleOf = (name: string): { readonly request: unknown; readonly response: unknown } =>
  JSON.parse(readFileSync(`openapi/examples/${name}.json`, 'utf8'))

test('serves what the sources serve, and stops when asked to', async () => {
  const started = await start({}, ['node', 'dist/server/server.cjs'])
  await listening(started)
  const at = `http://127.0.0.1:${started.port}`
  const ask = async (path: string) => (await request(at + path)).body
  const post = async (path: string, body: unknown) => {
    const headers = { 'content-type': 'application/json' }
    return (await request(at + path, { method: 'POST', headers, body: JSON.stringify(body) })).body.json()
  }

  expect(await (await ask('/openapi.json')).json()).toEqual(JSON.parse(readFileSync('openapi/openapi.json', 'utf8')))
  for (const [path, name] of [
    ['/v1/design', 'design-refused'],
    ['/v1/design', 'design-thrust'],
    ['/v1/ball-selection', 'ballSelection'],
  ] as const) {
    const { request: asked, response } = exampleOf(name)
    expect(await post(path, asked)).toEqual(response)
  }
  const pdf = await ask('/v1/drawings/assembly.pdf?units=mm&balls.count=12&balls.diameter=16&bore=12')
  expect((await pdf.text()).slice(0, 5)).toBe('%PDF-')
  expect(await (await ask('/docs/')).text()).toContain('swagger-ui')
  expect((await (await ask('/docs/static/swagger-ui.css')).text()).length).toBeGreaterThan(10_000)

  started.process.kill('SIGTERM')
  expect(await ended(started)).toBe(0)
  expect(started.said.err).toBe('')
})
