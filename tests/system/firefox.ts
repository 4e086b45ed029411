import { type ChildProcess, spawn } from 'node:child_process'
import { onTestFinished } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { PROGRAMS } from './programs.ts'

/*
 * Firefox by WebDriver BiDi, as far as these tests need it. The library that drives the other browser knows only a build of its
 * own, which cannot be had from a distribution.
 */

interface Answer {
  readonly id?: number
  readonly result?: { readonly result?: { readonly value?: string } } & Readonly<Record<string, unknown>>
  readonly message?: string
}

/** A page in a browser that is not the one in which all else is tested. */
export interface OtherPage {
  readonly open: (address: string) => Promise<void>
  /** The value of an expression in the page, a promise's once it is there. */
  readonly valueOf: <Value>(expression: string) => Promise<Value>
}

/** A page in a browser of its own, which ends with the test. */
export async function openedFirefox(width: number, height: number): Promise<OtherPage> {
  const args = ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', emptyFolder()]
  const browser = spawn(PROGRAMS.firefox.found[0], args, { stdio: ['ignore', 'ignore', 'pipe'] })
  onTestFinished(() => void browser.kill('SIGKILL'))
  const command = await connected(`${await listeningAt(browser)}/session`)
  await command('session.new', { capabilities: {} })
  const { contexts } = (await command('browsingContext.getTree', {})) as { contexts: { context: string }[] }
  const context = contexts[0]?.context
  await command('browsingContext.setViewport', { context, viewport: { width, height } })
  return {
    open: async (url) => void (await command('browsingContext.navigate', { context, url, wait: 'complete' })),
    valueOf: async (expression) => {
      const whole = `Promise.resolve(${expression}).then((value) => JSON.stringify(value ?? null))`
      const found = await command('script.evaluate', { expression: whole, target: { context }, awaitPromise: true })
      return JSON.parse((found as NonNullable<Answer['result']>).result?.value ?? 'null')
    },
  }
}

/** The address that it prints once it can be talked to. */
const listeningAt = (browser: ChildProcess): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = ''
    browser.stderr?.on('data', (chunk) => {
      said += String(chunk)
      const address = /ws:\/\/[\d.:]+/.exec(said)?.[0]
      if (address !== undefined) resolve(address)
    })
    browser.on('exit', () => reject(new Error(`the browser ended: ${said}`)))
  })

async function connected(address: string) {
  const socket = new WebSocket(address)
  const waiting = new Map<number, (answer: Answer) => void>()
  await new Promise((resolve, reject) => {
    socket.addEventListener('open', resolve)
    socket.addEventListener('error', reject)
  })
  socket.addEventListener('message', ({ data }) => {
    const answer: Answer = JSON.parse(String(data))
    waiting.get(answer.id ?? -1)?.(answer)
  })
  let last = 0
  return async (method: string, params: object): Promise<unknown> => {
    last += 1
    const id = last
    const answer = new Promise<Answer>((resolve) => waiting.set(id, resolve))
    socket.send(JSON.stringify({ id, method, params }))
    const { result, message } = await answer
    if (result === undefined) throw new Error(`${method}: ${message}`)
    return result
  }
}
