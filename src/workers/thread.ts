import { getPriority, setPriority } from 'node:os'
import { workerData } from 'node:worker_threads'
import { threadMs } from './processor-time.ts'
import * as tasks from './tasks.ts'

/** The last step of the system's scheduler. */
const LOWEST_PRIORITY = 19

const { givesWay = 0 }: { readonly givesWay?: number } = workerData ?? {}
// On Linux a priority is a thread's own; elsewhere it would be the whole service's.
if (process.platform === 'linux' && givesWay > 0) setPriority(Math.min(LOWEST_PRIORITY, getPriority() + givesWay))

type Tasks = typeof tasks
const TASKS: Tasks = tasks
export type TaskName = keyof Tasks
export type InputOf<Name extends TaskName> = Parameters<Tasks[Name]>[0]
export type ResultOf<Name extends TaskName> = Awaited<ReturnType<Tasks[Name]>>

/** The result of a task, and how long it was at work [ms]: where the processor is short, it took longer. */
export type Timed<Result> = { readonly result: Result; readonly ms: number }

/** The tasks of a worker thread. */
export type Order<Name extends TaskName> = { readonly name: Name; readonly input: InputOf<Name> }

/** Runs a task and measures its work, apart from what others on this machine take of its time. */
export async function timed<Name extends TaskName>({ name, input }: Order<Name>): Promise<Timed<ResultOf<Name>>> {
  const task = TASKS[name] as (input: InputOf<Name>) => ResultOf<Name> | Promise<ResultOf<Name>>
  const before = threadMs()
  const result = await task(input)
  return { result, ms: threadMs() - before }
}

/** Starts a thread, if none is there. */
export const nothing = (): null => null
