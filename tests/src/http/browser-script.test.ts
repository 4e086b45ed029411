import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { expect, test } from 'vitest'
import { browserScript } from '#src/http/browser-script.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'

/** The script of modules that are written here; `main.ts` is the first. */
function scriptOf(modules: Readonly<Record<string, string>>): string {
  const root = emptyFolder()
  for (const [path, code] of Object.entries(modules)) {
    mkdirSync(dirname(join(root, path)), { recursive: true })
    writeFileSync(join(root, path), code)
  }
  return browserScript({ root, entry: 'main.ts' })
}

test('modules run once each, what they import before them, with names of their own', () => {
  const log: unknown[] = []
  const script = scriptOf({
    'main.ts': [
      "import { size } from '#shared/size.ts'",
      "import * as words from './words.ts'",
      "import { size as other, type Unused } from './size.ts'",
      'import {',
      '  join,',
      "} from '#src/join.ts'",
      "log.push(join(size(1), other, words.NAME, words.makeName('x')))",
    ].join('\n'),
    'shared/size.ts':
      "import type { Unused } from '#nowhere'\nexport function size(of: number): number { return of + 1 }",
    'words.ts': [
      "import { size } from '#shared/size.ts'",
      "export const NAME = 'n' + size(2)",
      'export class A {}',
      "export const makeName = (of: string) => of + '!'",
      "log.push('words')",
    ].join('\n'),
    'size.ts': 'export const size: number = 7\nexport type Unused = string',
    'src/join.ts': "export async function later() {}\nexport const join = (...of: unknown[]): string => of.join(' ')",
  })
  runInNewContext(script, { log })
  expect(log).toEqual(['words', '2 7 n3 x!'])
})

test.each([
  ["import fastify from 'fastify'", /import fastify/],
  ["import { a } from 'fastify'", /imports fastify/],
  ["import './other.ts'", /import/],
  ["const a = await import('./other.ts')", /import\(/],
  ['const at = import.meta.url', /import\./],
  ['export default 3', /export default/],
  ["export * from './other.ts'", /export \*/],
  ['export { a }', /export \{/],
  ['export let count = 0', /export let/],
  ["const text = '</script>'", /script>/],
])('a form that is not read is refused, not passed on: %s', (code, complaint) => {
  expect(() => scriptOf({ 'main.ts': code, 'other.ts': 'export const a = 1' })).toThrow(complaint)
})

test('the script of the page compiles, and has nothing left to load', () => {
  const script = browserScript({ root: '.', entry: 'src/kiosk/main.ts' })
  expect(script).not.toMatch(/^\s*(import|export)\b/m)
  expect(() => new Function(script)).not.toThrow()
})
