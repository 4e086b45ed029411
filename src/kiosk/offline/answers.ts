import { fitCorrection } from '#shared/questions/fit/fit-correction.ts'
import { safeOffsets } from '#shared/questions/load/arrangements/safe-offsets.ts'
import { beginSearch, concludeSearch, furtherSearch } from '#shared/questions/search/design-search.ts'
import { seasonDefaults } from '#shared/questions/season/season-defaults.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { ballSelection } from '#shared/questions/selection/ball-selection.ts'
import { concludeTrials, prepareTrials, runTrials } from '#shared/questions/tolerance/tolerance-check.ts'
import { ballSelectionRoute } from '#src/api/ball-selection/route.ts'
import { designRoute } from '#src/api/design/route.ts'
import { designSearchRoute } from '#src/api/design-search/route.ts'
import { drawingsRoute } from '#src/api/drawings/route.ts'
import { fitCorrectionRoute } from '#src/api/fit-correction/route.ts'
import { jobSheetRoute } from '#src/api/job-sheet/route.ts'
import { loadCheckRoute } from '#src/api/load-check/route.ts'
import { materialsRoute } from '#src/api/materials/route.ts'
import { seasonalFitRoute } from '#src/api/seasonal-fit/route.ts'
import { sizeTableRoute } from '#src/api/size-table/route.ts'
import { toleranceCheckRoute } from '#src/api/tolerance-check/route.ts'
import type { TaskName } from '#src/workers/thread.ts'
import type { BrowserRoute } from './computing-route.ts'

/*
 * The paths of the service, answered in a browser by the routes themselves: the same sentences, the same figures. What only a
 * server can make, a PDF, is not among them.
 */

const ROUTES = [
  designRoute,
  sizeTableRoute,
  toleranceCheckRoute,
  fitCorrectionRoute,
  ballSelectionRoute,
  seasonalFitRoute,
  materialsRoute,
  drawingsRoute,
  loadCheckRoute,
  jobSheetRoute,
  designSearchRoute,
] as const

/** What a server runs in its threads. A task that is not here yet does not compile. */
const TASKS: Readonly<Record<Exclude<TaskName, 'pdf' | 'browserScript'>, (input: never) => unknown>> = {
  ballSelection,
  beginSearch,
  concludeSearch,
  concludeTrials,
  fitCorrection,
  furtherSearch,
  prepareTrials,
  runTrials,
  safeOffsets,
  seasonDefaults,
  seasonalFit,
}

type RunPart = (name: string, input: never) => Promise<unknown>

const runPart: RunPart = async (name, input) => {
  const task = Object.entries(TASKS).find(([known]) => known === name)?.[1]
  if (task === undefined) throw new RangeError(`name must be that of a task that a browser has, got ${name}`)
  return task(input)
}

/** The service writes it at the head of the worker. */
const { publicUrl: PUBLIC_URL = null } = globalThis as { readonly publicUrl?: string | null }

/** The service as far as its routes ask for it. */
function browserService(): { readonly routes: readonly BrowserRoute[] } {
  const routes: BrowserRoute[] = []
  const app = {
    routes,
    frameAncestors: false,
    publicUrl: PUBLIC_URL,
    runTask: runPart,
    inParts: (_request: object, _expected: object, make: (run: RunPart, atOnce: number) => unknown) => make(runPart, 1),
  }
  for (const route of ROUTES) (route as unknown as (app: object) => void)(app)
  return { routes }
}

/** An answer without HTTP. */
export interface LocalAnswer {
  readonly status: number
  readonly mediaType: string
  readonly body: string
}

interface LocalRequest {
  readonly method: 'GET' | 'POST'
  /** Without the version at its beginning: `/design`. */
  readonly path: string
  readonly input: object
}

const { routes } = browserService()

/**
 * The answer of a path to an input that the page has read already; undefined where only the service has one.
 *
 * @throws Error for an input that the page would not send
 */
export async function localAnswer({ method, path, input }: LocalRequest): Promise<LocalAnswer | undefined> {
  const found = routeOf(path)
  if (found === undefined) return undefined
  const { route, params } = found
  const request = { method, params, query: input, body: input, headers: {} }
  const offered = typeof route.mediaTypes === 'function' ? route.mediaTypes(request) : route.mediaTypes
  const mediaType = offered?.[0] ?? JSON_TYPE
  if (mediaType === PDF_TYPE) return undefined
  try {
    const body = await route.handler(input, request, mediaType)
    return { status: 200, mediaType, body: typeof body === 'string' ? body : JSON.stringify(body) }
  } catch (error) {
    const { statusCode, faults, message } = Object(error)
    if (statusCode === undefined) throw error
    const problem = { status: statusCode, detail: message, errors: faults }
    return { status: statusCode, mediaType: JSON_TYPE, body: JSON.stringify(problem) }
  }
}

const JSON_TYPE = 'application/json'
const PDF_TYPE = 'application/pdf'

interface Found {
  readonly route: BrowserRoute
  readonly params: Readonly<Record<string, string>>
}

function routeOf(path: string): Found | undefined {
  for (const route of routes) {
    const pattern = route.path.replaceAll(/:(\w+)/g, '(?<$1>[\\w-]+)').replaceAll('.', '\\.')
    const match = new RegExp(`^${pattern}$`).exec(path)
    const params = { ...match?.groups }
    const isKnown = Object.entries(params).every(
      ([name, value]) => route.choices?.[name]?.names.includes(value) ?? true,
    )
    if (match !== null && isKnown) return { route, params }
  }
  return undefined
}
