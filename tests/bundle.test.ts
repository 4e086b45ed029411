import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import { ask, post } from './support/ask.ts'
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
  const textAt = async (path: string) => (await ask(at + path)).text

  expect(JSON.parse(await textAt('/openapi.json'))).toEqual(JSON.parse(readFileSync('openapi/openapi.json', 'utf8')))
  for (const [path, name] of [
    ['/v1/design', 'design-refused'],
    ['/v1/design', 'design-thrust'],
    ['/v1/ball-selection', 'ballSelection'],
  ] as const) {
    const { request: asked, response } = exampleOf(name)
    expect(JSON.parse((await post(at + path, asked)).text)).toEqual(response)
  }
  const pdf = await textAt('/v1/drawings/assembly.pdf?units=mm&balls.count=12&balls.diameter=16&bore=12')
  expect(pdf.slice(0, 5)).toBe('%PDF-')
  expect(await textAt('/docs/')).toContain('swagger-ui')
  expect((await textAt('/docs/static/swagger-ui.css')).length).toBeGreaterThan(10_000)

  started.process.kill('SIGTERM')
  expect(await ended(started)).toBe(0)
  expect(started.said.err).toBe('')
})
