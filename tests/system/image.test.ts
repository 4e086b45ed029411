import { expect, onTestFinished } from 'vitest'
import { ask } from '#tests/support/ask.ts'
import { expectSameAnswers } from '#tests/support/same-answers.ts'
import { sharedApp } from '#tests/support/started-app.ts'
import { outputOf, testsThatNeed } from './needed.ts'

const { test } = testsThatNeed('docker')

const docker = (...args: readonly string[]): string => outputOf('docker', args).toString().trim()

/** Of an engine that builds and starts what is asked of it. */
const BUILD_MS = 900_000

test(
  'the image answers as the sources do, on a root that is read-only, and stops when asked to',
  async () => {
    const image = docker('build', '--quiet', '.')
    const container = docker('run', '--detach', '--read-only', '--cap-drop=ALL', '--publish=127.0.0.1::8080', image)
    onTestFinished(() => void docker('rm', '--force', container))
    const at = `http://${docker('port', container, '8080/tcp').split('\n')[0]}`
    const isUp = () =>
      ask(`${at}/health/ready`).then(
        ({ status }) => status === 200,
        () => false,
      )
    await expect.poll(isUp, { timeout: 60_000, interval: 200 }).toBe(true)
    await expectSameAnswers(at, await sharedApp())
    docker('stop', container)
    expect(docker('wait', container)).toBe('0')
  },
  BUILD_MS,
)
