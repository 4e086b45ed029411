import { type ChildProcess, spawn } from 'node:child_process'
import { closeSync, openSync } from 'node:fs'
import { request } from 'undici'
import { describe, expect, onTestFinished, test } from 'vitest'
import { OPERATIONS } from '#tests/fuzz/document.ts'
import { eventually } from '#tests/support/eventually.ts'
import { post } from './support/ask.ts'
import { freePort } from './support/free-port.ts'
import { sharedApp } from './support/started-app.ts'
import { ended, listening, start, surroundings } from './support/started-process.ts'

/** Every example that is posted, or so many of each path, and what comes back. */
async function answersOf(address: string, most = Number.POSITIVE_INFINITY): Promise<readonly string[]> {
  const answers: string[] = []
  for (const { path, examples } of OPERATIONS.filter(({ method }) => method === 'POST')) {
    for (const input of examples.slice(0, most)) {
      const { status, text } = await post(address + path, input)
      answers.push(`${path} ${status} ${text}`)
    }
  }
  return answers
}

const ready = (address: string) =>
  eventually(async () => expect((await request(`${address}/health/ready`)).statusCode).toBe(200))

describe('a disk that takes nothing', () => {
  test('is not missed: a process that may write no file gives the same answers, and ends well', async () => {
    const options = '--permission --allow-fs-read=* --allow-worker --allow-net'
    const started = await start({ NODE_OPTIONS: options, NODE_COMPILE_CACHE: '/compiled-code-goes-nowhere' })
    await listening(started)
    expect(await answersOf(`http://127.0.0.1:${started.port}`)).toEqual(await answersOf(await sharedApp()))
    started.process.kill('SIGTERM')
    expect(await ended(started)).toBe(0)
  })

  test('behind the log loses its lines, and nothing else', async () => {
    const port = await freePort()
    const full = openSync('/dev/full', 'w')
    const child: ChildProcess = spawn('node', ['src/server.ts'], {
      env: surroundings({ PORT: String(port), LOG_LEVEL: 'debug' }),
      stdio: ['ignore', full, 'ignore'],
    })
    closeSync(full)
    onTestFinished(() => {
      child.kill('SIGKILL')
    })
    const address = `http://127.0.0.1:${port}`
    await ready(address)
    // A request leaves the same lines whatever its example.
    expect(await answersOf(address, 1)).toEqual(await answersOf(await sharedApp(), 1))
    child.kill('SIGTERM')
    expect(await ended({ process: child, port, said: { out: '', err: '' } })).toBe(0)
  })
})
