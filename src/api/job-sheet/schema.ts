import type { FastifyRequest } from 'fastify'
import { type Static, Type } from 'typebox'
import type { ReadingKind } from '#shared/questions/fit/reading.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import { type DesignRequest, designRequests } from '#src/api/design-input.ts'
import type { ShownLength } from '#src/api/length.ts'
import { choiceOf, flag, integer, listOf, named, object, text } from '#src/api/schema.ts'
import { engine, paper } from '#src/api/sheet-options.ts'
import type { Paper } from '#src/drawings/papers.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'

/** Media types of a sheet besides JSON. */
export const SHEET_TYPES = { html: 'text/html', pdf: 'application/pdf' } as const
const SHEET_FORMATS = ['json', 'html', 'pdf'] as const satisfies readonly ('json' | keyof typeof SHEET_TYPES)[]

const FORMS = ['full', 'short'] as const
export type Form = (typeof FORMS)[number]

const length = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

const OPTIONS = {
  format: Type.Optional(
    Type.Unsafe<(typeof SHEET_FORMATS)[number]>(
      choiceOf(
        'How the sheet comes, for a link that can say no `Accept`. Default: as `Accept` has it, JSON first.',
        SHEET_FORMATS,
      ),
    ),
  ),
  form: Type.Optional(
    choiceOf<Form>(
      'How much the sheet says on paper and as a page: `short` has one line for each operation, on at most two pages. Default: full.',
      FORMS,
    ),
  ),
  paper,
  engine,
}

const JOB_SHEET_REQUESTS = designRequests('JobSheet', 'A bearing to make, and the sheet to make it by.', OPTIONS)

export type JobSheetRequest = DesignRequest & {
  readonly format?: (typeof SHEET_FORMATS)[number]
  readonly form?: Form
  readonly paper?: Paper
}
export const jobSheetRef = Type.Unsafe<JobSheetRequest>(Type.Ref('JobSheetRequest'))

export const JobSize = named('JobSize', 'A size of one operation.', {
  symbol: Type.Optional(text('Symbol, as in the drawings and in `dimensions` of a design.')),
  name: text('The size in words.'),
  value: length('Size to work to, before any finish.'),
  shop: text('The nearest figure of the rule or caliper.'),
  shopError: Type.Optional(
    Type.Unsafe<ShownLength>({
      ...refTo<typeof ShownLength>('ShownLength'),
      description: 'How much larger the figure of the rule is than `value`; below 0 where it is smaller.',
    }),
  ),
  byCaliper: Type.Optional(flag('Set a caliper to `value`: the rounding of a rule would spoil the size.')),
  isTrade: Type.Optional(flag('The size is common practice, no source: nothing else was asked for.')),
  isFromMemory: Type.Optional(flag('The size rests on figures from memory: nothing else was asked for.')),
  stopAt: Type.Optional(length('Size at which to stop with the sharp tool. Sand the rest to fit.')),
  tolerance: Type.Optional(length('How far off the size may be, either way.')),
  stopAtShop: Type.Optional(text('`stopAt` to the nearest figure of the rule or caliper.')),
})

const READING = {
  number: integer('Number of the blank on the sheet, from 1.'),
  name: text('The reading to write down.'),
  kind: Type.Unsafe<ReadingKind>(text('The `kind` of the reading in `/v1/fit-correction`.')),
  field: text('Place of the figure in that reading: a JSON pointer, or empty for a tick.'),
}

const JobReading = named('JobReading', 'A blank to write a reading in, and where it goes in a fit correction.', {
  ...READING,
  ring: choiceOf('The `ring` of the fit correction.', ['outer', 'inner']),
})

const PlateReading = named(
  'PlateReading',
  'A blank to write a reading of the plates in. A fit correction treats both plates alike.',
  READING,
)

