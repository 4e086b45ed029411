import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { Agent, request } from 'undici'
import { expect, onTestFinished } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { freePort } from '#tests/support/free-port.ts'
import { sharedApp, startedApp } from '#tests/support/started-app.ts'
import { openedPage } from './browser.ts'
import { courseSite } from './course-site.ts'
import { outputOf, testsThatNeed } from './needed.ts'
import { SYSTEM_ENVIRONMENT } from './programs.ts'

const { test } = testsThatNeed('caddy', 'chromium', 'openssl')

/*
 * The recipes of .deploy/: their very configurations, with a proxy of this system instead of a container's.
 */

const RECIPES = join(import.meta.dirname, '../../.deploy')

/** A proxy that runs until the test is over, and the folder in which it keeps its certificates. */
function startedProxy(file: string, variables: Readonly<Record<string, string>>) {
  const folder = emptyFolder()
  const said: string[] = []
  const proxy = spawn('caddy', ['run', '--config', file, '--adapter', 'caddyfile'], {
    env: { ...SYSTEM_ENVIRONMENT, XDG_DATA_HOME: folder, XDG_CONFIG_HOME: folder, ...variables },
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  onTestFinished(() => void proxy.kill('SIGKILL'))
  proxy.stderr.on('data', (chunk) => said.push(String(chunk)))
  const authority = join(folder, 'caddy/pki/authorities/local')
  return { authority, isOver: () => proxy.exitCode !== null, said }
}

type Proxy = ReturnType<typeof startedProxy>

/** Asks again and again until there is an answer: a certificate takes a moment. */
async function answered(address: string, ca: () => string, { isOver, said }: Proxy) {
  for (;;) {
    try {
      return await request(address, { dispatcher: new Agent({ connect: { ca: ca() } }) })
    } catch (error) {
      if (isOver()) throw new Error(`the proxy ended: ${said.join('')}`, { cause: error })
      await sleep(100)
    }
  }
}

const ANY = (): string => ''

test('in a workshop, the proxy is an authority that a device can fetch and trust, and gives away nothing else of it', async () => {
  const service = new URL(await startedApp({ config: { trustProxy: ['127.0.0.1'], rateLimitPerMinute: 1 } }))
  const [plain, secure] = [await freePort(), await freePort()]
  const variables = { SITE: 'localhost', HTTP_PORT: `${plain}`, HTTPS_PORT: `${secure}`, SERVICE: service.host }
  const folder = emptyFolder()
  const proxy = startedProxy(join(RECIPES, 'workshop/Caddyfile'), {
    ...variables,
    XDG_DATA_HOME: folder,
    AUTHORITY: join(folder, 'caddy/pki/authorities/local'),
  })
  const offered = await answered(`http://localhost:${plain}/authority.crt`, ANY, proxy)
  const authority = await offered.body.text()
  expect(authority).toMatch(/^-----BEGIN CERTIFICATE-----/)
  const whole = await answered(`https://localhost:${secure}/health/ready`, () => authority, proxy)
  expect(await whole.body.json()).toEqual({ status: 'ready' })
  const secret = await answered(`http://localhost:${plain}/root.key`, ANY, proxy)
  expect(secret.statusCode).toBe(302)
  expect(await secret.body.text()).not.toContain('KEY')
})

test('a course page under HTTPS shows every embedding, and the browser has nothing to complain of', async () => {
  const folder = emptyFolder()
  const [key, cert] = [join(folder, 'key.pem'), join(folder, 'cert.pem')]
  const subject = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost']
  outputOf('openssl', [
    'req',
    '-x509',
    '-newkey',
    'rsa:2048',
    '-nodes',
    '-days',
    '2',
    '-keyout',
    key,
    '-out',
    cert,
    ...subject,
  ])
  const service = new URL(await sharedApp())
  const [plain, secure] = [await freePort(), await freePort()]
  const proxy = startedProxy(join(RECIPES, 'workshop/Caddyfile'), {
    SITE: 'localhost',
    HTTP_PORT: `${plain}`,
    HTTPS_PORT: `${secure}`,
    SERVICE: service.host,
  })
  await answered(
    `https://localhost:${secure}/health/ready`,
    () => readFileSync(join(proxy.authority, 'root.crt'), 'utf8'),
    proxy,
  )
  const site = await courseSite(async () => `https://localhost:${secure}`, {
    key: readFileSync(key),
    cert: readFileSync(cert),
  })
  expect(site).toMatch(/^https:/)
  const { page, faults } = await openedPage()
  await page.goto(site, { waitUntil: 'networkidle' })
  expect(await page.frameLocator('#figure').locator('.wide svg').count()).toBe(1)
  expect(await page.frameLocator('#living >> iframe').locator('.wide svg').count()).toBe(1)
  expect(await page.frameLocator('#sheet').locator('li.step').count()).toBeGreaterThan(15)
  expect(await page.evaluate("document.getElementById('gauges').naturalWidth")).toBeGreaterThan(300)
  expect(faults).toEqual([])
  // The page itself, in a secure context: its worker keeps it.
  await page.goto(`https://localhost:${secure}/`)
  await page.locator('#bearing-name', { hasText: '12 wooden balls' }).waitFor()
  expect(await page.getByText('This page came over plain HTTP').count()).toBe(0)
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)')
  await page.context().setOffline(true)
  await page.reload()
  await page.locator('#bearing-name', { hasText: '12 wooden balls' }).waitFor()
  expect(faults).toEqual([])
})

/** An authority looks for a site where all the world does. */
const PUBLIC_PORTS = [80, 443]
const canListen = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const server = createServer()
    server.once('error', () => resolve(false))
    server.listen(port, () => server.close(() => resolve(true)))
  })
const hasPublicPorts = async () => (await Promise.all(PUBLIC_PORTS.map(canListen))).every(Boolean)

test('a course site gets its certificate from an authority by itself', async ({ skip }) => {
  skip(!(await hasPublicPorts()), 'needs ports 80 and 443')
  const [plain, secure] = [await freePort(), await freePort()]
  const file = join(import.meta.dirname, 'authority.Caddyfile')
  const authority = startedProxy(file, { HTTP_PORT: `${plain}`, HTTPS_PORT: `${secure}` })
  const root = join(authority.authority, 'root.crt')
  const certificate = (): string => readFileSync(root, 'utf8')
  const directory = `https://localhost:${secure}/acme/local/directory`
  await answered(directory, certificate, authority)

  const service = new URL(await sharedApp())
  const proxy = startedProxy(join(RECIPES, 'course/Caddyfile'), {
    SITE: 'localhost',
    EMAIL: 'larkmoor@example.org',
    ACME_DIRECTORY: directory,
    ACME_ROOTS: root,
    SERVICE: service.host,
  })
  const ready = await answered('https://localhost/health/ready', certificate, proxy)
  expect(await ready.body.json()).toEqual({ status: 'ready' })
  const plainly = await answered('http://localhost/', ANY, proxy)
  expect(plainly.statusCode).toBe(308)
})
