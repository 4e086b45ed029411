import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { VERSION } from '#src/version.ts'

test('the engine says the version of the package, which is the newest that the changelog names', () => {
  expect(VERSION).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version)
  expect(VERSION).toBe(/^## (\d\S*)$/m.exec(readFileSync('CHANGELOG.md', 'utf8'))?.[1])
})
