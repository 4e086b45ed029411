import { spawn } from 'node:child_process'
import { existsSync, globSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Instrumenter } from '@stryker-mutator/instrumenter'
import { conclude, countCaught, drawn, type Mutant } from './support/mutants.ts'

/*
 * `npm run mutate:code -- PART COUNT SEED`: changes one thing in the code of a part at a time (an operator, a condition, a block left out)
 * and counts how many of those its tests notice, without golden files. A survivor is printed. COUNT 0 takes every change.
 */
const [part = 'geometry', count = '60', seed = '1'] = process.argv.slice(2)
const LEAST_CAUGHT = 0.8

/** The code of each part and the tests that have to notice: those of the same name first, then these. */
const PARTS: Readonly<Record<string, { readonly code: readonly string[]; readonly tests: readonly string[] }>> = {
  geometry: { code: ['shared/geometry/*.ts'], tests: ['tests/shared/geometry/*.test.ts'] },
  contact: { code: ['shared/contact/*.ts'], tests: ['tests/shared/contact/*.test.ts', 'tests/published/*.test.ts'] },
  wood: { code: ['shared/wood/*.ts'], tests: ['tests/shared/wood/*.test.ts', 'tests/published/wood-*.test.ts'] },
  statistics: {
    code: ['shared/statistics/*.ts'],
    tests: ['tests/shared/statistics/*.test.ts', 'tests/published/*.test.ts'],
  },
  fit: {
    code: [
      'shared/questions/fit/{decision,next-cut,next-reading,agreement,stroke}.ts',
      'shared/bearing/entry-threshold.ts',
    ],
    tests: ['tests/shared/questions/fit/*.test.ts'],
  },
  tolerance: {
    code: ['shared/questions/tolerance/{aim,reach,worst-ends,figure-check,joint-share}.ts'],
    tests: ['tests/shared/questions/tolerance/*.test.ts'],
  },
  season: {
    code: ['shared/questions/season/{fit,advice,running-band,chances}.ts'],
    tests: ['tests/shared/questions/season/*.test.ts'],
  },
  load: {
    code: ['shared/questions/load/{limits,speeds,warning,friction,seat-load}.ts'],
    tests: ['tests/shared/questions/load/*.test.ts', 'tests/published/*.test.ts'],
  },
  search: {
    code: ['shared/questions/search/{score,judge,year,chance,drop-reason}.ts'],
    tests: ['tests/shared/questions/search/*.test.ts'],
  },
  selection: {
    code: ['shared/questions/selection/{ball-choice,ball-order}.ts'],
    tests: ['tests/shared/questions/selection/*.test.ts'],
  },
}

const ROOT = fileURLToPath(new URL('..', import.meta.url))
const { code, tests } = PARTS[part] ?? { code: [], tests: [] }
const found = (patterns: readonly string[]): readonly string[] =>
  patterns.flatMap((pattern) => globSync(pattern, { cwd: ROOT })).toSorted()

/** A logger that says nothing. */
const SILENT = new Proxy({}, { get: () => () => false }) as ConstructorParameters<typeof Instrumenter>[0]
/** Sentences of errors are for people: no law hangs on them. */
const OPTIONS = { plugins: null, excludedMutations: ['StringLiteral'], ignorers: [], noHeader: true }

async function mutantsOf(file: string): Promise<readonly Mutant[]> {
  const text = readFileSync(join(ROOT, file), 'utf8')
  const { mutants } = await new Instrumenter(SILENT).instrument([{ name: file, mutate: true, content: text }], OPTIONS)
  const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)]
  const at = ({ line, column }: { readonly line: number; readonly column: number }) =>
    (starts[line] ?? Number.NaN) + column
  return mutants
    .filter(({ status }) => status !== 'Ignored')
    .map(({ location, replacement = '' }) => {
      const [from, to] = [at(location.start), at(location.end)]
      const was = text.slice(from, to)
      // A statement may stand for an expression here, and the other way round: what does not parse is caught at once.
      return {
        file,
        line: location.start.line + 1,
        was,
        is: replacement,
        text: `${text.slice(0, from)}${replacement}${text.slice(to)}`,
      }
    })
}

const folder = mkdtempSync(join(tmpdir(), 'mutants-'))
const VITEST = join(ROOT, 'node_modules/vitest/vitest.mjs')
const CONFIG = 'tests/mutant.config.ts'

/** Whether these tests fail with a mutant, or never end. A run that loads no test proves nothing, and is an error. */
async function notices(files: readonly string[], mutant: Mutant | undefined, patience: number): Promise<boolean> {
  if (files.length === 0) return false
  const [changed, report] = [join(folder, 'mutant.json'), join(folder, 'report.json')]
  writeFileSync(changed, JSON.stringify(mutant ?? { file: '', text: '' }))
  rmSync(report, { force: true })
  const run = spawn(process.execPath, [VITEST, 'run', '--config', CONFIG, ...files], {
    cwd: ROOT,
    env: { ...process.env, MUTANT: changed, MUTANT_REPORT: report },
    stdio: 'ignore',
    detached: true,
  })
  let isEndless = false
  const timer = setTimeout(() => {
    isEndless = true
    if (run.pid !== undefined) process.kill(-run.pid, 'SIGKILL')
  }, patience)
  await new Promise((resolve) => run.once('close', resolve))
  clearTimeout(timer)
  if (isEndless) return true
  const { success, numTotalTests, testResults } = JSON.parse(readFileSync(report, 'utf8')) as {
    readonly success: boolean
    readonly numTotalTests: number
    readonly testResults: readonly unknown[]
  }
  if (success && (numTotalTests === 0 || testResults.length < files.length))
    throw new Error(`${testResults.length} of ${files.length} files were loaded, with ${numTotalTests} tests`)
  return !success
}

/** What a file imports of ours, as paths from the root. */
const importsOf = (file: string): readonly string[] =>
  [
    ...readFileSync(join(ROOT, file), 'utf8').matchAll(/from '(?:#((?:shared|tests|src)\/[^']+)|(\.{1,2}\/[^']+))'/g),
  ].map(([, whole, beside]) => whole ?? join(dirname(file), beside ?? ''))

/** All that a file imports, with what that imports, and so on. */
function reachOf(file: string): ReadonlySet<string> {
  const reached = new Set([file])
  for (const one of reached) if (one.endsWith('.ts')) for (const next of importsOf(one)) reached.add(next)
  return reached
}

const others = found(tests)
const reach = new Map(others.map((file) => [file, reachOf(file)]))
const started = Date.now()
if (others.length === 0) throw new Error(`there is no part "${part}": ${Object.keys(PARTS).join(', ')}`)
if (await notices(others, undefined, 3_600_000)) throw new Error('the tests fail before anything is changed')
const patience = 60_000 + 5 * (Date.now() - started)

const all = (await Promise.all(found(code).map(mutantsOf))).flat()
const chosen = drawn(all, Number(count), Number(seed))
const caught = await countCaught(chosen, async (mutant) => {
  const own = [mutant.file.replace('shared/', 'tests/shared/').replace(/\.ts$/, '.test.ts')].filter((file) =>
    existsSync(join(ROOT, file)),
  )
  const rest = others.filter((file) => !own.includes(file) && reach.get(file)?.has(mutant.file))
  return (await notices(own, mutant, patience)) || (await notices(rest, mutant, patience))
})
rmSync(folder, { recursive: true, force: true })
conclude(part, caught, chosen.length, all.length, LEAST_CAUGHT)
