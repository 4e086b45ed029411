/** The service takes at most ten seconds for an answer; a network that is silent for longer brings none. */
const LONGEST_MS = 15_000

/** A service that has too much to do says when to come back. After so many times what it says is the answer. */
const MOST_TIMES = 20
const BUSY = [429, 503]

/**
 * What the service sends, which is asked again while it has too much to do.
 *
 * @throws DOMException when `signal` breaks it off, or the network is silent
 * @throws TypeError where nothing is reached
 */
export async function fetchPatiently(
  address: string,
  { signal, ...options }: RequestInit & { readonly signal: AbortSignal },
  times = 1,
): Promise<Response> {
  const limit = AbortSignal.any([signal, AbortSignal.timeout(LONGEST_MS)])
  const response = await fetch(address, { ...options, signal: limit })
  if (!isBusy(response) || times === MOST_TIMES) return response
  const seconds = Number(response.headers.get('retry-after')) || 1
  await new Promise((resolve) => setTimeout(resolve, seconds * 1000))
  return fetchPatiently(address, { ...options, signal }, times + 1)
}

/** A proxy that says, in words of its own, that nobody is behind it knows of no time to come back. */
const isBusy = ({ status, headers }: Response): boolean =>
  BUSY.includes(status) && headers.get('content-type')?.includes('json') === true
