import type { IncomingMessage, ServerResponse } from 'node:http'
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox'
import type {
  FastifyBaseLogger,
  FastifyInstance,
  FastifyReply,
  FastifyRequest,
  FastifySchema,
  onRequestHookHandler,
  RawServerDefault,
} from 'fastify'
import { type Static, type TSchema, Type } from 'typebox'
import { addVary, documentPolicyOf, pagePolicyOf, setAnswerHeaders } from './answer-headers.ts'
import { isKept } from './caching.ts'
import { FaultList } from './fault-list.ts'
import { findFaults } from './faults.ts'
import { themeOf, wholeStyle } from './html.ts'
import { HTML_TYPE, JSON_TYPE, mediaType } from './media-type.ts'
import { notValid, ProblemError, problem, type WayBack } from './problem.ts'
import { bodyOf } from './query.ts'
import { queryNames } from './query-names.ts'
import { type QueryParameter, queryParameters } from './query-parameters.ts'
import { schemaNamesOf } from './schema.ts'
import { notFoundChoice } from './sentences.ts'

declare module 'fastify' {
  interface FastifyInstance {
    /** Where people outside reach this service; null where nobody has said it. */
    publicUrl: string | null
  }
  interface FastifyContextConfig {
    /** The query of the route for the OpenAPI document, where the route's own schema of it is that of a body. */
    queryParameters?: readonly QueryParameter[]
  }
}

/** The `app` of a plugin with the type provider of TypeBox. */
type App = FastifyInstance<RawServerDefault, IncomingMessage, ServerResponse, FastifyBaseLogger, TypeBoxTypeProvider>

/** Problems of every such path; a route adds its own, 422 above all. */
const REFUSALS = {
  400: problem('Not valid'),
  406: problem('Not acceptable'),
  429: problem('Too many requests from one address, where a limit is set'),
  503: problem('Too busy'),
}
const POST_REFUSALS = { ...REFUSALS, 413: problem('Too large'), 415: problem('Not JSON') }
const GET_REFUSALS = {
  304: { description: 'The answer that the caller has is still the answer', type: 'null' },
  ...REFUSALS,
  414: problem('The address is too long'),
}

type Content = { readonly content: Readonly<Record<string, { readonly schema: TSchema }>> }

type ComputingSchema = {
  readonly operationId: string
  readonly tags: readonly string[]
  readonly summary: string
  readonly description?: string
  readonly body: TSchema
  readonly response: { readonly 200: TSchema | (Content & { readonly description: string }) }
}

/** The body of a 200: of the one schema, or of the JSON schema; other media types are texts and bytes. */
type Answer<Ok> = Ok extends TSchema
  ? Static<Ok>
  : Ok extends { content: infer ByType }
    ? {
        [Type in keyof ByType]: Type extends 'application/json' ? StaticOf<ByType[Type]> : string | Buffer
      }[keyof ByType]
    : string | Buffer

type StaticOf<Media> = Media extends { schema: infer Json extends TSchema } ? Static<Json> : never

/** The names that a part of a path may have, and their meaning. */
type Choice = { readonly names: readonly string[]; readonly description: string }

type MediaTypes = readonly [string, ...string[]]

type ComputingRoute<Schema extends ComputingSchema> = {
  readonly path: string
  readonly schema: Schema
  /** The same input as a query too, so that a page can embed the answer and a cache can keep it. */
  readonly get?: boolean
  /** Media types of the answer, the preferred first; JSON by default. Some paths have them in their name. */
  readonly mediaTypes?: MediaTypes | ((request: FastifyRequest) => MediaTypes)
  /** The only style sheet and script that its HTML may use. `FRAME_ANCESTORS` may frame such a page. */
  readonly style?: string
  readonly script?: string
  /** What people call the place of a fault, on the page of a refusal. */
  readonly nameOf?: (path: string, query: unknown) => string | undefined
  /** Where people correct what a query asks for, on the page of a refusal. */
  readonly wayBack?: (query: URLSearchParams) => WayBack
  /** Parts of the path, `:view` say, each of which names one of a few things; with any other name it is a 404. */
  readonly choices?: Readonly<Record<string, Choice>>
  readonly handler: (
    body: Static<Schema['body']>,
    request: FastifyRequest,
    mediaType: string,
  ) => Answer<Schema['response'][200]> | Promise<Answer<Schema['response'][200]>>
}

