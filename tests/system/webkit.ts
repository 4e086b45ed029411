import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { onTestFinished, vi } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { freePort } from '#tests/support/free-port.ts'
import type { OtherPage } from './firefox.ts'
import { PROGRAMS } from './programs.ts'

/*
 * WebKit, as Safari has it, by WebDriver (the W3C's recommendation of 2018), as far as these tests need it. Its port for GTK
 * shows its window on a screen: one that is in memory alone.
 */

/** A page in a browser of its own, which ends with the test. Its window is no narrower than its toolbar. */
export async function openedWebkit(width: number, height: number): Promise<OtherPage> {
  const port = await freePort()
  const env = { ...process.env, ...(await screen()), XDG_DATA_HOME: emptyFolder(), XDG_CACHE_HOME: emptyFolder() }
  ended(spawn(PROGRAMS.webkit.found[0], [`--port=${port}`], { env, stdio: 'ignore' }))
  const at = `http://127.0.0.1:${port}/session`
  const { sessionId } = (await vi.waitFor(() => command(at, { capabilities: {} }), { timeout: 60_000 })) as Session
  onTestFinished(async () => void (await fetch(`${at}/${sessionId}`, { method: 'DELETE' })))
  const send = (path: string, body: object) => command(`${at}/${sessionId}/${path}`, body)
  await send('window/rect', { width, height })
  await send('timeouts', { script: 60_000 })
  return {
    open: async (url) => void (await send('url', { url })),
    valueOf: async (expression) => {
      const script = `const done = arguments[0]; Promise.resolve(${expression}).then((value) => done(JSON.stringify(value ?? null)))`
      return JSON.parse(String(await send('execute/async', { script, args: [] })))
    },
  }
}

interface Session {
  readonly sessionId: string
}

/** A screen in memory: it writes its number once it is there. */
async function screen(): Promise<{ readonly DISPLAY: string }> {
  const args = ['-displayfd', '1', '-screen', '0', '1280x1024x24', '-nolisten', 'tcp']
  const server = ended(spawn(PROGRAMS.xvfb.found[0], args, { stdio: ['ignore', 'pipe', 'ignore'] }))
  const [number] = await once(server.stdout, 'data')
  return { DISPLAY: `:${String(number).trim()}` }
}

function ended<Started extends ChildProcess>(started: Started): Started {
  onTestFinished(() => void started.kill('SIGTERM'))
  return started
}

async function command(url: string, body: object): Promise<unknown> {
  const response = await fetch(url, { method: 'POST', body: JSON.stringify(body) })
  const { value } = (await response.json()) as { readonly value: unknown }
  if (!response.ok) throw new Error(`${url}: ${JSON.stringify(value)}`)
  return value
}