const OPERATION = {
  number: integer('Place of the operation, from 1.'),
  id: text('A name for programs.'),
  title: text('The operation in a few words.'),
  tool: text('The tools that it takes.'),
  counted: Type.Optional(
    text('What the request leaves open of this operation, and what is counted with instead, after “not chosen:”.'),
  ),
  how: text('Instructions for the operation.'),
  sizes: Type.Array(refTo<typeof JobSize>('JobSize')),
  check: text('The check, with its tool.'),
  mistake: object('The most common mistake.', {
    looksLike: text('How you recognise the mistake.'),
    costs: text('The cost of the mistake.'),
    remedy: text('What to do about it, or against it.'),
  }),
  cautions: listOf<typeof Caution>('Caution', 'Dangers at this step.'),
  speed: Type.Optional(
    object('Speed of the lathe for a blank that has been made round [1/min]. Common practice, no source.', {
      min: Type.Number({ description: 'Lowest speed.' }),
      max: Type.Number({ description: 'Highest speed.' }),
    }),
  ),
}

const JobOperation = named('JobOperation', 'One operation, in its place.', {
  ...OPERATION,
  part: choiceOf('The part that you work on.', ['balls', 'outer-ring', 'inner-ring', 'both']),
  readings: Type.Array(refTo<typeof JobReading>('JobReading')),
})

const PlateOperation = named('PlateOperation', 'One operation of a turntable, in its place.', {
  ...OPERATION,
  part: choiceOf('The part that you work on.', ['balls', 'both']),
  readings: Type.Array(refTo<typeof PlateReading>('PlateReading')),
})

const CagedOperation = named('CagedOperation', 'One operation of a bearing with a cage, in its place.', {
  ...OPERATION,
  part: choiceOf('The part that you work on.', ['balls', 'outer-ring', 'inner-ring', 'cage', 'both']),
  readings: Type.Array(refTo<typeof JobReading>('JobReading')),
})

const listOfText = (description: string) => Type.Array(Type.String(), { description })

const HEAD = {
  tools: listOfText('Everything to lay out before you start, in the order of its first use.'),
  title: text('Title of the sheet.'),
  name: Type.Optional(text("The maker's own name for the bearing.")),
  code: text('A short code of the input. Every sheet and drawing of the same input carries it.'),
}

const RingJobSheetResponse = named(
  'RingJobSheetResponse',
  'The operations in order, from choosing balls to running in.',
  answerOf(['radial', 'roller'], jobSheetRef, {
    ...HEAD,
    operations: Type.Array(refTo<typeof JobOperation>('JobOperation')),
  }),
)

const ThrustJobSheetResponse = named(
  'ThrustJobSheetResponse',
  'The operations for a turntable, in order.',
  answerOf(['thrust'], jobSheetRef, {
    ...HEAD,
    operations: Type.Array(refTo<typeof PlateOperation>('PlateOperation')),
  }),
)

const CagedJobSheetResponse = named(
  'CagedJobSheetResponse',
  'The operations for a caged bearing, in order.',
  answerOf(['caged'], jobSheetRef, {
    ...HEAD,
    operations: Type.Array(refTo<typeof CagedOperation>('CagedOperation')),
  }),
)

export const JobSheetResponse = answerUnion(
  'JobSheetResponse',
  'The operations in order, from choosing balls to running in.',
  RingJobSheetResponse,
  ThrustJobSheetResponse,
  CagedJobSheetResponse,
)
/** A sheet of any arrangement, one of its operations, and a blank in that. */
export type JobSheet = Static<typeof JobSheetResponse>
export type SheetOperation = JobSheet['operations'][number]

export const Sheet = {
  description: 'The job sheet',
  content: {
    [JSON_TYPE]: { schema: refTo<typeof JobSheetResponse>('JobSheetResponse') },
    [SHEET_TYPES.html]: { schema: text('A page to read at the bench and to print.') },
    [SHEET_TYPES.pdf]: { schema: text('PDF on sheets of `paper`.') },
  },
} as const

export const JOB_SHEET_SCHEMAS = [
  JobSize,
  JobReading,
  PlateReading,
  JobOperation,
  PlateOperation,
  CagedOperation,
  ...JOB_SHEET_REQUESTS,
  RingJobSheetResponse,
  ThrustJobSheetResponse,
  CagedJobSheetResponse,
  JobSheetResponse,
]

/** Media types of the answer, the preferred first: a link says it in its address, a program by `Accept`. */
export function offeredTypes(request: FastifyRequest): readonly [string, ...string[]] {
  const input = Object(request.method === 'POST' ? request.body : request.query) as Partial<JobSheetRequest>
  const types = { json: JSON_TYPE, ...SHEET_TYPES }
  return input.format === undefined ? [types.json, types.html, types.pdf] : [types[input.format]]
}