/** A path that computes an answer from an input: `POST` with JSON and, where asked, `GET` with the same as a query. */
export function computingRoute<const Schema extends ComputingSchema>(app: App, route: ComputingRoute<Schema>): void {
  const { path, choices } = route
  const { body, response, ...words }: ComputingSchema = route.schema
  const answer = answering(app, route)
  app.insidePaths.set(words.operationId, {
    schema: body,
    // The input has been held to the schema; its type is lost on the way through the map of all paths.
    answer: async (input, request) => route.handler(input as Static<Schema['body']>, request, JSON_TYPE),
  })
  const post: FastifySchema = {
    ...words,
    ...(choices && { params: paramsOf(choices) }),
    body,
    response: { ...POST_REFUSALS, ...(choices && { 404: problem('No such thing') }), ...response },
  }
  app.route({
    method: 'POST',
    url: path,
    schema: post,
    ...(choices && { onRequest: holdTo(choices) }),
    handler: (request, reply) => answer(request.body, request, reply),
  })
  if (route.get === true) queryRoute(app, route, `${words.operationId}ByQuery`)
}

/**
 * A path that shows what the service knows by itself: `GET` alone, what to show as a query. Its `body` stands for that
 * query and for nothing else, so it is given as it is and not by its name: the document would list it as unused.
 */
export function referenceRoute<const Schema extends ComputingSchema>(
  app: App,
  route: Omit<ComputingRoute<Schema>, 'get'>,
): void {
  const { operationId, body } = route.schema
  app.insidePaths.set(operationId, {
    schema: body,
    answer: async (input, request) => route.handler(input as Static<Schema['body']>, request, JSON_TYPE),
  })
  queryRoute(app, route, operationId)
}

/** The handler of an input, by whatever method it came. */
function answering<Schema extends ComputingSchema>(
  app: App,
  route: ComputingRoute<Schema>,
): (input: unknown, request: FastifyRequest, reply: FastifyReply) => unknown {
  const { handler } = route
  const policyOf = policies(app, route)
  return (input, request, reply) => {
    const offered = offeredBy(route, request)
    if (offered.length > 1) addVary(reply, 'Accept')
    const chosen = mediaType(request, offered)
    const pagePolicy = policyOf(chosen)
    if (request.method === 'POST') setAnswerHeaders(reply, { ...(pagePolicy !== undefined && { pagePolicy }) })
    else if (isKept(request, reply, { publicUrl: app.publicUrl, input, mediaType: chosen, pagePolicy }))
      return reply.code(304).send()
    if (chosen !== JSON_TYPE) reply.type(chosen.startsWith('text/') ? `${chosen}; charset=utf-8` : chosen)
    // The validator has held the input to this very schema; its type is lost on the way through Fastify's generics.
    return handler(input as Static<Schema['body']>, request, chosen)
  }
}

const offeredBy = (
  { mediaTypes = [JSON_TYPE] }: Pick<ComputingRoute<ComputingSchema>, 'mediaTypes'>,
  request: FastifyRequest,
): MediaTypes => (typeof mediaTypes === 'function' ? mediaTypes(request) : mediaTypes)

type Paged = Pick<ComputingRoute<ComputingSchema>, 'style' | 'script'>

/** Media types that a page may frame, besides pages. */
const FRAMED: readonly string[] = ['image/svg+xml', 'application/pdf']

