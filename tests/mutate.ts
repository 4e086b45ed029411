import { globSync, readFileSync } from 'node:fs'
import { createVitest, type TestSpecification, type Vitest } from 'vitest/node'
import { conclude, countCaught, drawn, type Mutant } from './support/mutants.ts'

/*
 * `npm run mutate`, or `npm run mutate -- CELLS SEED`: changes one figure of the tables in shared/data at a time by one
 * unit of its last printed digit, and counts how many of those the tests of tests/published notice, without golden files.
 * A survivor is printed. CELLS 0 takes every figure.
 */
const [cells = '200', seed = '1'] = process.argv.slice(2)
const LEAST_CAUGHT = 0.95

const ROOT = new URL('..', import.meta.url).pathname
/** Its coefficients are a table too. */
const EQUATION = 'shared/wood/equilibrium-moisture.ts'
const TABLES = [...globSync('shared/data/*.ts', { cwd: ROOT }).sort(), EQUATION]
/** Figures of a table stand behind a colon, in brackets, or as a constant. Ids, titles, comments and code do not. */
const CODE = /^\s*(\/?\*|\/\/|import|return|throw|if|title:|usedFor:|name:|'|"|export function|function)/
const ROW = /^\s*'[\w-]+': \{ [a-z]/
const FIGURE = /(?<=(?:[:=[,(] ?|, |-))\d[\d_]*(?:\.\d+)?(?=[ ,}\]/)]|$)/g

const nudged = (figure: string, up: boolean): string => {
  const digits = figure.split('.')[1]?.length ?? 0
  return (Number(figure.replaceAll('_', '')) + (up ? 1 : -1) * 10 ** -digits).toFixed(digits)
}

function mutantsOf(file: string): readonly Mutant[] {
  const text = readFileSync(`${ROOT}${file}`, 'utf8')
  const lines = text.split('\n')
  return lines.flatMap((line, i) => {
    const isFigures = file === EQUATION ? /^const \w+ = \[/.test(line) : ROW.test(line) || !CODE.test(line)
    if (!isFigures) return []
    return [...line.matchAll(FIGURE)].map((match, nth) => {
      const [was] = match
      const is = nudged(was, (i + nth) % 2 === 0)
      const changed = `${line.slice(0, match.index)}${is}${line.slice(match.index + was.length)}`
      return { file, line: i + 1, was, is, text: lines.with(i, changed).join('\n') }
    })
  })
}

let mutant: Mutant | undefined

const vitest = await createVitest(
  'test',
  {
    config: `${ROOT}tests/vitest.config.ts`,
    root: ROOT,
    include: ['tests/published/*.test.ts'],
    globalSetup: [],
    reporters: [{}],
    watch: false,
    fsModuleCache: false,
    maxWorkers: 1,
    bail: 1,
  },
  {
    plugins: [
      {
        name: 'mutant',
        enforce: 'pre',
        transform: (_code, id) => (mutant !== undefined && id === `${ROOT}${mutant.file}` ? mutant.text : undefined),
      },
    ],
  },
)

/** How many files of tests fail. A run that loads no test proves nothing: it ends the whole, and is never a survivor. */
const failures = async (runner: Vitest, specifications: readonly TestSpecification[]): Promise<number> => {
  const { testModules, unhandledErrors } = await runner.runTestSpecifications([...specifications])
  const failed = unhandledErrors.length + testModules.filter((module) => !module.ok()).length
  const tests = testModules.reduce((sum, { children }) => sum + [...children.allTests()].length, 0)
  if (failed === 0 && (testModules.length < specifications.length || tests === 0))
    throw new Error(`${testModules.length} of ${specifications.length} files were loaded, with ${tests} tests`)
  return failed
}

const all = await vitest.globTestSpecifications()
if (all.length === 0) throw new Error('no published test was found')
const first = all.filter(({ moduleId }) => /\/(tables|wood-handbook-emc)\.test\.ts$/.test(moduleId))
const others = all.filter((specification) => !first.includes(specification))
if ((await failures(vitest, all)) > 0) throw new Error('the published tests fail before anything is changed')

const figures = TABLES.flatMap(mutantsOf)
const chosen = drawn(figures, Number(cells), Number(seed))
const caught = await countCaught(chosen, async (one) => {
  mutant = one
  vitest.invalidateFile(`${ROOT}${one.file}`)
  const isNoticed = (await failures(vitest, first)) > 0 || (await failures(vitest, others)) > 0
  mutant = undefined
  vitest.invalidateFile(`${ROOT}${one.file}`)
  return isNoticed
})
await vitest.close()
conclude('figures', caught, chosen.length, figures.length, LEAST_CAUGHT)
