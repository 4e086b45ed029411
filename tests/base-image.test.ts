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

test('the labels of the image follow from the project and its base', () => {
  const text = readFileSync('Dockerfile', 'utf8')
  const labels = Object.fromEntries(
    Array.from(text.matchAll(/org\.opencontainers\.image\.([\w.]+)="([^"]*)"/g), ([, name, value]) => [name, value]),
  )
  const { name, description, version, license } = JSON.parse(readFileSync('package.json', 'utf8'))
  expect(labels).toEqual({
    title: name,
    description,
    version,
    licenses: license,
    'base.name': `docker.io/library/${/^FROM (node:[^@]+)@/m.exec(text)?.[1]}`,
    'base.digest': /@(sha256:\w+)/.exec(text)?.[1],
  })
})
