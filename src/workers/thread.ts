import * as tasks from './tasks.ts'

type Tasks = typeof tasks
const TASKS: Tasks = tasks
export type TaskName = keyof Tasks
export type InputOf<Name extends TaskName> = Parameters<Tasks[Name]>[0]
export type ResultOf<Name extends TaskName> = Awaited<ReturnType<Tasks[Name]>>

/** What a task came to, and the processor time that it took [ms]. */
export type Timed<Result> = { readonly result: Result; readonly ms: number }

/** What a worker thread is asked to do. */
export type Order<Name extends TaskName> = { readonly name: Name; readonly input: InputOf<Name> }

/** Runs a task and measures what it takes of the processor, whatever else the machine does meanwhile. */
export async function timed<Name extends TaskName>({ name, input }: Order<Name>): Promise<Timed<ResultOf<Name>>> {
  const task = TASKS[name] as (input: InputOf<Name>) => ResultOf<Name> | Promise<ResultOf<Name>>
  const before = process.threadCpuUsage()
  const result = await task(input)
  const { user, system } = process.threadCpuUsage(before)
  return { result, ms: (user + system) / 1000 }
}

/** Starts a thread, if none is there. */
export const nothing = (): null => null
