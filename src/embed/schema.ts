import { Type } from 'typebox'
import { type DesignRequest, designRequests } from '#src/api/design-input.ts'
import { choiceOf, text } from '#src/api/schema.ts'
import { engine, paper } from '#src/api/sheet-options.ts'
import type { Paper } from '#src/drawings/papers.ts'
import { VIEWS } from '#src/drawings/view.ts'
import { THEMES, type Theme } from '#src/http/html.ts'
import { HTML_TYPE } from '#src/http/media-type.ts'

/** Views for the pages of others: a bearing to try, a drawing of it, its job sheet. */
export const EMBED_VIEWS = ['bearing', ...VIEWS, 'job-sheet'] as const
export type EmbedView = (typeof EMBED_VIEWS)[number]

export const EMBED_SCHEMAS = designRequests('Embed', 'A bearing to show in a page of others.', {
  theme: Type.Optional(choiceOf<Theme>("Light, dark, or (`auto`) the reader's own choice. Default: auto.", THEMES)),
  paper,
  engine,
})

export type EmbedRequest = DesignRequest & { readonly theme?: Theme; readonly paper?: Paper }
export const embedRef = Type.Unsafe<EmbedRequest>(Type.Ref('EmbedRequest'))

export const Embedded = {
  description: 'A page for a frame. It tells the page around it its height, by `postMessage`.',
  content: { [HTML_TYPE]: { schema: text('The page.') } },
} as const
