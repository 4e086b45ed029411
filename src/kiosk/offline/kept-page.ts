/*
 * Keeps the page for a workshop whose network drops. The page is one document with its styles and its script in it, so one
 * stored answer is all that it needs, and a new build replaces the old one whole.
 */

const STORE = 'racewright-page'

/** Whatever the query: it is for the page to read, and the service answers the same to all. */
export const PAGE = '/'

/** Whoever stands at the screen waits no longer than this; then the stored page is shown. */
const PATIENCE_MS = 3_000

/** A slow network may take so long to bring a new build, while the stored page is already in use. */
const DOWNLOAD_MS = 60_000

/**
 * The page as the service has it now; any other answer, of a proxy say, is a failure, and so is half a page. The browser's
 * cache is passed by: there a second request waits for the end of the first, which on a bad network may never come.
 */
export async function newestPage(): Promise<Response> {
  const kept = await storedPage()
  const etag = kept?.headers.get('ETag')
  const response = await fetch(PAGE, {
    cache: 'no-store',
    redirect: 'error',
    headers: etag ? { 'if-none-match': etag } : {},
    signal: AbortSignal.timeout(DOWNLOAD_MS),
  })
  if (response.status === 304 && kept !== undefined) return kept
  const text = await response.clone().text()
  if (response.status !== 200 || !isWholePage(text)) throw new Error(`the answer ${response.status} is not the page`)
  return response
}

const isWholePage = (text: string): boolean =>
  text.includes('<meta name="application-name" content="Racewright">') && text.trimEnd().endsWith('</html>')

export async function store(page: Response): Promise<void> {
  const kept = await caches.open(STORE)
  await kept.put(PAGE, page.clone())
}

async function storedPage(): Promise<Response | undefined> {
  const kept = await caches.open(STORE)
  return kept.match(PAGE)
}

/** Removes what older builds kept under other names. */
export async function removeOthers(): Promise<void> {
  const others = (await caches.keys()).filter((name) => name !== STORE)
  await Promise.all(others.map((name) => caches.delete(name)))
}

/** The newest page where it comes in time, else the stored one. */
export async function pageFor(request: Request, newest: Promise<Response>): Promise<Response> {
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error('the service takes too long')), PATIENCE_MS)
  })
  try {
    return (await Promise.race([newest, late])).clone()
  } catch {
    // A browser that is short of room may have thrown the stored page away.
    return (await storedPage()) ?? fetch(request)
  }
}
