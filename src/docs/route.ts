import { hash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { lazy } from '#shared/lazy.ts'
import { pagePolicyOf } from '#src/http/answer-headers.ts'
import { ASK_AGAIN, isKept } from '#src/http/caching.ts'
import { constantBody } from '#src/http/content-coding.ts'
import { wholeStyle } from '#src/http/html.ts'
import { HTML_TYPE } from '#src/http/media-type.ts'
import type { Described } from './page.ts'
import { DOCS_STYLE } from './style.ts'

/** Beside this module, or in the sources that the bundle has two folders up. */
const SCRIPT_FILE = join(import.meta.dirname, '../../src/docs/script.js')

/**
 * A page at `/docs` on which the document can be read and tried: one file, made when it is first asked for.
 */
export function addDocsPage(app: FastifyInstance): void {
  const script = readFileSync(SCRIPT_FILE, 'utf8')
  const policy = pagePolicyOf({ style: wholeStyle(DOCS_STYLE), script }, "'self'")
  // What is on it depends on the build and on how it is set up, as the document does.
  const made = lazy(async () => {
    const { docsPage } = await import('./page.ts')
    const body = constantBody(docsPage(app.swagger() as unknown as Described, script))
    return { body, digest: hash('sha256', body) }
  })
  for (const path of ['/docs', '/docs/']) {
    app.get(path, { schema: { hide: true } }, async (request, reply) => {
      const { body, digest } = await made()
      return isKept(request, reply, {
        input: digest,
        mediaType: HTML_TYPE,
        pagePolicy: policy,
        cacheControl: ASK_AGAIN,
      })
        ? reply.code(304).send()
        : reply.type(`${HTML_TYPE}; charset=utf-8`).send(body)
    })
  }
}
