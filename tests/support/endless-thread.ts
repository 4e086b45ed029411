const never = new Int32Array(new SharedArrayBuffer(4))

/** Stands in for `src/workers/thread.ts` in a test of threads: one of its tasks never ends, and takes no processor from others. */
export function timed({ name }: { readonly name: string }) {
  if (name === 'pdf') Atomics.wait(never, 0, 0)
  return { result: name, ms: 0 }
}
