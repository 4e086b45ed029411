import type { CallToolResult, ListToolsResult, Server } from '@modelcontextprotocol/server'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { ProblemError } from '#src/http/problem.ts'
import { queryText } from '#src/http/query-text.ts'
import { quote } from '#src/http/quote.ts'
import type { JsonSchema, SchemaById } from '#src/http/schema.ts'
import { FAILED } from '#src/http/sentences.ts'
import { VERSION } from '#src/version.ts'
import {
  assumedLine,
  fullByGet,
  fullByPost,
  HEADINGS,
  refusalText,
  TOOL_INSTRUCTIONS,
  unknownTool,
  warningLine,
} from '#src/words/tools.ts'
import { picked } from './picked.ts'
import { type Question, TOOLS, type Tool } from './tools.ts'

type Listed = ListToolsResult['tools'][number]

/** The tools as they are listed: their schemas are made from those of the paths. */
export const listedTools = (app: FastifyInstance): readonly Listed[] =>
  TOOLS.map((tool) => ({
    name: tool.name,
    title: tool.title,
    description: tool.description,
    inputSchema: inputSchemaOf(app, tool) as Listed['inputSchema'],
    annotations: { readOnlyHint: true, idempotentHint: true, openWorldHint: false },
  }))

function inputSchemaOf(app: FastifyInstance, { shows, own = {} }: Tool): JsonSchema {
  const byId: SchemaById = (id) => app.getSchema(id)
  const shown = Object.entries(shows).map(([operationId, names]) => {
    const schema = app.insidePaths.get(operationId)?.schema
    if (schema === undefined) throw new RangeError(`shows must name paths, got ${operationId}`)
    return picked(schema, names, byId)
  })
  const [only, ...more] = shown
  const required = more.length === 0 ? (only?.required ?? []) : []
  return {
    type: 'object',
    properties: { ...own, ...Object.assign({}, ...shown.map(({ properties }) => properties)) },
    required: [...Object.keys(own), ...required],
  }
}

/** A server for one request of a caller: nothing is kept from one to the next. */
export function toolServer(
  app: FastifyInstance,
  sdk: { readonly Server: typeof Server },
  tools: readonly Listed[],
  request: FastifyRequest,
): Server {
  const server = new sdk.Server(
    { name: 'racewright', version: VERSION },
    { capabilities: { tools: {} }, instructions: TOOL_INSTRUCTIONS },
  )
  server.setRequestHandler('tools/list', () => ({ tools: [...tools] }))
  server.setRequestHandler('tools/call', ({ params: { name, arguments: args = {} } }) =>
    called(app, name, args, request),
  )
  return server
}

/** A refusal is an answer too: a model reads it and asks better. */
async function called(
  app: FastifyInstance,
  name: string,
  args: { readonly [name: string]: unknown },
  request: FastifyRequest,
): Promise<CallToolResult> {
  const tool = TOOLS.find((each) => each.name === name)
  const refused = (text: string): CallToolResult => ({ isError: true, content: [{ type: 'text', text }] })
  if (tool === undefined) return refused(unknownTool(quote(name)))
  try {
    const question = tool.ask(args)
    const answer = await app.askInside(question.operationId, question.input, request)
    return { content: [{ type: 'text', text: shortAnswer(tool, question, Object(answer), baseOf(request)) }] }
  } catch (error) {
    if (error instanceof ProblemError) return refused(refusalText(error.statusCode, error.message, error.faults))
    request.log.error({ err: error, tool: name }, 'tool failed')
    return refused(FAILED)
  }
}

const baseOf = ({ protocol, host }: FastifyRequest): string => `${protocol}://${host}`

/** What every answer of a computing path has; reference data has less. */
type Answer = {
  readonly summary?: string
  readonly assumed?: readonly object[]
  readonly warnings?: readonly Parameters<typeof warningLine>[0][]
  readonly cautions?: readonly { readonly message: string }[]
}

function shortAnswer({ lines }: Tool, question: Question, answer: Answer, base: string): string {
  const { summary, assumed, warnings = [], cautions = [] } = answer
  return [
    ...(summary === undefined ? [] : [summary]),
    // Each tool knows the answer of the path that it asks.
    ...lines(answer as never, question, base),
    ...(warnings.length === 0 ? [] : ['', HEADINGS.warnings, ...warnings.map(warningLine)]),
    ...(cautions.length === 0 ? [] : ['', HEADINGS.cautions, ...cautions.map(({ message }) => `- ${message}`)]),
    '',
    ...(assumed === undefined ? [] : [assumedLine(assumed.length)]),
    fullAnswer(question, base),
  ].join('\n')
}

function fullAnswer({ path, get, input }: Question, base: string): string {
  const query = get ? queryText(input) : undefined
  return query === undefined ? fullByPost(`${base}${path}`) : fullByGet(`${base}${path}?${query}`)
}
