/** A value that takes a while to make, is made when it is first asked for, and is kept only if that went well. */
export type Lazy<Value> = {
  (): Promise<Value>
  /** The value as far as anyone has asked for it, without making it: for whoever has to close it. */
  started(): Promise<Value> | undefined
}

/**
 * Makes a value once, on first use. All who ask while it is being made wait for the same one. If making it fails, they all
 * get the error and the next to ask starts again: a shortage that has passed, of file descriptors for example, must not
 * last for the life of the process.
 *
 * @param make makes the value; it may throw or reject
 */
export function lazy<Value>(make: () => Promise<Value>): Lazy<Value> {
  let kept: Promise<Value> | undefined
  const get = (): Promise<Value> => {
    if (kept !== undefined) return kept
    const making = (async () => make())()
    kept = making
    making.catch(() => {
      kept = undefined
    })
    return making
  }
  return Object.assign(get, { started: () => kept })
}
