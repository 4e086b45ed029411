// Keeps the page for a workshop whose network drops. The page is one document with its styles and its script in it, so one
// stored answer is all that it needs, and a new build replaces the old one whole.
const STORE = 'racewright-page'

/** Whatever the query: it is for the page to read, and the service answers the same to all. */
const PAGE = '/'

/** Whoever stands at the screen waits no longer than this; then the stored page is shown. */
const PATIENCE_MS = 3_000

/** A slow network may take so long to bring a new build, while the stored page is already in use. */
const DOWNLOAD_MS = 60_000

self.addEventListener('install', (event) => event.waitUntil(installed()))
self.addEventListener('activate', (event) => event.waitUntil(activated()))
self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url)
  if (event.request.mode !== 'navigate' || origin !== self.location.origin || pathname !== PAGE) return
  const newest = newestPage()
  // It may come too late for this visit: the next one has it.
  event.waitUntil(newest.then(stored).catch(() => undefined))
  event.respondWith(pageFor(event.request, newest))
})

async function installed() {
  await stored(await newestPage())
  await self.skipWaiting()
}

async function activated() {
  const others = (await caches.keys()).filter((name) => name !== STORE)
  await Promise.all([self.clients.claim(), ...others.map((name) => caches.delete(name))])
}

/**
 * The page as the service has it now; any other answer, of a proxy say, is a failure, and so is half a page. The browser's
 * cache is passed by: there a second request waits for the end of the first, which on a bad network may never come.
 */
async function newestPage() {
  const kept = await storedPage()
  const etag = kept?.headers.get('etag')
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

const isWholePage = (text) =>
  text.includes('<meta name="application-name" content="Racewright">') && text.trimEnd().endsWith('</html>')

async function stored(page) {
  const store = await caches.open(STORE)
  await store.put(PAGE, page.clone())
}

async function storedPage() {
  const store = await caches.open(STORE)
  return store.match(PAGE)
}

async function pageFor(request, newest) {
  const late = new Promise((_, reject) => {
    setTimeout(() => reject(new Error('the service takes too long')), PATIENCE_MS)
  })
  try {
    return (await Promise.race([newest, late])).clone()
  } catch {
    // A browser that is short of room may have thrown the stored page away.
    return (await storedPage()) ?? fetch(request)
  }
}
