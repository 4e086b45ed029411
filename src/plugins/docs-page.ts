import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { type Lazy, lazy } from '#shared/lazy.ts'
import { ASK_AGAIN, isKept } from '#src/http/caching.ts'
import { constantBody } from '#src/http/content-coding.ts'
import { ProblemError } from '#src/http/problem.ts'
import { NO_FILE } from '#src/http/sentences.ts'

/** The files of the page are in their package, and beside the bundled file in the container. */
const fileOf = (name: string): string =>
  import.meta.filename.endsWith('.ts')
    ? createRequire(import.meta.filename).resolve(`@fastify/swagger-ui/static/${name}`)
    : join(import.meta.dirname, '../static', name)

type File = { readonly type: string; readonly content: Lazy<Buffer> }

/** What is served, with its media type: nothing else in that folder is. */
const FILES: ReadonlyMap<string, File> = new Map(
  Object.entries({
    'swagger-ui.css': 'text/css; charset=utf-8',
    'index.css': 'text/css; charset=utf-8',
    'swagger-ui-bundle.js': 'text/javascript; charset=utf-8',
    'favicon-32x32.png': 'image/png',
  }).map(([name, type]) => [name, { type, content: lazy(async () => constantBody(await readFile(fileOf(name)))) }]),
)

/** The page loads its own files and nothing else; only its styles are set from its script. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; " +
  "frame-ancestors 'self'; base-uri 'self'"

const [HTML, SCRIPT] = ['text/html; charset=utf-8', 'text/javascript; charset=utf-8']

const START = `SwaggerUIBundle({ url: '/openapi.json', dom_id: '#swagger-ui', deepLinking: true, validatorUrl: null })\n`

const PAGE = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="UTF-8">
<title>Racewright</title>
<link rel="stylesheet" href="/docs/static/swagger-ui.css">
<link rel="stylesheet" href="/docs/static/index.css">
<link rel="icon" type="image/png" href="/docs/static/favicon-32x32.png">
</head>
<body>
<div id="swagger-ui"></div>
<script src="/docs/static/swagger-ui-bundle.js"></script>
<script src="/docs/static/start.js"></script>
</body>
</html>
`

/**
 * A page at `/docs` on which the document can be read and tried. Its files are read when they are asked for; the plugin that
 * serves them lists the folder and loads a file server at every start, for a page that hardly anyone opens.
 */
export function addDocsPage(app: FastifyInstance): void {
  const schema = { hide: true }
  for (const path of ['/docs', '/docs/']) {
    app.get(path, { schema }, (request, reply) =>
      isHeld(request, reply, HTML, POLICY) ? reply.code(304).send() : reply.type(HTML).send(PAGE),
    )
  }
  app.get('/docs/static/start.js', { schema }, (request, reply) =>
    isHeld(request, reply, SCRIPT) ? reply.code(304).send() : reply.type(SCRIPT).send(START),
  )
  app.get<{ Params: { name: string } }>('/docs/static/:name', { schema }, async (request, reply) => {
    const { name } = request.params
    const file = FILES.get(name)
    if (file === undefined) throw new ProblemError(404, NO_FILE)
    const { type, content } = file
    if (isHeld(request, reply, type)) return reply.code(304).send()
    return reply.type(type).send(await content())
  })
}

/** Whether the caller has it already; all of it depends on the build alone. */
const isHeld = (request: FastifyRequest, reply: FastifyReply, mediaType: string, pagePolicy?: string): boolean =>
  isKept(request, reply, { input: '', mediaType, pagePolicy, cacheControl: ASK_AGAIN })
