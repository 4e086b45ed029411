import { fetchPatiently } from './fetch-patiently.ts'

/**
 * A drawing of the service as a part of the page, whose style sheet then decides on its colours; undefined where it cannot
 * be had.
 *
 * @param address of its SVG file
 * @throws DOMException when `signal` breaks it off
 */
export async function fetchDrawing(address: string, signal: AbortSignal): Promise<Element | undefined> {
  try {
    const response = await fetchPatiently(address, { signal })
    const { documentElement } = new DOMParser().parseFromString(await response.text(), 'image/svg+xml')
    // What stands between page and service has pages of its own, and they are no drawings.
    return documentElement.localName === 'svg' ? documentElement : undefined
  } catch (error) {
    if (signal.aborted) throw error
    return undefined
  }
}
