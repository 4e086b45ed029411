import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { BaseSequencer, createVitest, type TestSpecification } from 'vitest/node'

/** The root of the project, with a stroke at its end. */
export const ROOT = new URL('../..', import.meta.url).pathname

/** Texts in place of files, by their paths from the root. */
type Texts = ReadonlyMap<string, string>

/** Tests that are run again and again, each time with other texts in place of some files. */
export interface MutantTests {
  readonly specifications: readonly TestSpecification[]
  /** A folder for what the tests write down while COVERED_MUTANTS names it. */
  readonly folder: string
  /**
   * Runs tests in this order with these texts, and ends at the first that fails. Tests that do not end within the patience [ms] have failed.
   *
   * @returns what failed, in words: empty where all passed
   * @throws Error where a file of tests was not loaded: a run that loads no test proves nothing
   */
  run(texts: Texts, specifications: readonly TestSpecification[], patience?: number): Promise<readonly string[]>
  close(): Promise<void>
}

/** Keeps files of tests in the order in which they are asked for. */
class AsAsked extends BaseSequencer {
  override sort = async (files: TestSpecification[]) => files
}

/** Opens the tests of these patterns. Modules stay transformed from run to run, but for those whose text changes. */
export async function mutantTests(include: readonly string[]): Promise<MutantTests> {
  let current: Texts = new Map()
  const folder = mkdtempSync(join(tmpdir(), 'mutants-'))
  const processId = join(folder, 'process-id')
  process.env['MUTANT_PROCESS'] = processId
  const vitest = await createVitest(
    'test',
    {
      // not that of the project: its files of tests share processes, and a change must reach each
      config: false,
      root: ROOT,
      expect: { requireAssertions: true },
      testTimeout: 600_000,
      include: [...include],
      globalSetup: [],
      setupFiles: ['tests/support/matchers.ts', 'tests/support/fixed-seed.ts', 'tests/support/covered-mutants.ts'],
      sequence: { sequencer: AsAsked },
      reporters: [{}],
      watch: false,
      // a module kept from the run before would be one without the change
      fsModuleCache: false,
      maxWorkers: 1,
      bail: 1,
    },
    {
      plugins: [
        {
          name: 'mutant',
          enforce: 'pre',
          transform: (_code, id) => (id.startsWith(ROOT) ? current.get(id.slice(ROOT.length)) : undefined),
        },
      ],
    },
  )

  async function run(texts: Texts, specifications: readonly TestSpecification[], patience = 3_600_000) {
    const invalidate = () => {
      for (const file of texts.keys()) vitest.invalidateFile(`${ROOT}${file}`)
    }
    current = texts
    invalidate()
    rmSync(processId, { force: true })
    const end = setTimeout(() => {
      if (existsSync(processId)) process.kill(Number(readFileSync(processId, 'utf8')), 'SIGKILL')
    }, patience)
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications([...specifications])
    clearTimeout(end)
    current = new Map()
    invalidate()
    const asked = new Set(specifications.map(({ moduleId }) => moduleId))
    const modules = testModules.filter(({ moduleId }) => asked.has(moduleId))
    const tests = modules.flatMap(({ children }) => [...children.allTests()])
    const failures = [
      ...unhandledErrors.map(String),
      ...modules.flatMap((module) => module.errors().map(({ message }) => `${module.moduleId}: ${message}`)),
      ...tests.filter((test) => test.result().state === 'failed').map((test) => test.fullName),
    ]
    if (failures.length === 0 && (modules.length < asked.size || !tests.some((test) => test.ok())))
      throw new Error(`${modules.length} of ${asked.size} files were loaded, with ${tests.length} tests`)
    return failures
  }

  async function close() {
    rmSync(folder, { recursive: true, force: true })
    await vitest.close()
  }
  return { specifications: await vitest.globTestSpecifications(), folder, run, close }
}
