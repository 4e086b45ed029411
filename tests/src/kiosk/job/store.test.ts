import { expect, test } from 'vitest'
import { FIRST_JOB, withBearing } from '#src/kiosk/job/job.ts'
import { jobStore, type Surroundings } from '#src/kiosk/job/store.ts'

/** A browser with one store for all its tabs. */
function browser() {
  const all = new Map<string, string>()
  return (fragment = ''): Surroundings => {
    const own = new Map<string, string>()
    let now = fragment
    const kept = (map: Map<string, string>) => ({
      get: (name: string) => map.get(name),
      set: (name: string, text: string) => void map.set(name, text),
    })
    return {
      fragment: () => now,
      setFragment: (next) => {
        now = next
      },
      browser: kept(all),
      tab: kept(own),
    }
  }
}

const count = (balls: string) => withBearing(FIRST_JOB, { 'balls.count': balls })

test('a reload loses nothing: neither the job nor the way back', () => {
  const tab = browser()()
  const store = jobStore(tab)
  store.change(count('13'))
  store.change(count('14'))
  const again = jobStore(tab)
  expect(again.job()).toEqual(count('14'))
  again.undo()
  expect(again.job()).toEqual(count('13'))
  again.undo()
  expect(again.job()).toEqual(FIRST_JOB)
  expect(again.canUndo()).toBe(false)
})

test('a new tab without an address begins with the last job; after that the two do not change each other', () => {
  const tabs = browser()
  const one = jobStore(tabs())
  one.change(count('13'))
  const other = jobStore(tabs())
  expect(other.job()).toEqual(count('13'))
  other.change(count('20'))
  expect(one.job()).toEqual(count('13'))
  one.change(count('14'))
  expect(other.job()).toEqual(count('20'))
})

test('an address counts more than what the browser kept', () => {
  const tabs = browser()
  jobStore(tabs()).change(count('13'))
  expect(jobStore(tabs('v=1&units=mm&balls.count=9')).job().bearing).toEqual({ units: 'mm', 'balls.count': '9' })
})

test('what is typed into one field is one step back', () => {
  const store = jobStore(browser()())
  for (const text of ['1', '12', '123']) store.change(count(text), 'balls.count')
  store.undo()
  expect(store.job()).toEqual(FIRST_JOB)
})

test('a store that is switched off loses nothing but the next visit', () => {
  const off = { get: () => undefined, set: () => undefined }
  const store = jobStore({ ...browser()(), browser: off, tab: off })
  store.change(count('13'))
  expect(store.job()).toEqual(count('13'))
})
