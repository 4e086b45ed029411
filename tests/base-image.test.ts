import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const PINNED = /^node:(?<version>\d+\.\d+\.\d+)-slim@sha256:[\da-f]{64}$/

test('the image is built on one base, pinned by digest, with the Node.js that the tests run on', () => {
  const lines = readFileSync('Dockerfile', 'utf8').split('\n')
  const bases = lines.flatMap((line) => /^FROM\s+(\S+)/.exec(line)?.[1] ?? [])
  expect(bases).toHaveLength(2)
  expect(new Set(bases).size).toBe(1)
  const [base = ''] = bases
  expect(base).toMatch(PINNED)
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8'))
  expect(PINNED.exec(base)?.groups?.['version']).toBe(dependencies.node)
})
