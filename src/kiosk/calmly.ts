/**
 * Asks once nobody has touched anything for a while.
 *
 * @param ask is to reject when its signal breaks it off
 * @param got is given what came, unless it was broken off
 * @returns breaks it off, for whoever shows something else by then
 */
export function calmly<T>(ms: number, ask: (signal: AbortSignal) => Promise<T>, got: (reply: T) => void): () => void {
  const asking = new AbortController()
  const calm = setTimeout(() => ask(asking.signal).then(got, () => undefined), ms)
  return () => {
    clearTimeout(calm)
    asking.abort()
  }
}
