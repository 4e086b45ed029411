import {
  type FastifyHttpOptions,
  type FastifyInstance,
  type FastifyPluginAsync,
  fastify,
  type RawServerDefault,
} from 'fastify'
import type { TSchema } from 'typebox'
import { Assumption } from '#src/api/assumption.ts'
import { ballSelectionRoute } from '#src/api/ball-selection/route.ts'
import { BALL_SELECTION_SCHEMAS } from '#src/api/ball-selection/schema.ts'
import { Caution } from '#src/api/caution.ts'
import { CLIMATE_SCHEMAS } from '#src/api/climate.ts'
import { DESIGN_SCHEMAS } from '#src/api/design/arrangements/all.ts'
import { designRoute } from '#src/api/design/route.ts'
import { DESIGN_INPUT_SCHEMAS } from '#src/api/design-input.ts'
import { designSearchRoute } from '#src/api/design-search/route.ts'
import { DESIGN_SEARCH_SCHEMAS } from '#src/api/design-search/schema.ts'
import { Dimension } from '#src/api/dimension.ts'
import { drawingsRoute } from '#src/api/drawings/route.ts'
import { DRAWING_SCHEMAS } from '#src/api/drawings/schema.ts'
import { FASTENERS_SCHEMAS, fastenersRoute } from '#src/api/fasteners/route.ts'
import { FIT_CORRECTION_SCHEMAS } from '#src/api/fit-correction/arrangements/all.ts'
import { fitCorrectionRoute } from '#src/api/fit-correction/route.ts'
import { HEALTH_SCHEMAS, healthRoute } from '#src/api/health/route.ts'
import { jobSheetRoute } from '#src/api/job-sheet/route.ts'
import { JOB_SHEET_SCHEMAS } from '#src/api/job-sheet/schema.ts'
import { LENGTH_FORMATS, Length, NonNegativeLength, ShownLength, SignedLength } from '#src/api/length.ts'
import { LOAD_CHECK_SCHEMAS } from '#src/api/load-check/arrangements/all.ts'
import { loadCheckRoute } from '#src/api/load-check/route.ts'
import { MAKING_INPUT_SCHEMAS } from '#src/api/making-input.ts'
import { MATERIALS_SCHEMAS, materialsRoute } from '#src/api/materials/route.ts'
import { seasonalFitRoute } from '#src/api/seasonal-fit/route.ts'
import { SEASONAL_FIT_SCHEMAS } from '#src/api/seasonal-fit/schema.ts'
import { sizeTableRoute } from '#src/api/size-table/route.ts'
import { SIZE_TABLE_SCHEMAS } from '#src/api/size-table/schema.ts'
import { Source } from '#src/api/source.ts'
import { SOURCES_SCHEMAS, sourcesRoute } from '#src/api/sources/route.ts'
import { STOCK_SIZES_SCHEMAS, stockSizesRoute } from '#src/api/stock-sizes/route.ts'
import { toleranceCheckRoute } from '#src/api/tolerance-check/route.ts'
import { TOLERANCE_CHECK_SCHEMAS } from '#src/api/tolerance-check/schema.ts'
import { UnitsName } from '#src/api/units.ts'
import { Warning } from '#src/api/warning.ts'
import { embedRoute } from '#src/embed/route.ts'
import { EMBED_SCHEMAS } from '#src/embed/schema.ts'
import { answerUnrouted, LONGEST_URL, routableUrl } from '#src/http/addresses.ts'
import { clientErrorHandler } from '#src/http/client-error.ts'
import { openConnections } from '#src/http/connections.ts'
import { errorHandler } from '#src/http/error-handler.ts'
import { HEAD_READ_BYTES } from '#src/http/head-limits.ts'
import { answerInside } from '#src/http/inside.ts'
import { callerAt, trusts } from '#src/http/ip-address.ts'
import { readJsonBodies } from '#src/http/json-body.ts'
import { answerInTurn } from '#src/http/pipelining.ts'
import { Problem } from '#src/http/problem.ts'
import { holdToProtocol } from '#src/http/protocol.ts'
import { compileWhenIdle, validation } from '#src/http/validation.ts'
import { kioskRoute } from '#src/kiosk/route.ts'
import { mcpRoute } from '#src/mcp/route.ts'
import { compress } from '#src/plugins/compression.ts'
import { readForwardedFor } from '#src/plugins/forwarded-for.ts'
import { setHeaders } from '#src/plugins/headers.ts'
import { addMetrics } from '#src/plugins/metrics.ts'
import { describe } from '#src/plugins/openapi.ts'
import { addPorts } from '#src/plugins/ports.ts'
import { shedLoad } from '#src/plugins/pressure.ts'
import { type LogStream, requestLog } from '#src/plugins/request-log.ts'
import { stopGently } from '#src/plugins/shutdown.ts'
import { addWorkers } from '#src/workers/pool.ts'
import { type Config, DEFAULTS } from './config.ts'

