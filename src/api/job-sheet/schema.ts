import { type Static, Type } from 'typebox'
import { trade } from '#shared/bearing/fields.ts'
import { METHODS, type Method } from '#shared/making/method.ts'
import { answerOf, answerUnion } from '#src/api/answer.ts'
import type { Caution } from '#src/api/caution.ts'
import { type DesignRequest, designRequests } from '#src/api/design-input.ts'
import type { ShownLength } from '#src/api/length.ts'
import { engine, paper } from '#src/api/sheet-options.ts'
import type { Paper } from '#src/drawings/papers.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'

export const USUAL_METHOD: Method = 'saw-and-lathe'
export const METHOD_DEFAULT = trade(USUAL_METHOD, 'the machines that most makers have')

/** What a sheet is beside JSON. */
export const SHEET_TYPES = { html: 'text/html', pdf: 'application/pdf' } as const
const SHEET_FORMATS = ['json', 'html', 'pdf'] as const satisfies readonly ('json' | keyof typeof SHEET_TYPES)[]

const length = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

const OPTIONS = {
  method: Type.Optional(
    Type.Unsafe<Method>(
      Type.Enum(METHODS, {
        type: 'string',
        description: `The machines at hand. Default: ${METHOD_DEFAULT.stated}.`,
      }),
    ),
  ),
  format: Type.Optional(
    Type.Unsafe<(typeof SHEET_FORMATS)[number]>(
      Type.Enum(SHEET_FORMATS, {
        type: 'string',
        description:
          'How the sheet comes, for a link that can say no `Accept`. Default: as `Accept` has it, JSON first.',
      }),
    ),
  ),
  paper,
  engine,
}

const JOB_SHEET_REQUESTS = designRequests('JobSheet', 'A bearing to make, and the machines to make it with.', OPTIONS)

export type JobSheetRequest = DesignRequest & {
  readonly method?: Method
  readonly format?: (typeof SHEET_FORMATS)[number]
  readonly paper?: Paper
}
export const jobSheetRef = Type.Unsafe<JobSheetRequest>(Type.Ref('JobSheetRequest'))

const JobSize = Type.Object(
  {
    symbol: Type.Optional(Type.String({ description: 'Symbol, as in the drawings and in `dimensions` of a design.' })),
    name: Type.String({ description: 'The size in words.' }),
    value: length('Size to work to, before any finish.'),
    shop: Type.String({ description: 'The nearest figure of the rule or caliper.' }),
    stopAt: Type.Optional(length('Size at which to stop with the sharp tool. Sand the rest to fit.')),
    stopAtShop: Type.Optional(Type.String({ description: '`stopAt` to the nearest figure of the rule or caliper.' })),
  },
  { $id: 'JobSize', description: 'A size of one operation.' },
)

const READING = {
  name: Type.String({ description: 'The reading to write down.' }),
  kind: Type.String({ description: 'The `kind` of the reading in `/v1/fit-correction`.' }),
  field: Type.String({ description: 'Place of the figure in that reading: a JSON pointer, or empty for a tick.' }),
}

const JobReading = Type.Object(
  {
    ...READING,
    ring: Type.Enum(['outer', 'inner'], { type: 'string', description: 'The `ring` of the fit correction.' }),
  },
  { $id: 'JobReading', description: 'A blank to write a reading in, and where it goes in a fit correction.' },
)

const PlateReading = Type.Object(READING, {
  $id: 'PlateReading',
  description: 'A blank to write a reading of the plates in. A fit correction treats both plates alike.',
})

const OPERATION = {
  number: Type.Integer({ description: 'Place of the operation, from 1.' }),
  id: Type.String({ description: 'A name for programs.' }),
  title: Type.String({ description: 'The operation in a few words.' }),
  tool: Type.String({ description: 'The tools that it takes.' }),
  how: Type.String({ description: 'Instructions for the operation.' }),
  sizes: Type.Array(refTo<typeof JobSize>('JobSize')),
  check: Type.String({ description: 'The check, with its tool.' }),
  mistake: Type.Object(
    {
      looksLike: Type.String({ description: 'How you recognise the mistake.' }),
      costs: Type.String({ description: 'The cost of the mistake.' }),
    },
    { description: 'The most common mistake.' },
  ),
  cautions: Type.Array(refTo<typeof Caution>('Caution'), { description: 'Dangers at this step.' }),
}

const JobOperation = Type.Object(
  {
    ...OPERATION,
    part: Type.Enum(['balls', 'outer-ring', 'inner-ring', 'both'], {
      type: 'string',
      description: 'The part that you work on.',
    }),
    readings: Type.Array(refTo<typeof JobReading>('JobReading')),
  },
  { $id: 'JobOperation', description: 'One operation, in its place.' },
)

const PlateOperation = Type.Object(
  {
    ...OPERATION,
    part: Type.Enum(['balls', 'both'], { type: 'string', description: 'The part that you work on.' }),
    readings: Type.Array(refTo<typeof PlateReading>('PlateReading')),
  },
  { $id: 'PlateOperation', description: 'One operation of a turntable, in its place.' },
)

const CagedOperation = Type.Object(
  {
    ...OPERATION,
    part: Type.Enum(['balls', 'outer-ring', 'inner-ring', 'cage', 'both'], {
      type: 'string',
      description: 'The part that you work on.',
    }),
    readings: Type.Array(refTo<typeof JobReading>('JobReading')),
  },
  { $id: 'CagedOperation', description: 'One operation of a bearing with a cage, in its place.' },
)

const title = Type.String({ description: 'Title of the sheet.' })

const RingJobSheetResponse = Type.Object(
  answerOf(['radial', 'roller'], jobSheetRef, {
    title,
    operations: Type.Array(refTo<typeof JobOperation>('JobOperation')),
  }),
  { $id: 'RingJobSheetResponse', description: 'The operations in order, from choosing balls to running in.' },
)

const ThrustJobSheetResponse = Type.Object(
  answerOf(['thrust'], jobSheetRef, {
    title,
    operations: Type.Array(refTo<typeof PlateOperation>('PlateOperation')),
  }),
  { $id: 'ThrustJobSheetResponse', description: 'The operations for a turntable, in order.' },
)

const CagedJobSheetResponse = Type.Object(
  answerOf(['caged'], jobSheetRef, {
    title,
    operations: Type.Array(refTo<typeof CagedOperation>('CagedOperation')),
  }),
  { $id: 'CagedJobSheetResponse', description: 'The operations for a caged bearing, in order.' },
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
    [SHEET_TYPES.html]: { schema: Type.String({ description: 'A page to read at the bench and to print.' }) },
    [SHEET_TYPES.pdf]: { schema: Type.String({ description: 'PDF on sheets of `paper`.' }) },
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