/** The policy of an answer that a page may frame, by its media type; none for any other. */
function policies(app: App, { style, script }: Paged): (mediaType: string) => string | undefined {
  let ofPage: string | undefined
  return (type) => {
    if (FRAMED.includes(type)) return documentPolicyOf(app.frameAncestors)
    if (type !== HTML_TYPE || style === undefined) return undefined
    ofPage ??= pagePolicyOf({ style: wholeStyle(style), script }, app.frameAncestors)
    return ofPage
  }
}

/** Whether a request asks for a page. What it asks for may itself be what is wrong with it. */
function asksForPage(route: Pick<ComputingRoute<ComputingSchema>, 'mediaTypes'>, request: FastifyRequest): boolean {
  try {
    return mediaType(request, offeredBy(route, request)) === HTML_TYPE
  } catch {
    return false
  }
}

function queryRoute<Schema extends ComputingSchema>(
  app: App,
  route: ComputingRoute<Schema>,
  operationId: string,
): void {
  const { choices, style, script, nameOf, wayBack } = route
  const { body, response, ...words }: ComputingSchema = route.schema
  const answer = answering(app, route)
  const policyOf = policies(app, route)
  const problemPage = (request: FastifyRequest) => {
    const policy = policyOf(HTML_TYPE)
    if (style === undefined || policy === undefined || !asksForPage(route, request)) return undefined
    const { query } = request
    return {
      style,
      script,
      theme: themeOf(query),
      policy,
      nameOf: (path: string) => nameOf?.(path, query),
      wayBack: wayBack?.(new URLSearchParams(/\?.*/.exec(request.url)?.[0])),
    }
  }
  const schemaNames = schemaNamesOf(app)
  const names = queryNames(body, schemaNames.byId)
  // The query is held to the body's own schema: by the time it is looked at, it has become a body.
  const responses = { ...GET_REFUSALS, ...(choices && { 404: problem('No such thing') }), ...response }
  const get: FastifySchema = {
    ...words,
    ...(choices && { params: paramsOf(choices) }),
    operationId,
    querystring: body,
    response: style === undefined ? responses : withPages(responses),
  }
  app.route({
    method: 'GET',
    url: route.path,
    schema: get,
    ...(choices && { onRequest: holdTo(choices) }),
    config: { queryParameters: queryParameters(names), problemPage },
    preValidation: async (request) => {
      const { body: input, faults, unread } = bodyOf(request.query, names, schemaNames)
      request.query = input
      if (faults.length === 0) return
      // All faults come at once: those of the schema too.
      const found = new FaultList()
      for (const tell of faults) found.add(tell)
      findFaults(found, input, body, schemaNames, unread)
      throw notValid(found.told(), found.more)
    },
    handler: (request, reply) => answer(request.query, request, reply),
  })
}

/** The same answers, each refusal as a page too. */
const withPages = (responses: Readonly<Record<string, object>>): Record<string, object> =>
  Object.fromEntries(
    Object.entries(responses).map(([status, response]) => [
      status,
      Number(status) < 400 ? response : withPage(response),
    ]),
  )
const withPage = ({ content, ...rest }: { readonly content?: object }): object => ({
  ...rest,
  content: { ...content, [HTML_TYPE]: { schema: Type.String({ description: 'The same in words, for a frame.' }) } },
})

type Choices = NonNullable<ComputingRoute<ComputingSchema>['choices']>

const paramsOf = (choices: Choices): TSchema =>
  Type.Object(
    Object.fromEntries(
      Object.entries(choices).map(
        ([name, { names, description }]) => [name, Type.Enum([...names], { type: 'string', description })] as const,
      ),
    ),
  )

/** Before anything is read: what the path names must be there. */
function holdTo(choices: Choices): onRequestHookHandler {
  return ({ params }, _reply, done) => {
    for (const [name, { names: known }] of Object.entries(choices)) {
      const given: unknown = Object(params)[name]
      if (typeof given === 'string' && known.includes(given)) continue
      done(new ProblemError(404, notFoundChoice(name, known)))
      return
    }
    done()
  }
}
