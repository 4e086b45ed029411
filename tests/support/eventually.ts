import { vi } from 'vitest'

/** Far longer than anything takes on a machine that has too much to do: what has not come by then never will. */
const PATIENCE_MS = 300_000

/** Waits for what a test expects to come, looking every so many milliseconds. */
export const eventually = <Seen>(look: () => Seen | Promise<Seen>, interval = 30): Promise<Seen> =>
  vi.waitFor(look, { timeout: PATIENCE_MS, interval })
