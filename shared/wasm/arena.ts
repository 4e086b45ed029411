import { FUNCTION, MEMORY } from './assembler.ts'

/** What every engine has of WebAssembly, as far as it is used here: the language's own types do not know of it. */
declare const WebAssembly: {
  readonly Memory: new (size: { readonly initial: number }) => WasmMemory
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => WasmModule
  readonly Instance: new (
    module: WasmModule,
    imports: Readonly<Record<string, Readonly<Record<string, WasmMemory>>>>,
  ) => { readonly exports: Readonly<Record<string, unknown>> }
}
interface WasmMemory {
  readonly buffer: ArrayBuffer
}
type WasmModule = object

/** A memory that kernels work in, cut into arrays. */
export interface Arena {
  /** @throws RangeError where there is no room left */
  readonly array: (length: number) => Float64Array
  /** A kernel at work in this memory. */
  readonly start: (kernel: KernelSource) => Kernel
}

/** Writes a module; always the same. */
export type KernelSource = () => Uint8Array<ArrayBuffer>

/** Takes whole numbers, places of arrays among them, and answers with one. */
type Kernel = (...numbers: readonly number[]) => number

const PAGE = 65_536
/** Vectors are loaded the faster where they do not lie across two lines of the cache. */
const ALIGNED = 64

/** @param doubles that its arrays will have together, and as many arrays */
export function arenaFor(doubles: number, arrays: number): Arena {
  const memory = new WebAssembly.Memory({ initial: Math.ceil((8 * doubles + ALIGNED * arrays) / PAGE) })
  let used = 0
  return {
    array: (length) => {
      const made = new Float64Array(memory.buffer, used, length)
      used += Math.ceil((8 * length) / ALIGNED) * ALIGNED
      return made
    },
    start: (kernel) => {
      const instance = new WebAssembly.Instance(compiled(kernel), { [MEMORY]: { [MEMORY]: memory } })
      return instance.exports[FUNCTION] as Kernel
    },
  }
}

/** Each module is written and compiled once, by the first who needs it. */
const modules = new WeakMap<KernelSource, WasmModule>()

function compiled(kernel: KernelSource): WasmModule {
  const known = modules.get(kernel)
  if (known !== undefined) return known
  const made = new WebAssembly.Module(kernel())
  modules.set(kernel, made)
  return made
}
