import { hash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { constantBody } from '#src/http/content-coding.ts'
import { escaped } from '#src/http/html.ts'
import { PAGE } from '#src/words/kiosk/page.ts'

/** The page that a browser gets. */
export type KioskPage = {
  /** The whole page: its style sheet and its scripts stand in it. */
  readonly page: Buffer
  /** What the page may load and run: itself, and nothing from elsewhere. */
  readonly policy: string
}

type RunOwnTask = FastifyInstance['runOwnTask']

/** The project's folder: two above this module, in the sources and in the bundle alike. */
const ROOT = join(import.meta.dirname, '../..')

/**
 * The page; its script is made in a worker thread, for that takes half a second.
 *
 * @param publicUrl where people reach this service, for codes that lead back to it; null shows none
 */
export async function kioskPage(runOwnTask: RunOwnTask, publicUrl: string | null): Promise<KioskPage> {
  const text = (name: string) => readFile(join(ROOT, 'src/kiosk', name), 'utf8')
  const [script, later, page, style] = await Promise.all([
    scriptOf(runOwnTask, 'src/kiosk/main.tsx'),
    scriptOf(runOwnTask, 'src/kiosk/later.ts'),
    text('page.html'),
    text('kiosk.css'),
  ])
  return {
    page: constantBody(
      worded(page)
        .replace('name="public-url" content=""', () => `name="public-url" content="${escaped(publicUrl ?? '')}"`)
        .replace('<link rel="stylesheet" href="kiosk.css">', () => `<style>${style}</style>`)
        .replace(' async src="main.tsx">', () => ` async>${script}`)
        .replace(' src="later.ts">', () => `>${later}`),
    ),
    policy: [
      `default-src 'none'; style-src '${digestOf(style)}'; script-src '${digestOf(script)}' '${digestOf(later)}'`,
      "img-src 'self' data:; connect-src 'self'; worker-src 'self'",
      "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    ].join('; '),
  }
}

/** The worker that keeps the page, and answers for the service where that cannot be reached. */
export async function kioskWorker(runOwnTask: RunOwnTask, publicUrl: string | null): Promise<Buffer> {
  const script = await scriptOf(runOwnTask, 'src/kiosk/offline/service-worker.ts')
  return constantBody(`globalThis.publicUrl=${JSON.stringify(publicUrl)};${script}`)
}

const scriptOf = (runOwnTask: RunOwnTask, entry: string): Promise<string> =>
  runOwnTask('browserScript', { root: ROOT, entry })

/**
 * The page with its words in the place of their names.
 *
 * @throws RangeError for a name that no word has
 */
const worded = (page: string): string =>
  page.replaceAll(/\{\{(\w+)\}\}/g, (_, name: string) => {
    const found = Object.entries(PAGE).find(([known]) => known === name)
    if (found === undefined) throw new RangeError(`page.html must name words of the page, got ${name}`)
    return escaped(found[1])
  })

const digestOf = (text: string): string => `sha256-${hash('sha256', text, 'base64')}`
