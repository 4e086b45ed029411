import { type Static, Type } from 'typebox'
import { refTo } from '#src/http/schema.ts'
import type { Caution } from '#src/wire/caution.ts'
import { DesignRequest } from '#src/wire/design-input.ts'
import type { ShownLength } from '#src/wire/length.ts'
import { engine, paper } from '#src/wire/sheet-options.ts'
import type { UnitsName } from '#src/wire/units.ts'

export const METHODS = ['saw-and-lathe', 'lathe-only', 'router-and-lathe'] as const
export type Method = (typeof METHODS)[number]

export const SHEET_TYPES = { json: 'application/json', html: 'text/html', pdf: 'application/pdf' } as const
const SHEET_FORMATS = ['json', 'html', 'pdf'] as const satisfies readonly (keyof typeof SHEET_TYPES)[]

const length = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

export const JobSheetRequest = Type.Object(
  {
    ...DesignRequest.properties,
    method: Type.Optional(
      Type.Unsafe<Method>(
        Type.Enum(METHODS, {
          type: 'string',
          description: 'The machines at hand. Default: saw-and-lathe.',
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
  },
  { $id: 'JobSheetRequest', description: 'A bearing to make, and with what.', additionalProperties: false },
)
export type JobSheetRequest = Static<typeof JobSheetRequest>

export const JobSize = Type.Object(
  {
    symbol: Type.Optional(Type.String({ description: 'As in the drawings and in `dimensions` of a design.' })),
    name: Type.String(),
    value: length('What to work to, before any finish.'),
    shop: Type.String({ description: 'The nearest figure of the rule or caliper.' }),
    stopAt: Type.Optional(length('Where to stop with the sharp tool: the rest is sanded to fit.')),
    stopAtShop: Type.Optional(Type.String()),
  },
  { $id: 'JobSize', description: 'A size of one operation.' },
)

export const JobReading = Type.Object(
  {
    name: Type.String({ description: 'What to write down.' }),
    ring: Type.Enum(['outer', 'inner'], { type: 'string', description: 'The `ring` of the fit correction.' }),
    kind: Type.String({ description: 'The `kind` of the reading in `/v1/fit-correction`.' }),
    field: Type.String({ description: 'Where the figure goes in that reading: a JSON pointer, or empty for a tick.' }),
  },
  { $id: 'JobReading', description: 'A blank to write a reading in, and where it goes in a fit correction.' },
)

export const JobOperation = Type.Object(
  {
    number: Type.Integer(),
    id: Type.String({ description: 'A name for programs.' }),
    part: Type.Enum(['balls', 'outer-ring', 'inner-ring', 'both'], { type: 'string' }),
    title: Type.String(),
    tool: Type.String(),
    how: Type.String(),
    sizes: Type.Array(refTo<typeof JobSize>('JobSize')),
    check: Type.String({ description: 'What to check it with, and how.' }),
    mistake: Type.Object({
      looksLike: Type.String(),
      costs: Type.String(),
    }),
    cautions: Type.Array(refTo<typeof Caution>('Caution'), { description: 'What can hurt someone at this very step.' }),
    readings: Type.Array(refTo<typeof JobReading>('JobReading')),
  },
  { $id: 'JobOperation', description: 'One operation, in its place.' },
)
export type JobOperation = Static<typeof JobOperation>

export const JobSheetResponse = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    title: Type.String(),
    method: Type.Enum(METHODS, { type: 'string' }),
    use: Type.String({ description: 'What such a bearing is for, and what never.' }),
    operations: Type.Array(refTo<typeof JobOperation>('JobOperation')),
  },
  { $id: 'JobSheetResponse', description: 'The operations in order, from choosing balls to running in.' },
)
export type JobSheetResponse = Static<typeof JobSheetResponse>

export const Sheet = {
  description: 'The job sheet',
  content: {
    [SHEET_TYPES.json]: { schema: refTo<typeof JobSheetResponse>('JobSheetResponse') },
    [SHEET_TYPES.html]: { schema: Type.String({ description: 'A page to read at the bench and to print.' }) },
    [SHEET_TYPES.pdf]: { schema: Type.String({ description: 'On sheets of `paper`.' }) },
  },
} as const
