const ms = ({ user, system }: NodeJS.CpuUsage): number => (user + system) / 1000

/** Processor time of this thread [ms]; a Node.js before 23.9 cannot tell it, and all time that passes is taken for work. */
export const threadMs = (): number =>
  process.threadCpuUsage === undefined ? performance.now() : ms(process.threadCpuUsage())

/** Processor time of all threads of this process but this one [ms]. */
export const otherThreadsMs = (): number =>
  process.threadCpuUsage === undefined ? performance.now() : ms(process.cpuUsage()) - ms(process.threadCpuUsage())
