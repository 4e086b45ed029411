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
  /** All 0. @throws RangeError where there is no room left */
  readonly array: (length: number) => Float64Array
  /** A kernel at work in this memory. */
  readonly start: (kernel: KernelSource) => Kernel
}

/** Writes a module; always the same. */
export type KernelSource = () => Uint8Array<ArrayBuffer>

/** Takes whole numbers, places of arrays among them, and answers with one. */
type Kernel = (...numbers: readonly number[]) => number

/** A memory, and the kernels that have been started in it. */
interface Workplace {
  readonly memory: WasmMemory
  readonly kernels: Map<KernelSource, Kernel>
}

const PAGE = 65_536
/** Vectors are loaded the faster where they do not lie across two lines of the cache. */
const ALIGNED = 64

/**
 * Memories that nobody works in at the moment. They are kept because each takes 8 GB of addresses, if hardly any memory, which an
 * engine gives back late.
 */
const idle: Workplace[] = []

/**
 * Works in an arena, whose arrays are no one's afterwards.
 *
 * @param doubles that its arrays will have together, and as many arrays
 */
export function withArena<T>(doubles: number, arrays: number, use: (arena: Arena) => T): T {
  const place = workplaceFor(8 * doubles + ALIGNED * arrays)
  try {
    return use(arenaIn(place))
  } finally {
    idle.push(place)
  }
}

function workplaceFor(bytes: number): Workplace {
  const found = idle.findIndex(({ memory }) => memory.buffer.byteLength >= bytes)
  const [place] = found < 0 ? [] : idle.splice(found, 1)
  if (place !== undefined) return place
  // All that are idle are too small.
  idle.length = 0
  return { memory: new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE) }), kernels: new Map() }
}

function arenaIn({ memory, kernels }: Workplace): Arena {
  let used = 0
  return {
    array: (length) => {
      const made = new Float64Array(memory.buffer, used, length).fill(0)
      used += Math.ceil(made.byteLength / ALIGNED) * ALIGNED
      return made
    },
    start: (kernel) => {
      const started = kernels.get(kernel) ?? startedIn(memory, kernel)
      kernels.set(kernel, started)
      return started
    },
  }
}

function startedIn(memory: WasmMemory, kernel: KernelSource): Kernel {
  const instance = new WebAssembly.Instance(compiled(kernel), { [MEMORY]: { [MEMORY]: memory } })
  return instance.exports[FUNCTION] as Kernel
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
