import { newestPage, PAGE, pageFor, removeOthers, store } from './kept-page.ts'
import { answerTo, isQuestion } from './standing-in.ts'
import { type FetchEvent, SCOPE } from './worker-scope.ts'

/** Keeps the page, and answers its questions while the service cannot be reached. */
SCOPE.addEventListener('install', (event) => event.waitUntil(installed()))
SCOPE.addEventListener('activate', (event) => event.waitUntil(Promise.all([SCOPE.clients.claim(), removeOthers()])))
SCOPE.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url)
  if (url.origin !== SCOPE.location.origin) return
  if (event.request.mode === 'navigate' && url.pathname === PAGE) showPage(event)
  else if (isQuestion(url)) event.respondWith(answerTo(event.request))
})

async function installed(): Promise<void> {
  await store(await newestPage())
  await SCOPE.skipWaiting()
}

function showPage(event: FetchEvent): void {
  const newest = newestPage()
  // It may come too late for this visit: the next one has it.
  event.waitUntil(newest.then(store).catch(() => undefined))
  event.respondWith(pageFor(event.request, newest))
}
