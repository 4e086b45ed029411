const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** A text as it may stand between tags and in quoted attributes. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)

/** A whole document, in English, for any width of screen. */
export const page = (title: string, style: string, body: string): string =>
  [
    '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta name="color-scheme" content="light dark"><title>${escaped(title)}</title><style>${style}</style></head>`,
    `<body>${body}</body></html>\n`,
  ].join('')
