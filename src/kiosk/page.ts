import { hash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { FastifyInstance, FastifyRequest } from 'fastify'

type File = { readonly type: string; readonly text: string }

/** All that a browser gets of the kiosk. */
export type Kiosk = {
  readonly page: string
  /** What the page may load and run: itself, and nothing from elsewhere. */
  readonly policy: string
  readonly serviceWorker: string
  readonly build: string
  /** The page's modules and its style sheet, by their path from the project's root. */
  readonly files: ReadonlyMap<string, File>
}

/** The project's folder: two above this module, in the sources and in the bundle alike. */
const ROOT = join(import.meta.dirname, '../..')
const ENTRY = 'src/kiosk/main.ts'
const STYLE = 'src/kiosk/kiosk.css'

/** Reads the page and its modules; the types are taken out in a worker thread, for it takes a tenth of a second. */
export async function kioskOf(runTask: FastifyInstance['runTask'], request: FastifyRequest): Promise<Kiosk> {
  const text = (path: string) => readFile(join(ROOT, path), 'utf8')
  const { build, modules } = await runTask('browserModules', { root: ROOT, entry: ENTRY }, request)
  const [page, style, serviceWorker] = await Promise.all([
    text('src/kiosk/page.html'),
    text(STYLE),
    text('src/kiosk/service-worker.js'),
  ])
  const whole = hash('sha256', build + page + style, 'base64url').slice(0, 12)
  const base = `/kiosk/${whole}`
  const imports = JSON.stringify({ imports: { '#shared/': `${base}/shared/`, '#src/': `${base}/src/` } })
  return {
    page: page.replaceAll('{{base}}', base).replace('"importmap">{}', `"importmap">${imports}`),
    policy: [
      "default-src 'none'; style-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'",
      `script-src 'self' 'sha256-${hash('sha256', imports, 'base64')}'`,
      "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    ].join('; '),
    serviceWorker,
    build: whole,
    files: new Map([
      [STYLE, { type: 'text/css', text: style }],
      ...modules.map(({ path, code }) => [path, { type: 'text/javascript', text: code }] as const),
    ]),
  }
}
