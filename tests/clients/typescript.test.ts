import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { run } from '#tests/support/run.ts'
import { startedApp } from '#tests/support/started-app.ts'

/** A caller's program. The compiler has to find the three mistakes that it says are in it, and no others. */
const CALLER = `
import { ApiError, configure, design, designByQuery, fitCorrection, sizeTable, type DesignRequest } from './client.ts'

configure({ serverUrl: process.env['ADDRESS'] ?? '' })

const clock: DesignRequest = {
  units: 'mm',
  balls: { count: 14, diameter: 14, material: 'glass', standardDeviation: 0.1 },
  bore: 10,
  ballGap: 0.7,
}
const made = await design({ body: clock })
const again = await designByQuery({
  query: { units: 'in', 'balls.count': 10, 'balls.diameter': '5/8', bore: '1/2' },
})
const fit = await fitCorrection({
  body: {
    design: made.input,
    ring: 'outer',
    readings: [{ kind: 'last-ball-opening', value: 10.5, graduation: 0.5 }],
  },
})
const table = await sizeTable({ body: { units: 'mm', diameters: [14, 16], counts: [12] } })

// @ts-expect-error: a name that is none
const misspelt = design({ body: { ...clock, boer: 10 } }).catch((error: unknown) => error)
// @ts-expect-error: a material that is none
const soft: DesignRequest = { ...clock, balls: { count: 14, diameter: 14, material: 'cheese' } }

const refusal = await misspelt
const problem = refusal instanceof ApiError ? refusal.body : refusal
// @ts-expect-error: a size that not every arrangement has
const unsure = made.outerRing
if (made.arrangement !== 'radial') throw new Error('must be radial')
const depth: number = made.outerRing.grooveDepth
console.log(JSON.stringify({ unsure, depth, gap: made.ballGap, units: again.units, state: fit.state, table, problem, soft }))
`

test('the client that is generated from the document has its types, and asks as they say', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'racewright-client-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  const client = join(folder, 'client.ts')
  expect(await run('npm', ['run', '-s', 'client', '--', '--output', client])).toMatchObject({ code: 0 })
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  writeFileSync(join(folder, 'caller.ts'), CALLER)

  const strictly = ['--strict', '--noEmit', '--module', 'nodenext', '--target', 'es2025', '--lib', 'es2025,dom']
  const types = ['--typeRoots', join(process.cwd(), 'node_modules/@types'), '--types', 'node']
  const own = ['--allowImportingTsExtensions', '--ignoreConfig', 'caller.ts']
  expect(await run('tsc', [...strictly, ...types, ...own], { cwd: folder })).toEqual({ code: 0, out: '', err: '' })

  process.env['ADDRESS'] = await startedApp()
  const ran = await run('node', ['caller.ts'], { cwd: folder })
  expect(ran).toMatchObject({ code: 0, err: '' })
  expect(JSON.parse(ran?.out ?? '')).toMatchObject({
    gap: 0.7,
    units: 'in',
    state: 'more-to-remove',
    table: { rows: [{ diameter: 14 }, { diameter: 16 }] },
    problem: { status: 400, errors: [{ path: '/boer', message: expect.stringContaining('did you mean "bore"') }] },
  })
}, 60_000)
