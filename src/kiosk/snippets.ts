import { queryOf } from './bearing-query.ts'

/** The bearing of the page for a page of others, in three ways. */
export type Snippets = { readonly image: string; readonly element: string; readonly frame: string }

/**
 * What an author pastes into a page to show a bearing.
 *
 * @param base the address of the service, without a stroke at its end
 * @param name says in words what is shown, for those who do not see it
 */
export function snippetsOf(base: string, request: object, name: string): Snippets {
  const query = queryOf(request)
  const attributes = [...new URLSearchParams(query)].map(([field, value]) => `${field}="${attribute(value)}"`)
  const [title, address] = [attribute(name), attribute(query)]
  return {
    image: `<img src="${base}/v1/drawings/assembly.svg?${address}" alt="${title}">`,
    element: `<script src="${base}/embed/racewright-1.js" defer></script>\n<racewright-bearing ${attributes.join(' ')} title="${title}"></racewright-bearing>`,
    frame: `<iframe src="${base}/embed/bearing?${address}" title="${title}"></iframe>`,
  }
}

const attribute = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;')
