/*
 * Runs in a page that stands in a frame: it tells the page around it how high it is, and where it has a form, shows what was
 * entered without being loaded anew. Without it the form still works, with its button.
 */

const PAUSE_MS = 150

const height = () => Math.ceil(document.documentElement.getBoundingClientRect().height)
const tell = () => parent.postMessage({ type: 'racewright:height', height: height() }, '*')
if (parent !== window) {
  // At once, for a browser observes nothing in a frame that is still out of sight.
  tell()
  new ResizeObserver(tell).observe(document.documentElement)
}

const form = document.querySelector('form')
let loading = new AbortController()
let pause = 0

async function show() {
  loading.abort()
  loading = new AbortController()
  const entered = [...new FormData(form)].filter(([, value]) => value !== '')
  try {
    const reply = await fetch(`${location.pathname}?${new URLSearchParams(entered)}`, { signal: loading.signal })
    const page = new DOMParser().parseFromString(await reply.text(), 'text/html')
    document.querySelector('#answer').replaceWith(page.querySelector('#answer'))
  } catch (error) {
    if (error.name !== 'AbortError') form.submit()
  }
}

form?.addEventListener('input', () => {
  clearTimeout(pause)
  pause = setTimeout(show, PAUSE_MS)
})
form?.addEventListener('submit', (event) => {
  event.preventDefault()
  void show()
})
