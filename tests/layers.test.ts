import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'

type Source = { readonly file: string; readonly text: string; readonly imports: readonly string[] }

/** `import … from 'x'` (its last line, where it has several), `export … from 'x'`, `import 'x'` and `import('x')`. */
const IMPORT = /^(?:import|export|\})[^'\n]*\bfrom '([^']+)'|^import '([^']+)'|\bimport\('([^']+)'\)/gm

/** Packages, and programs of callers, which import what is generated. */
const OTHERS = /(^|\/)(node_modules|clients\/callers)\//

const sourcesOf = (folder: string): readonly Source[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !OTHERS.test(name))
    .map((name) => {
      const file = join(folder, name)
      const text = readFileSync(file, 'utf8')
      return { file, text, imports: Array.from(text.matchAll(IMPORT), ([, ...found]) => found.find(Boolean) ?? '') }
    })

const SHARED = sourcesOf('shared')
const SRC = sourcesOf('src')
const ALL = [...SHARED, ...SRC, ...sourcesOf('tests')]

/** The imports of the files of a folder that are not among those it may have, as `file → import`. */
const strays = (sources: readonly Source[], isAllowed: (from: string) => boolean): readonly string[] =>
  sources.flatMap(({ file, imports }) => imports.filter((from) => !isAllowed(from)).map((from) => `${file} → ${from}`))

const within = (folder: string) => SRC.filter(({ file }) => file.startsWith(join('src', folder)))
const ofOurs = (...folders: readonly string[]) => {
  const prefixes = folders.map((folder) => `#${folder}/`)
  return (from: string) => !from.startsWith('#') || prefixes.some((prefix) => from.startsWith(prefix))
}

test('there is something to look at', () => {
  expect(SHARED.length).toBeGreaterThan(10)
  expect(within('api').length).toBeGreaterThan(2)
  expect(SRC.flatMap(({ imports }) => imports).length).toBeGreaterThan(50)
})

describe('every import', () => {
  test('is ./name.ts in the folder (beside tests/support, ./support/name.ts), #shared, #src or #tests across folders, a built-in or a package', () => {
    const isOfOneForm = (from: string) =>
      /^\.\/(support\/)?[\w-]+\.tsx?$/.test(from) || /^#.*\.(tsx?|json)$/.test(from) || /^[@a-z]/.test(from)
    expect(strays(ALL, isOfOneForm)).toEqual([])
  })

  test('names a built-in of Node with node:', () => {
    expect(strays(ALL, (from) => !/^(fs|path|http|net|crypto|os|util|events|stream|url)(\/|$)/.test(from))).toEqual([])
  })

  test('of #tests stands in tests', () => {
    expect(strays([...SHARED, ...SRC], (from) => !from.startsWith('#tests/'))).toEqual([])
  })
})

describe('shared/', () => {
  test('imports only shared/: no package, nothing of Node', () => {
    expect(strays(SHARED, (from) => from.startsWith('./') || from.startsWith('#shared/'))).toEqual([])
  })

  test.each([
    ['bearing', ['making', 'movement', 'questions']],
    ['making', ['movement', 'questions']],
    ['movement', ['questions']],
  ])('%s/ knows nothing above it', (folder, above) => {
    const own = SHARED.filter(({ file }) => file.startsWith(join('shared', folder)))
    expect(own.length).toBeGreaterThan(0)
    expect(strays(own, (from) => !above.some((name) => from.startsWith(`#shared/${name}/`)))).toEqual([])
  })

  test('a question knows another by its answer, its input and its fields, and not by its parts', () => {
    const DOORS =
      /^#shared\/questions\/(fit\/fit-correction|load\/load-check|search\/design-search|season\/seasonal-fit|selection\/ball-selection|size-table\/size-table|tolerance\/tolerance-check|[a-z-]+\/(input|fields))\.ts$/
    const questions = new Set(SHARED.flatMap(({ file }) => /^shared\/questions\/([\w-]+)\//.exec(file)?.[1] ?? []))
    expect(questions.size).toBeGreaterThan(5)
    for (const question of questions) {
      const own = SHARED.filter(({ file }) => file.startsWith(join('shared', 'questions', question)))
      const isInside = (from: string) => from.startsWith('#shared/questions/') && !DOORS.test(from)
      const isAllowed = (from: string) => from.startsWith(`#shared/questions/${question}/`) || !isInside(from)
      expect(strays(own, isAllowed)).toEqual([])
    }
  })

  test('has no clock, no chance of its own and no surroundings', () => {
    const reaching = /\bMath\.random\b|\bDate\b|\bprocess\.|\bconsole\.|\bperformance\b|\bglobalThis\b|\bBuffer\b/
    const code = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    expect(SHARED.filter(({ text }) => reaching.test(code(text))).map(({ file }) => file)).toEqual([])
  })
})

describe('src/: imports point one way', () => {
  test.each([
    ['words', ['shared', 'src/words']],
    ['http', ['shared/canonical.ts', 'shared/lazy.ts', 'shared/result.ts', 'src/http', 'src/engine.ts']],
    ['drawings', ['shared', 'src/drawings', 'src/words', 'src/version.ts']],
    ['workers', ['shared', 'src/workers', 'src/http', 'src/drawings']],
    ['job-sheet', ['shared', 'src/job-sheet', 'src/api', 'src/words', 'src/http', 'src/drawings', 'src/version.ts']],
  ])('%s/ knows nothing above it', (folder, allowed) => {
    const isAllowed = (from: string) => ofOurs(...allowed)(from) || allowed.some((file) => from === `#${file}`)
    expect(strays(within(folder), isAllowed)).toEqual([])
  })

  test('a route imports no plugin and no app', () => {
    const allowed = ['shared', 'src/api', 'src/words', 'src/http', 'src/drawings', 'src/job-sheet', 'src/workers']
    expect(strays(within('api'), ofOurs(...allowed))).toEqual([])
  })

  test('a writer knows the model of a drawing and no bearing', () => {
    const isAllowed = (from: string) =>
      from === '#src/drawings/model.ts' || ofOurs('shared/units', 'shared/numbers')(from)
    expect(strays(within('drawings/writers'), isAllowed)).toEqual([])
  })

  test('a route reads, asks, answers: under 60 lines', () => {
    const routes = within('api').filter(({ file }) => file.endsWith('/route.ts'))
    const long = routes.filter(({ text }) => text.split('\n').length > 60)
    expect(long.map(({ file }) => file)).toEqual([])
  })

  test('problem.ts alone writes application/problem+json', () => {
    const writers = SRC.filter(({ text }) => text.includes('application/problem+json')).map(({ file }) => file)
    expect(writers).toEqual([join('src', 'http', 'problem.ts')])
  })

  test('answer-headers.ts alone sets how an answer is kept and shown', () => {
    const setters = SRC.filter(({ text }) => /'(vary|etag|cache-control|content-security-policy)'/.test(text))
    expect(setters.map(({ file }) => file)).toEqual([join('src', 'http', 'answer-headers.ts')])
  })
})

test('no file imports itself, by whatever way round', () => {
  const graph = new Map(ALL.map(({ file, imports }) => [file, imports.map((from) => pathOf(file, from))]))
  const loops: string[] = []
  const done = new Set<string>()
  const visit = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) loops.push([...way.slice(way.indexOf(file)), file].join(' → '))
    if (way.includes(file) || done.has(file)) return
    for (const next of graph.get(file) ?? []) visit(next, [...way, file])
    done.add(file)
  }
  for (const file of graph.keys()) visit(file, [])
  expect(loops).toEqual([])
})

/** The file that an import leads to; the name of a package is itself. */
function pathOf(file: string, from: string): string {
  return from.startsWith('.') ? join(dirname(file), from) : from.replace(/^#/, '')
}

test('no file is named for what it does not say', () => {
  expect(ALL.filter(({ file }) => /(^|\/)(utils?|helpers?|common|misc)(\.|\/)/.test(file))).toEqual([])
})
