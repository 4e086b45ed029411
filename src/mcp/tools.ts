import type { Static } from 'typebox'
import type { DesignResponse } from '#src/api/design/arrangements/all.ts'
import type { DesignSearchResponse } from '#src/api/design-search/schema.ts'
import type { FitCorrectionResponse } from '#src/api/fit-correction/arrangements/all.ts'
import type { JobSheet } from '#src/api/job-sheet/schema.ts'
import type { SeasonalFitResponse } from '#src/api/seasonal-fit/schema.ts'
import type { ToleranceCheckResponse } from '#src/api/tolerance-check/arrangements/all.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { notValid } from '#src/http/problem.ts'
import { queryText } from '#src/http/query-text.ts'
import { quote } from '#src/http/quote.ts'
import type { JsonSchema } from '#src/http/schema.ts'
import {
  CHANCES,
  chanceLine,
  changeOf,
  changesLine,
  HEADINGS,
  moreRows,
  rankedLine,
  SHEET_NAMES,
  SHEETS_BY_POST,
  sizeLine,
  TABLE_CHOICE,
  TOOL_WORDS,
  unknownTable,
} from '#src/words/tools.ts'

/** Of a table a short answer has the first rows. */
const MOST_ROWS = 12
/** Designs that a search returns where the caller does not say. */
const RANKED = 3

/** What a tool asks of a path. */
export type Question = {
  readonly operationId: string
  /** The path, for the link to the whole answer. */
  readonly path: string
  /** Whether the whole answer can be had by `GET`. */
  readonly get: boolean
  readonly input: object
  /** The list of the answer that the short answer shows row by row. */
  readonly rows?: string
}

type Args = { readonly [name: string]: unknown }

export type Tool = {
  readonly name: string
  readonly title: string
  readonly description: string
  /** The fields that its schema shows, of each path that it asks. */
  readonly shows: Readonly<Record<string, readonly string[]>>
  /** Fields of its own, which it needs. */
  readonly own?: Readonly<Record<string, JsonSchema>>
  readonly ask: (args: Args) => Question
  /** What the short answer says between the summary and the warnings. */
  readonly lines: (answer: never, question: Question, base: string) => readonly string[]
}

const BEARING = [
  'units',
  'arrangement',
  'balls.count',
  'balls.diameter',
  'balls.material',
  'balls.standardDeviation',
  'bore',
  'ballGap',
  'radialInternalClearance',
]
/** The same for other tools, less what the tool `design` has explained. */
const USUAL = ['units', 'balls.count', 'balls.diameter', 'balls.material', 'bore', 'ballGap']
const DESIGN = USUAL.map((name) => `design.${name}`)
const SCATTERS = ['ballDiameter', 'ballLotMean', 'outerGrooveBottomRadius', 'innerGrooveBottomRadius']

/** Asks a path for just what the tool was asked. */
const asks =
  (operationId: string, path: string, get = false) =>
  (input: Args): Question => ({ operationId, path, get, input })

