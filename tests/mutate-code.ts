import { globSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Instrumenter } from '@stryker-mutator/instrumenter'
import type { TestSpecification } from 'vitest/node'
import { type MutantTests, mutantTests, ROOT } from './support/mutant-tests.ts'
import { type Counted, conclude, countCaught, drawn, type Mutant } from './support/mutants.ts'

/*
 * `npm run mutate:code -- PART COUNT SEED`: changes one thing in the code of a part at a time (an operator, a condition, a block left out)
 * and counts how many of those its tests notice, without golden files. A survivor is printed. COUNT 0 takes every change, PART `all` every
 * part in turn. A first run finds out which test reaches which block; after that a change is asked of the tests alone that reach it, the
 * fastest first, and one that no test reaches has survived.
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
    code: ['shared/questions/season/{advice,running-band,chances}.ts', 'shared/movement/fit.ts'],
    tests: ['tests/shared/movement/*.test.ts', 'tests/shared/questions/season/*.test.ts'],
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

const found = (patterns: readonly string[]): readonly string[] =>
  patterns.flatMap((pattern) => globSync(pattern, { cwd: ROOT })).toSorted()

/** A logger that says nothing. */
const SILENT = new Proxy({}, { get: () => () => false }) as ConstructorParameters<typeof Instrumenter>[0]
const EXPRESSIONS = [
  ...['ArithmeticOperator', 'ArrayDeclaration', 'AssignmentOperator', 'BooleanLiteral', 'ConditionalExpression'],
  ...['EqualityOperator', 'LogicalOperator', 'MethodExpression', 'ObjectLiteral', 'OptionalChaining', 'Regex'],
  ...['UnaryOperator', 'UpdateOperator'],
]

interface Change extends Mutant {
  readonly id: string
  readonly from: number
  readonly to: number
}

/** The changes of files by all mutators but these, and each file's text with counters. Sentences of errors are for people: no law hangs on them. */
async function changesOf(files: readonly string[], without: readonly string[]) {
  const texts = new Map(files.map((file) => [file, readFileSync(join(ROOT, file), 'utf8')]))
  const { mutants, files: counting } = await new Instrumenter(SILENT).instrument(
    [...texts].map(([name, content]) => ({ name, mutate: true, content })),
    { plugins: null, excludedMutations: ['StringLiteral', ...without], ignorers: [], noHeader: false },
  )
  const changes = mutants.flatMap(({ id, fileName: file, location, replacement = '', status }): Change[] => {
    if (status === 'Ignored') return []
    const text = texts.get(file) ?? ''
    const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)]
    const at = (place: typeof location.start) => (starts[place.line] ?? Number.NaN) + place.column
    const [from, to, line] = [at(location.start), at(location.end), location.start.line + 1]
    // A statement may stand for an expression here, and the other way round: what does not parse is caught at once.
    const changed = `${text.slice(0, from)}${replacement}${text.slice(to)}`
    return [{ id, file, line, was: text.slice(from, to), is: replacement, from, to, text: changed }]
  })
  return { changes, counting: new Map(counting.map(({ name, content }) => [name, content])) }
}

/** A block of the code, or a file as a whole, and what reaches it: tests by their ids, or files of tests with all that is in them. */
interface Block {
  readonly file: string
  readonly from: number
  readonly to: number
  readonly reachedBy: ReadonlySet<string>
}

/** Runs all tests once, with counters in the blocks of these files. */
async function blocksOf(files: readonly string[], tests: MutantTests): Promise<readonly Block[]> {
  const { changes, counting } = await changesOf(files, EXPRESSIONS)
  const texts = new Map(
    [...counting].map(([file, text]) => {
      const counts = '(globalThis.__stryker__.mutantCoverage ??= { static: {}, perTest: {} })'
      return [file, `${text}\n;${counts}.static['${file}'] = 1\n`]
    }),
  )
  process.env['COVERED_MUTANTS'] = tests.folder
  const failures = await tests.run(texts, tests.specifications)
  delete process.env['COVERED_MUTANTS']
  if (failures.length > 0) throw new Error(`the tests fail before anything is changed: ${failures.join('; ')}`)
  const reached = new Map<string, Set<string>>()
  for (const name of readdirSync(tests.folder).filter((one) => one.endsWith('.json')))
    for (const [by, ids] of JSON.parse(readFileSync(join(tests.folder, name), 'utf8')) as [string, string[]][])
      for (const id of ids) reached.set(id, (reached.get(id) ?? new Set()).add(by))
  return [...changes, ...files.map((file) => ({ id: file, file, from: 0, to: Number.POSITIVE_INFINITY }))].map(
    ({ id, file, from, to }) => ({ file, from, to, reachedBy: reached.get(id) ?? new Set() }),
  )
}

/** Of a file of tests those that reach a block, and the time that they take [ms]. */
function reaching({ testModule, project, moduleId }: TestSpecification, { reachedBy }: Block) {
  if (testModule === undefined) return []
  const all = [...testModule.children.allTests()]
  const some = reachedBy.has(testModule.id) ? all : all.filter(({ id }) => reachedBy.has(id))
  if (some.length === 0) return []
  const time = some.reduce((sum, test) => sum + (test.diagnostic()?.duration ?? 0), 0)
  return [{ time, specification: project.createSpecification(moduleId, { testIds: some.map(({ id }) => id) }) }]
}

async function countOf(name: string): Promise<Counted> {
  const { code, tests: patterns } = PARTS[name] ?? { code: [], tests: [] }
  if (code.length === 0) throw new Error(`there is no part "${name}": ${Object.keys(PARTS).join(', ')}`)
  const files = found(code)
  const tests = await mutantTests(patterns)
  const blocks = await blocksOf(files, tests)
  const timed = new Map(
    blocks.map((block) => [
      block,
      tests.specifications.flatMap((one) => reaching(one, block)).toSorted((a, b) => a.time - b.time),
    ]),
  )
  const { changes } = await changesOf(files, [])
  const chosen = drawn(changes, Number(count), Number(seed))
  const caught = await countCaught(chosen, async ({ file, from, to, text }) => {
    const round = blocks.filter((block) => block.file === file && block.from <= from && to <= block.to)
    const innermost = round.toSorted((a, b) => a.to - a.from - (b.to - b.from))[0]
    const asked = (innermost && timed.get(innermost)) ?? []
    if (asked.length === 0) return false
    const patience = 30_000 + 10 * asked.reduce((sum, { time }) => sum + time, 0)
    const specifications = asked.map(({ specification }) => specification)
    return (await tests.run(new Map([[file, text]]), specifications, patience)).length > 0
  })
  await tests.close()
  return { what: name, caught, tried: chosen.length, inAll: changes.length }
}

const counted: Counted[] = []
for (const name of part === 'all' ? Object.keys(PARTS) : [part]) counted.push(await countOf(name))
conclude(counted, LEAST_CAUGHT)
