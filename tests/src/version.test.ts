import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { VERSION } from '#src/version.ts'

test('the engine says the version of the package', () => {
  expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version)
})