type Mount = { readonly route: FastifyPluginAsync; readonly prefix: string; readonly schemas?: readonly TSchema[] }

/**
 * Every path of the service, in the order of the document, with the schemas that it alone points to. A new one: its
 * folder under api/, and a line here. The schemas are added here and not in the route: Fastify makes a validator anew,
 * with all schemas in it, for every plugin that adds one.
 */
const ROUTES: readonly Mount[] = [
  { route: kioskRoute, prefix: '' },
  { route: mcpRoute, prefix: '' },
  { route: embedRoute, prefix: '', schemas: EMBED_SCHEMAS },
  { route: healthRoute, prefix: '/health', schemas: HEALTH_SCHEMAS },
  { route: designRoute, prefix: '/v1', schemas: DESIGN_SCHEMAS },
  { route: sizeTableRoute, prefix: '/v1', schemas: SIZE_TABLE_SCHEMAS },
  { route: toleranceCheckRoute, prefix: '/v1', schemas: TOLERANCE_CHECK_SCHEMAS },
  { route: fitCorrectionRoute, prefix: '/v1', schemas: FIT_CORRECTION_SCHEMAS },
  { route: ballSelectionRoute, prefix: '/v1', schemas: BALL_SELECTION_SCHEMAS },
  { route: seasonalFitRoute, prefix: '/v1', schemas: SEASONAL_FIT_SCHEMAS },
  { route: materialsRoute, prefix: '/v1', schemas: MATERIALS_SCHEMAS },
  { route: stockSizesRoute, prefix: '/v1', schemas: STOCK_SIZES_SCHEMAS },
  { route: fastenersRoute, prefix: '/v1', schemas: FASTENERS_SCHEMAS },
  { route: sourcesRoute, prefix: '/v1', schemas: SOURCES_SCHEMAS },
  { route: drawingsRoute, prefix: '/v1', schemas: DRAWING_SCHEMAS },
  { route: loadCheckRoute, prefix: '/v1', schemas: LOAD_CHECK_SCHEMAS },
  { route: jobSheetRoute, prefix: '/v1', schemas: JOB_SHEET_SCHEMAS },
  { route: designSearchRoute, prefix: '/v1', schemas: DESIGN_SEARCH_SCHEMAS },
]

/** The schemas that more than one route points to, by their `$id`. */
const SHARED_SCHEMAS: readonly TSchema[] = [
  Problem,
  UnitsName,
  Length,
  NonNegativeLength,
  SignedLength,
  ShownLength,
  ...CLIMATE_SCHEMAS,
  ...MAKING_INPUT_SCHEMAS,
  ...DESIGN_INPUT_SCHEMAS,
  Assumption,
  Dimension,
  Warning,
  Caution,
  Source,
]

type AppOptions = {
  readonly config?: Config
  /** The stream of log lines; standard output by default. */
  readonly logStream?: LogStream
  /** Further routes, which only tests have. */
  readonly routes?: readonly Mount[]
}

