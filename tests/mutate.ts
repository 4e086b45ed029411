import { globSync, readFileSync } from 'node:fs'
import type { TestSpecification } from 'vitest/node'
import { mutantTests, ROOT } from './support/mutant-tests.ts'
import { conclude, countCaught, drawn, type Mutant } from './support/mutants.ts'

/*
 * `npm run mutate`, or `npm run mutate -- CELLS SEED`: changes one figure of the tables in shared/data at a time by one
 * unit of its last printed digit, and counts how many of those the tests of tests/published notice, without golden files.
 * A survivor is printed. CELLS 0 takes every figure.
 */
const [cells = '200', seed = '1'] = process.argv.slice(2)
const LEAST_CAUGHT = 0.95

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

const tests = await mutantTests(['tests/published/*.test.ts'])
const failures = await tests.run(new Map(), tests.specifications)
if (failures.length > 0) throw new Error(`the tests fail before anything is changed: ${failures.join('; ')}`)
const isQuick = ({ moduleId }: TestSpecification) => /\/(tables|wood-handbook-emc)\.test\.ts$/.test(moduleId)
const quickFirst = tests.specifications.toSorted((a, b) => Number(isQuick(b)) - Number(isQuick(a)))

const figures = TABLES.flatMap(mutantsOf)
const chosen = drawn(figures, Number(cells), Number(seed))
const caught = await countCaught(
  chosen,
  async ({ file, text }) => (await tests.run(new Map([[file, text]]), quickFirst)).length > 0,
)
await tests.close()
conclude([{ what: 'figures', caught, tried: chosen.length, inAll: figures.length }], LEAST_CAUGHT)
