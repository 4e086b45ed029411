/** Runs what is given when its turn comes. `left` is how much work an answer still lacks, in any unit that all share. */
export type TakeTurn = <T>(left: number, run: () => Promise<T>) => Promise<T>

/**
 * So many run at the same time. Of those that wait, the one whose answer lacks least is next, and of equals the one that came
 * first: so a small answer does not wait for a large one, and of many large ones some are ready in time. If all took turns
 * instead, more of them than there is time for would all be late, and all the work for nothing.
 */
export function turns(places: number): TakeTurn {
  const waiting: { readonly left: number; readonly start: () => void }[] = []
  let free = places

  const startNext = (): void => {
    if (free === 0) return
    const least = waiting.reduce((sofar, { left }) => Math.min(sofar, left), Infinity)
    const [next] = waiting.splice(
      waiting.findIndex(({ left }) => left === least),
      1,
    )
    if (next === undefined) return
    free -= 1
    next.start()
  }

  return async (left, run) => {
    await new Promise<void>((start) => {
      waiting.push({ left, start })
      startNext()
    })
    try {
      return await run()
    } finally {
      free += 1
      // The answer that this was a part of first asks for its next, or two would go by turns after all.
      setImmediate(startNext)
    }
  }
}
