import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { runInNewContext } from 'node:vm'
import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { BROWSER_ENTRIES, browserScript } from '#src/http/browser-script.ts'
import { emptyFolder } from '#tests/support/empty-folder.ts'

/** The script of modules that are written here; `main.ts` is the first. */
async function scriptOf(modules: Readonly<Record<string, string>>): Promise<string> {
  const root = emptyFolder()
  for (const [path, code] of Object.entries(modules)) {
    mkdirSync(dirname(join(root, path)), { recursive: true })
    writeFileSync(join(root, path), code)
  }
  return browserScript({ root, entry: 'main.ts' })
}

test('modules are one script without types, which runs by itself', async () => {
  const log: unknown[] = []
  const script = await scriptOf({
    'package.json': '{"type":"module","imports":{"#shared/*":"./shared/*"}}',
    'main.ts': "import { size, type Unused } from '#shared/size.ts'\nlog.push(size(1) satisfies number)",
    'shared/size.ts': 'export type Unused = string\nexport function size(of: number): number { return of + 1 }',
  })
  runInNewContext(script, { log })
  expect(log).toEqual([2])
})

test('a text that would end the script in which it stands does not', async () => {
  const log: unknown[] = []
  const script = await scriptOf({ 'main.ts': "log.push('</script>', '<!--')" })
  expect(script).not.toMatch(/<\/script|<!--/i)
  runInNewContext(script, { log })
  expect(log).toEqual(['</script>', '<!--'])
})

test('a module that cannot be found is said', async () => {
  await expect(scriptOf({ 'main.ts': "import { a } from './other.ts'\nlog(a)" })).rejects.toThrow('other.ts')
})

test.each(BROWSER_ENTRIES)('%s compiles, and has nothing left to load', async (entry) => {
  const script = await browserScript({ root: process.cwd(), entry })
  expect(script).not.toMatch(/^\s*(import|export)\b|\bimport\(/m)
  expect(() => new Function(script)).not.toThrow()
})

test('until the first drawing the page needs at most 60 kB of script, compressed', async () => {
  const script = await browserScript({ root: process.cwd(), entry: 'src/kiosk/main.tsx' })
  expect(gzipSync(script, { level: 9 }).length).toBeLessThanOrEqual(60_000)
})
