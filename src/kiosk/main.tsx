import { render } from 'preact'
import { jobStore, LAST } from '#src/kiosk/job/store.ts'
import { App } from './app.tsx'
import { SURROUNDINGS } from './kept.ts'
import { layOutTexts } from './unbroken-text.ts'

const store = jobStore(SURROUNDINGS)
const root = document.getElementById('page')
if (root === null) throw new Error('the page has no #page')
layOutTexts()
const draw = () => render(<App store={store} />, root)
draw()
// The second script has run by then.
addEventListener('DOMContentLoaded', draw)
addEventListener('hashchange', store.readAgain)
addEventListener('storage', ({ key }) => key === LAST && store.otherKept())
// Where the page came by plain HTTP there are no service workers.
navigator.serviceWorker?.register('/service-worker.js').catch(() => undefined)
