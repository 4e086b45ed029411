import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ask, problemIn } from '#tests/support/ask.ts'
import { raw } from '#tests/support/raw.ts'
import { sharedApp, startedApp, testedApp } from '#tests/support/started-app.ts'

describe('an address that cannot be read', () => {
  test.each([
    ['/%zz', 'The address cannot be read'],
    ['/v1/%ff', 'The address cannot be read'],
    ['/docs/%', 'The address cannot be read'],
    ['http://a:99999/', 'The address cannot be read'],
    ['*', 'The path must start with /'],
  ])('%s is answered, marked and counted like any other', async (path, detail) => {
    const at = await startedApp()
    const answer = await raw(at, `GET ${path} HTTP/1.1\r\nhost: a\r\nx-request-id: asked\r\nconnection: close\r\n\r\n`)
    expect(answer).toMatch(/^HTTP\/1\.1 400 /)
    expect(answer).toContain(`"detail":"${detail}`)
    for (const header of ['x-request-id: asked', 'access-control-allow-origin: *', 'x-content-type-options: nosniff'])
      expect(answer).toContain(header)
    expect((await ask(`${at}/metrics`)).text).toMatch(/_count\{[^}]*route="none",status="400"\} 1/)
  })

  test('gives a problem document, whatever its bytes', async () => {
    const at = await sharedApp()
    const sign = fc.constantFrom(...'%/.?#:;=&[]@!aZ09~-_\\^{}|', '%2', '%2f', '%c3%a9', '%ff', '//', 'http://', '/v1/')
    const url = fc.array(sign, { minLength: 1, maxLength: 12 }).map((signs) => signs.join(''))
    await fc.assert(
      fc.asyncProperty(url, async (path) => {
        const answer = await raw(at, `DELETE ${path} HTTP/1.1\r\nhost: a\r\nconnection: close\r\n\r\n`)
        expect(answer, path).toMatch(/^HTTP\/1\.1 4\d\d .*^content-type: application\/problem\+json\r$/ims)
      }),
    )
  })
})

describe('one path has one spelling', () => {
  test.each(['/v1/%64esign', '/%761/design', '/%76%31/de%73ign', 'http://a/v1/design', 'HTTP://a/v1/design?x=%zz'])(
    '%s is /v1/design',
    async (path) => {
      const answer = await raw(
        await sharedApp(),
        `PUT ${path} HTTP/1.1\r\nhost: a\r\nconnection: close\r\ncontent-length: 0\r\n\r\n`,
      )
      expect(answer).toMatch(/^HTTP\/1\.1 405 /)
      expect(answer).toMatch(/^allow: GET, HEAD, OPTIONS, POST\r$/m)
    },
  )

  test('a stroke or a percent sign that was escaped stays one', async () => {
    const at = await sharedApp()
    problemIn(await ask(`${at}/v1%2Fdesign`), 404)
    problemIn(await ask(`${at}/%2576%31/design`), 404)
  })
})

// Found by measuring: one address of 8,000 dots held up everyone else for a tenth of a second.
test('an address without a route costs no more for being nearly one', async () => {
  const app = await testedApp()
  await app.ready()
  const costOf = async (url: string): Promise<number> => {
    await app.inject(url)
    const before = process.cpuUsage()
    for (let turn = 0; turn < 10; turn += 1) expect((await app.inject(url)).statusCode).toBe(404)
    const { user, system } = process.cpuUsage(before)
    return user + system
  }
  const letters = await costOf(`/v1/drawings/${'a'.repeat(8_000)}/`)
  expect(await costOf(`/v1/drawings/${'.'.repeat(8_000)}/`)).toBeLessThan(10 * letters)
})
