import { useEffect, useState } from 'preact/hooks'

/** Who answered last: the service, this browser in its place, or nobody. */
export type Reach = 'service' | 'browser' | 'nobody'

let reach: Reach | undefined
const listeners = new Set<() => void>()

/** Keeps who answered; undefined once that says nothing of now any more. */
export function noteReach(now: Reach | undefined): void {
  if (now === reach) return
  reach = now
  for (const listener of listeners) listener()
}

/** Whether the service is there, as far as the last question tells; undefined before there was one. */
export function useReach(): Reach | undefined {
  const [, setCount] = useState(0)
  useEffect(() => {
    const listener = () => setCount((count) => count + 1)
    listeners.add(listener)
    return () => {
      listeners.delete(listener)
    }
  }, [])
  return reach
}
