// Keeps the page for a workshop whose network drops. What has a build in its address never changes; the page itself is
// asked for anew, and taken from the store when nobody answers.
const STORE = 'racewright-kiosk'

self.addEventListener('install', () => self.skipWaiting())
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url)
  if (event.request.method !== 'GET' || origin !== self.location.origin) return
  if (pathname.startsWith('/kiosk/')) event.respondWith(storedFirst(event.request))
  else if (pathname === '/') event.respondWith(askedFirst(event.request))
})

async function storedFirst(request) {
  const store = await caches.open(STORE)
  return (await store.match(request)) ?? kept(store, request, await fetch(request))
}

async function askedFirst(request) {
  const store = await caches.open(STORE)
  try {
    const page = await kept(store, request, await fetch(request))
    await forgetOthers(store, await page.clone().text())
    return page
  } catch (error) {
    const stored = await store.match(request)
    if (stored === undefined) throw error
    return stored
  }
}

/** Builds that the page no longer asks for. */
async function forgetOthers(store, page) {
  const [base] = /\/kiosk\/[\w-]+\//.exec(page) ?? []
  if (base === undefined) return
  for (const { url } of await store.keys()) if (url.includes('/kiosk/') && !url.includes(base)) await store.delete(url)
}

async function kept(store, request, response) {
  if (response.ok) await store.put(request, response.clone())
  return response
}
