const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** A text as it may stand between tags and in quoted attributes. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)

export const THEMES = ['auto', 'light', 'dark'] as const
export type Theme = (typeof THEMES)[number]

/** The theme that a query asks for; the reader's own choice where it asks for none, or for what is none. */
export function themeOf(query: unknown): Theme {
  const { theme }: { readonly theme?: unknown } = Object(query)
  return THEMES.find((name) => name === theme) ?? 'auto'
}

/** Parts of a page besides its words. */
export type PageParts = {
  readonly style: string
  /** Its only script, at its end. */
  readonly script?: string | undefined
  readonly theme?: Theme
}

/** Sets which of the two colours of `light-dark()` a page has, where it is not the reader's own choice. */
const THEME_STYLE = THEMES.slice(1)
  .map((name) => `:root[data-theme=${name}]{color-scheme:${name}}`)
  .join('')

/** The style sheet as it stands in the page. */
export const wholeStyle = (style: string): string => style + THEME_STYLE

/** A whole document, in English, for any width of screen. */
export const page = (title: string, { style, script, theme = 'auto' }: PageParts, body: string): string =>
  [
    `<!doctype html>\n<html lang="en" data-theme="${theme}"><head><meta charset="utf-8">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title><style>${wholeStyle(style)}</style></head>`,
    `<body>${body}${script === undefined ? '' : `<script>${script}</script>`}</body></html>\n`,
  ].join('')
