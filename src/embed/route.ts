import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import { design } from '#shared/bearing/arrangements.ts'
import { lazy } from '#shared/lazy.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { faultName } from '#src/api/fault-name.ts'
import { refusedDesign } from '#src/api/refusal.ts'
import { seasonedDesign } from '#src/api/seasoned.ts'
import { EVERY_ARRANGEMENT, servedBy } from '#src/api/served.ts'
import { ASK_AGAIN, isKept } from '#src/http/caching.ts'
import { referenceRoute } from '#src/http/computing-route.ts'
import { constantBody } from '#src/http/content-coding.ts'
import { page, themeOf } from '#src/http/html.ts'
import { HTML_TYPE } from '#src/http/media-type.ts'
import { problem } from '#src/http/problem.ts'
import { queryNames } from '#src/http/query-names.ts'
import { EMBED_VIEWS, Embedded, type EmbedView, embedRef } from './schema.ts'
import { EMBED_STYLE } from './style.ts'

const SCRIPT_TYPE = 'text/javascript'

/** The scripts are served as they are written: beside this module, or from the sources that the bundle has two folders up. */
const textOf = (name: string): string => readFileSync(join(import.meta.dirname, '../../src/embed', name), 'utf8')

/** It has its version in its name: a page of others that asks for this one gets it for as long as it exists. */
const ELEMENT = '/embed/racewright-1.js'

/** Pages for the frames of others, and a custom element that makes such a frame. */
export const embedRoute: FastifyPluginAsyncTypebox = async (app) => {
  const script = textOf('frame.js')
  referenceRoute(app, {
    path: '/embed/:view',
    choices: { view: { names: EMBED_VIEWS, description: 'What to show.' } },
    mediaTypes: [HTML_TYPE],
    style: EMBED_STYLE,
    script,
    nameOf: faultName,
    schema: {
      operationId: 'embed',
      tags: ['drawings'],
      summary: 'A bearing as a page for the frame of another page',
      description: `How do I show it on my own page? Name the view in the path and the design in the query, and put the address into an \`<iframe>\`. You get a drawing, the job sheet, or a bearing to try, light or dark; refusals come as pages too. ${servedBy(EVERY_ARRANGEMENT)}`,
      body: embedRef,
      response: { 200: Embedded, 422: problem('Cannot exist'), 503: problem('Too busy') },
    },
    handler: async (body, request) => {
      const { view } = request.params as { readonly view: EmbedView }
      // A job sheet has what is needed to make the bearing, asked for or not.
      const asked = view === 'job-sheet' ? { ...body, making: body.making ?? {} } : body
      const made = design(toDesignInput(await seasonedDesign(app, asked, request)))
      if (!made.ok) throw refusedDesign(made.error, body)
      const { embedded, titleOf } = await import('./pages.ts') // a start has no time for all that draws
      const parts = { style: EMBED_STYLE, script, theme: themeOf(body) }
      return page(titleOf(made.value), parts, embedded(view, made.value, body, app.publicUrl))
    },
  })

  const element = lazy(async () => {
    const names = queryNames({ $ref: 'EmbedRequest' }, (id) => app.getSchema(id)).map(({ name }) => name)
    const [view] = EMBED_VIEWS
    return constantBody(textOf('element.js').replace('{{names}}', names.join(' ')).replace('{{view}}', view))
  })
  app.get(ELEMENT, { schema: { hide: true } }, async (request, reply) => {
    const body = await element()
    return isKept(request, reply, { input: '', mediaType: SCRIPT_TYPE, cacheControl: ASK_AGAIN })
      ? reply.code(304).send()
      : reply.type(`${SCRIPT_TYPE}; charset=utf-8`).send(body)
  })
}
