import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ENGINE } from '#src/engine.ts'
import { sourceHash } from '#src/source-hash.ts'
import { ask } from './support/ask.ts'
import { projectCopy } from './support/project-copy.ts'
import { sharedApp } from './support/started-app.ts'
import { listening, start } from './support/started-process.ts'

const BEARING = 'units=mm&balls.count=12&balls.diameter=16&bore=12'
const DRAWING = `/v1/drawings/assembly.svg?${BEARING}`

/** The address of a server from a file, in whatever folder. */
async function serving(file: string): Promise<string> {
  const started = await start({}, ['node', file])
  await listening(started)
  return `http://127.0.0.1:${started.port}`
}

describe('a drawing that was corrected', () => {
  test('is sent anew to whoever has the old one, and is not immutable under the name of the old build', async () => {
    const mended = projectCopy({
      file: 'src/words/drawing.ts',
      from: "section: 'half section'",
      to: "section: 'section, half'",
    })
    const [old, now] = [await sharedApp(), await serving(join(mended, 'src/server.ts'))]
    const first = await ask(old + DRAWING)
    const [tag, engine] = [String(first.headers['etag']), String(first.headers['x-engine'])]
    expect((await ask(old + DRAWING, { headers: { 'if-none-match': tag } })).status).toBe(304)

    const second = await ask(now + DRAWING, { headers: { 'if-none-match': tag } })
    expect(second.status).toBe(200)
    expect(second.text).not.toBe(first.text)

    const named = {
      old: await ask(`${old}${DRAWING}&engine=${engine}`),
      now: await ask(`${now}${DRAWING}&engine=${engine}`),
    }
    expect(named.old.headers['cache-control']).toMatch(/immutable/)
    expect(named.now.headers['cache-control']).toBe('public, no-cache')
  })
})

describe('the name of a build', () => {
  test('is the same wherever the same files are', () => {
    expect(ENGINE).toMatch(/^[0-9a-f]{12}$/)
    expect(sourceHash('.')).toBe(ENGINE)
    expect(sourceHash(projectCopy())).toBe(ENGINE)
    expect(sourceHash(`${projectCopy()}/`)).toBe(ENGINE)
  })

  test.each([
    ['src/job-sheet/style.ts', 'body'],
    ['src/kiosk/page.html', 'Racewright'],
    ['shared/bearing/defaults.ts', 'export'],
    ['package-lock.json', '"version"'],
  ])('is another when %s differs', (file, from) => {
    expect(sourceHash(projectCopy({ file, from, to: `${from} ` }))).not.toBe(ENGINE)
  })
})