/** The whole service, not yet listening: what the server starts, what tests ask, what writes the document. */
export async function buildApp(options: AppOptions = {}): Promise<FastifyInstance> {
  const { config = DEFAULTS, logStream, routes = [] } = options
  const { ajv, buildValidator, pending } = validation(LENGTH_FORMATS)
  const http = {
    requestTimeout: config.requestTimeoutMs,
    headersTimeout: config.headersTimeoutMs,
    maxHeaderSize: HEAD_READ_BYTES,
    // How late a time limit may strike: Node looks at all connections every so often, by itself only each 30 s.
    connectionsCheckingInterval: Math.min(1_000, config.headersTimeoutMs / 4),
    requireHostHeader: false, // Node would answer without a word; protocol.ts says what is missing
  }
  const serverOptions: FastifyHttpOptions<RawServerDefault> = {
    ...requestLog(config.logLevel, logStream),
    ajv,
    bodyLimit: config.bodyLimitBytes,
    clientErrorHandler,
    http,
    rewriteUrl: routableUrl,
    // Beyond its limit the router would answer by itself, past every hook.
    routerOptions: { maxParamLength: LONGEST_URL },
    keepAliveTimeout: config.keepAliveTimeoutMs,
    // As long nothing may move on a connection: a caller that never reads its answers would keep them all.
    connectionTimeout: config.keepAliveTimeoutMs,
    requestTimeout: config.requestTimeoutMs,
    return503OnClosing: false, // what still arrives on an open connection is answered, and the connection closed
    // Fastify's serializer turns 3.7 into 3 in an integer, drops what the schema lacks, and is slower with many numbers.
    // Not by setSerializerCompiler, which a plugin that adds a schema of its own silently falls back from.
    schemaController: {
      compilersFactory: { buildValidator, buildSerializer: () => () => (answer) => JSON.stringify(answer) },
    },
    trustProxy: typeof config.trustProxy === 'boolean' ? config.trustProxy : [...config.trustProxy],
  }
  const app = fastify(serverOptions)
  app.decorate('textFormats', LENGTH_FORMATS)
  app.decorate('publicUrl', config.publicUrl)
  const isTrusted = trusts(config.trustProxy)
  const connections = openConnections({
    most: config.maxConnections,
    mostPerCaller: config.maxConnectionsPerAddress,
    // A trusted proxy brings the requests of all its callers.
    callerOf: (address) => (isTrusted(address) ? undefined : callerAt(address)),
  })
  connections.watch(app.server)
  const isServed = addPorts(app, config, http, connections)
  app.setErrorHandler(errorHandler)
  compress(app)
  setHeaders(app, config)
  stopGently(app, config, connections)
  // Before all else that is done for a request: it may have to wait for its turn.
  answerInTurn(app)
  readForwardedFor(app, config)
  readJsonBodies(app)
  answerUnrouted(app, isServed)
  holdToProtocol(app)
  addWorkers(app, { threads: config.workerThreads, deadlineMs: config.taskDeadlineMs })
  shedLoad(app, config)
  compileWhenIdle(app, pending)
  answerInside(app)
  // Loaded where it is asked for: a start has no time for what it does not use.
  if (config.rateLimitPerMinute > 0) await (await import('#src/plugins/rate-limit.ts')).limitRates(app, config)
  await describe(app)
  if (config.metrics) addMetrics(app)
  const mounts = [...ROUTES, ...routes]
  for (const schema of [SHARED_SCHEMAS, ...mounts.map(({ schemas = [] }) => schemas)].flat()) app.addSchema(schema)
  // One scope for all under a prefix: each costs the start as much as ten routes.
  for (const [prefix, under] of Map.groupBy(mounts, ({ prefix }) => prefix)) {
    app.register(async (scope) => void (await Promise.all(under.map(({ route }) => route(scope, {})))), { prefix })
  }
  return app
}
