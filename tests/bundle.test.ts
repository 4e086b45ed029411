import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import { expectSameAnswers } from './support/same-answers.ts'
import { sharedApp } from './support/started-app.ts'
import { ended, listening, start } from './support/started-process.ts'

/* The bundled program, as the container starts it: what is shipped is held to what is tested, byte by byte. */

beforeAll(() => {
  execFileSync('npm', ['run', 'build'], { stdio: 'ignore' })
})

test('answers every example and every kind of file as its sources do, and stops when asked to', async () => {
  const bundle = await start({}, ['node', 'dist/server/server.cjs'])
  await listening(bundle)
  await expectSameAnswers(`http://127.0.0.1:${bundle.port}`, await sharedApp())
  bundle.process.kill('SIGTERM')
  expect(await ended(bundle)).toBe(0)
  expect(bundle.said.err).toBe('')
})

test('brings the licences of all packages that it is made of', () => {
  const notice = readFileSync('dist/NOTICE', 'utf8')
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'))
  for (const [name, version] of Object.entries(dependencies)) expect(notice).toContain(`\n\n${name} ${version} (`)
  for (const text of [
    'Bitstream Vera',
    'Apache License',
    'Permission is hereby granted',
    'Redistributions in binary form',
  ])
    expect(notice).toContain(text)
  expect(notice).not.toMatch(/^(vitest|typescript) /m)
})
