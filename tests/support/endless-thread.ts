/** Stands in for `src/workers/thread.ts` in a test of threads: one of its tasks never ends. */
export function timed({ name }: { readonly name: string }): { readonly result: string; readonly ms: number } {
  while (name === 'pdf');
  return { result: name, ms: 0 }
}
