import { fetchPatiently } from './fetch-patiently.ts'

/** The views of a figure, without its page. */
const VIEWS = /<div class="narrow">.*<\/div>(?=<figcaption>)/s

/**
 * The views of a drawing as a part of the page, whose style sheet then decides on its colours: beside each other as there is room,
 * for the text of a whole sheet is too small on most screens. Undefined where it cannot be had.
 *
 * @param address of its page
 * @throws DOMException when `signal` breaks it off
 */
export async function fetchDrawing(address: string, signal: AbortSignal): Promise<Element | undefined> {
  try {
    const response = await fetchPatiently(address, { signal })
    // What stands between page and service has pages of its own, and they are no drawings. A style sheet would be refused.
    const [views = ''] = VIEWS.exec(await response.text()) ?? []
    return new DOMParser().parseFromString(views, 'text/html').body.firstElementChild ?? undefined
  } catch (error) {
    if (signal.aborted) throw error
    return undefined
  }
}
