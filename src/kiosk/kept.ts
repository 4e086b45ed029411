import type { Kept, Surroundings } from '#src/kiosk/job/store.ts'

/** A store of the browser that never fails: switched off or full, it keeps nothing. */
function keptIn(storage: () => Storage): Kept {
  return {
    get: (name) => {
      try {
        return storage().getItem(name) ?? undefined
      } catch {
        return undefined
      }
    },
    set: (name, text) => {
      try {
        storage().setItem(name, text)
      } catch {
        // The address has it all.
      }
    },
  }
}

export const SURROUNDINGS: Surroundings = {
  fragment: () => location.hash.slice(1),
  setFragment: (fragment) => history.replaceState(null, '', `#${fragment}`),
  browser: keptIn(() => localStorage),
  tab: keptIn(() => sessionStorage),
}