const headed = (heading: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ['', heading, ...lines]
const bullets = (sentences: readonly string[]): readonly string[] => sentences.map((sentence) => `- ${sentence}`)

/** The tables of `look_up`: the path of each, the list of its answer, and what the path is always asked. */
const TABLES: Readonly<Record<string, Pick<Question, 'operationId' | 'path' | 'rows'> & { readonly fixed?: object }>> =
  {
    woods: { operationId: 'materials', path: '/v1/materials', rows: 'woods', fixed: { kind: 'wood' } },
    'ball-materials': { operationId: 'materials', path: '/v1/materials', rows: 'balls', fixed: { kind: 'ball' } },
    lumber: { operationId: 'stockSizes', path: '/v1/stock-sizes', rows: 'sizes' },
    screws: { operationId: 'fasteners', path: '/v1/fasteners', rows: 'screws' },
    sizes: { operationId: 'sizeTable', path: '/v1/size-table', rows: 'rows' },
    sources: { operationId: 'sources', path: '/v1/sources', rows: 'sources' },
  }

/** At most seven: whoever chooses among them reads all of them first. */
export const TOOLS: readonly Tool[] = [
  {
    name: 'design',
    ...TOOL_WORDS.design,
    ask: asks('design', '/v1/design', true),
    shows: { design: [...BEARING, 'outerRing.engagement', 'innerRing.engagement', 'groove.cutterDiameter', 'width'] },
    lines: ({ units, dimensions, assembly }: Static<typeof DesignResponse>) => [
      ...headed(
        HEADINGS.sizes,
        dimensions.map((row) => sizeLine(row, units)),
      ),
      ...headed(HEADINGS.assembly, bullets(assembly.steps)),
    ],
  },
  {
    name: 'will_it_run',
    ...TOOL_WORDS.willItRun,
    ask: asks('toleranceCheck', '/v1/tolerance-check'),
    shows: {
      toleranceCheck: [
        ...DESIGN,
        ...SCATTERS.flatMap((name) =>
          ['kind', 'standardDeviation', 'plusMinus'].map((part) => `contributors.${name}.${part}`),
        ),
      ],
    },
    lines: ({ ballGap, jointFits, aim, sensitivities }: ToleranceCheckResponse) => [
      aim.message,
      ...headed(HEADINGS.chances, [
        chanceLine(CHANCES.gapFits, ballGap.probability.fits),
        chanceLine(CHANCES.bothFit, jointFits),
      ]),
      ...headed(HEADINGS.matters, bullets(sensitivities.slice(0, 2).map(({ message }) => message))),
    ],
  },
  {
    name: 'fit',
    ...TOOL_WORDS.fit,
    ask: asks('fitCorrection', '/v1/fit-correction'),
    shows: {
      fitCorrection: [
        ...DESIGN,
        'ring',
        ...['kind', 'value', 'graduation', 'ballsLeftOut', 'diameter', 'result', 'count'].map(
          (name) => `readings.${name}`,
        ),
        'earlier.readings.kind',
        'earlier.readings.value',
        'earlier.thenRemoved.with',
        'earlier.thenRemoved.radial',
      ],
    },
    lines: ({ probability, nextStep, nextReading, rescue = [] }: FitCorrectionResponse) => [
      ...(nextReading === undefined ? [] : [nextReading.message]),
      ...headed(HEADINGS.chances, [
        chanceLine(CHANCES.inBand, probability.inBand),
        chanceLine(CHANCES.tooDeep, probability.tooDeep),
        ...(nextStep === undefined ? [] : [chanceLine(CHANCES.nextTooDeep, nextStep.overshootProbability)]),
      ]),
      ...headed(HEADINGS.rescue, bullets(rescue.filter(({ possible }) => possible).map(({ message }) => message))),
    ],
  },
  {
    name: 'season',
    ...TOOL_WORDS.season,
    ask: asks('seasonalFit', '/v1/seasonal-fit'),
    shows: {
      seasonalFit: [
        ...DESIGN,
        ...['outerRing', 'innerRing'].flatMap((ring) => [
          `design.making.woods.${ring}.species`,
          `design.making.woods.${ring}.construction`,
        ]),
        'design.making.climate.today.relativeHumidity',
        'design.making.climate.relativeHumidity.min',
        'design.making.climate.relativeHumidity.max',
      ],
    },
    lines: ({ band, states, buildIn }: SeasonalFitResponse) => [
      ...(buildIn.changes.length === 0 ? [] : [changesLine(buildIn.changes.map(changeOf))]),
      ...headed(HEADINGS.times, [
        ...(band === undefined ? [] : [`- ${band.message}`]),
        ...states.map(({ name, message }) => `- ${name}: ${message}`),
      ]),
    ],
  },
  {
    name: 'sheets',
    ...TOOL_WORDS.sheets,
    ask: asks('jobSheet', '/v1/job-sheet', true),
    shows: { jobSheet: [...USUAL, 'making.method', 'paper'] },
    lines: ({ title, operations }: JobSheet, { input }, base) => [
      title,
      ...headed(
        HEADINGS.operations,
        operations.map((operation) => `${operation.number}. ${operation.title}`),
      ),
      ...headed(HEADINGS.links, linksTo(input, base)),
    ],
  },
  {
    name: 'search',
    ...TOOL_WORDS.search,
    ask: (args) => ({
      operationId: 'designSearch',
      path: '/v1/design-search',
      get: false,
      input: { limit: RANKED, ...args },
    }),
    shows: {
      designSearch: [
        'units',
        'outsideDiameter.max',
        'bore.min',
        'bore.max',
        'balls.diameter',
        'balls.material',
        'balls.quantity',
        'counts.min',
        'counts.max',
        'cutterDiameters',
        'limit',
      ],
    },
    lines: ({ ranked }: Static<typeof DesignSearchResponse>) =>
      ranked.flatMap(({ rank, outsideDiameter, design }) => [
        '',
        rankedLine(rank, design, outsideDiameter),
        JSON.stringify(design),
      ]),
  },
  {
    name: 'look_up',
    ...TOOL_WORDS.lookUp,
    shows: {
      sizeTable: ['units', 'diameters', 'counts'],
      materials: ['species', 'group'],
      stockSizes: ['system', 'kind', 'measure'],
      fasteners: ['gauge', 'metricDiameter'],
      sources: ['id'],
    },
    own: { table: { type: 'string', enum: Object.keys(TABLES), description: TABLE_CHOICE } },
    ask: ({ table, ...rest }) => {
      const found = typeof table === 'string' && Object.hasOwn(TABLES, table) ? TABLES[table] : undefined
      if (found === undefined)
        throw notValid([{ path: '/table', message: unknownTable(quote(table), Object.keys(TABLES)) }])
      const { fixed, ...question } = found
      return { ...question, get: true, input: { ...rest, ...fixed } }
    },
    lines: (answer: object, { rows = '' }) => {
      const all: unknown = Reflect.get(answer, rows)
      if (!Array.isArray(all)) throw new RangeError(`rows must name a list of the answer, got ${rows}`)
      const shown = all.slice(0, MOST_ROWS).map((row) => JSON.stringify(row))
      return all.length > MOST_ROWS ? [...shown, moreRows(all.length - MOST_ROWS)] : shown
    },
  },
]

function linksTo(input: object, base: string): readonly string[] {
  const query = queryText(input)
  if (query === undefined) return [SHEETS_BY_POST]
  return [
    ...VIEWS.map((view) => `- ${SHEET_NAMES[view]}: ${base}/v1/drawings/${view}.pdf?${query}`),
    `- ${SHEET_NAMES.jobSheet}: ${base}/v1/job-sheet?${query}&format=pdf`,
  ]
}
