import { setTimeout as sleep } from 'node:timers/promises'
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { Type } from 'typebox'
import { computingRoute } from '#src/http/computing-route.ts'
import { problem, refused } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'

/** A length as the service has it, under an `$id` of its own. */
const ProbeLength = Type.Unsafe<number | string>({
  $id: 'ProbeLength',
  type: ['number', 'string'],
  format: 'length',
  exclusiveMinimum: 0,
  maximum: 10_000,
  minLength: 1,
  maxLength: 40,
  description: 'A length above 0.',
})
const length = () => refTo<typeof ProbeLength>('ProbeLength')

const ProbeRing = Type.Object(
  {
    engagement: Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 0.5 })),
    grooveDepth: Type.Optional(length()),
    outsideDiameter: Type.Optional(length()),
    wall: Type.Optional(length()),
    roundTo: Type.Optional(Type.Unsafe<number | string | null>({ type: ['number', 'string', 'null'], minimum: 0 })),
  },
  {
    $id: 'ProbeRing',
    additionalProperties: false,
    'x-exclusive': [
      ['engagement', 'grooveDepth'],
      ['outsideDiameter', 'wall'],
    ],
  },
)

const Normal = Type.Object(
  { kind: Type.Literal('normal'), standardDeviation: length() },
  { $id: 'ProbeNormal', additionalProperties: false },
)
const Uniform = Type.Object(
  { kind: Type.Literal('uniform'), plusMinus: length() },
  { $id: 'ProbeUniform', additionalProperties: false },
)

/** What a bearing has no need of, and a schema may say all the same. */
const ProbeMore = Type.Object(
  {
    note: Type.Optional(Type.String({ minLength: 2, maxLength: 5 })),
    step: Type.Optional(Type.Number({ multipleOf: 0.5 })),
    tags: Type.Optional(Type.Array(Type.String(), { uniqueItems: true })),
    one: Type.Optional(Type.Literal('one')),
    some: Type.Optional(
      Type.Unsafe<unknown>({
        anyOf: [
          { type: 'object', additionalProperties: false, properties: { part: { type: 'number', minimum: 1 } } },
          { type: 'null' },
        ],
      }),
    ),
    a: Type.Optional(Type.Number()),
    b: Type.Optional(Type.Number()),
    c: Type.Optional(Type.Number({ minimum: 0 })),
  },
  { $id: 'ProbeMore', additionalProperties: false, 'x-exclusive': [['a', 'b', 'c']] },
)

const ProbeRequest = Type.Object(
  {
    units: Type.Enum(['in', 'mm'], { type: 'string' }),
    balls: Type.Object(
      {
        count: Type.Integer({ minimum: 3, maximum: 200, description: 'How many balls.' }),
        diameter: length(),
        material: Type.Optional(Type.Enum(['glass', 'steel', 'acrylic'], { type: 'string' })),
        diameters: Type.Optional(Type.Array(length(), { minItems: 3, maxItems: 200 })),
      },
      { additionalProperties: false },
    ),
    bore: length(),
    ring: Type.Optional(refTo<typeof ProbeRing>('ProbeRing')),
    split: Type.Optional(Type.Boolean()),
    more: Type.Optional(Type.Array(refTo<typeof ProbeMore>('ProbeMore'))),
    scatter: Type.Optional(
      Type.Unsafe<unknown>({
        type: 'object',
        discriminator: { propertyName: 'kind' },
        required: ['kind'],
        oneOf: [{ $ref: 'ProbeNormal' }, { $ref: 'ProbeUniform' }],
      }),
    ),
  },
  { $id: 'ProbeRequest', additionalProperties: false, description: 'Something like a bearing.' },
)

const ProbeAnswer = Type.Object({ input: Type.Unknown() }, { $id: 'ProbeAnswer', description: 'The input as it came.' })

/** What the tests ask of it: `bore` 13 cannot exist, 14 is a bug of ours, whose message nobody may see. */
export const IMPOSSIBLE_BORE = 13
export const BUG_BORE = 14

/** Paths that stand for those of a bearing: they compute nothing and give back what came through. */
export const probeRoute: FastifyPluginAsyncTypebox = async (app) => {
  for (const schema of [ProbeLength, ProbeRing, ProbeMore, Normal, Uniform, ProbeRequest, ProbeAnswer])
    app.addSchema(schema)

  computingRoute(app, {
    path: '/probe',
    get: true,
    schema: {
      operationId: 'probe',
      tags: ['bearing'],
      summary: 'Gives back its input',
      body: refTo<typeof ProbeRequest>('ProbeRequest'),
      response: { 200: refTo<typeof ProbeAnswer>('ProbeAnswer'), 422: problem('Cannot exist') },
    },
    handler: (body) => {
      if (body.bore === IMPOSSIBLE_BORE || body.bore === String(IMPOSSIBLE_BORE))
        throw refused('This cannot be made: see `errors`.', [
          { path: '/bore', message: 'a bore of 13 brings bad luck' },
        ])
      if (body.bore === BUG_BORE) throw new RangeError('bore must not be 14, got the secret 14')
      return { input: body }
    },
  })

  computingRoute(app, {
    path: '/table',
    get: true,
    mediaTypes: ['application/json', 'text/csv'],
    schema: {
      operationId: 'table',
      tags: ['bearing'],
      summary: 'Gives back its bore, as JSON or CSV',
      body: refTo<typeof ProbeRequest>('ProbeRequest'),
      response: {
        200: {
          description: 'The bore',
          content: {
            'application/json': { schema: refTo<typeof ProbeAnswer>('ProbeAnswer') },
            'text/csv': { schema: Type.String() },
          },
        },
      },
    },
    handler: ({ bore }, _request, mediaType) =>
      mediaType === 'text/csv' ? `bore\r\n${bore}\r\n` : { input: { bore } },
  })

  app.get('/slow', { schema: { hide: true } }, async (_request, reply) => {
    await sleep(400)
    return reply.send({ slow: true })
  })

  app.get('/:view.:format', { schema: { hide: true } }, (request, reply) => {
    reply.send(request.params)
  })
}

/** An input that the probe takes. */
export const PROBE = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }
