import type { Fault } from '#src/http/problem.ts'
import type { TaskName } from './thread.ts'

/** Where to ask for less, and for less of what, by the task that takes most of an answer's work. */
const NARROWER: { readonly [Name in TaskName]?: Fault } = {
  furtherSearch: {
    path: '',
    message:
      'shorten the lists of balls, cutters and depths, narrow counts and bores, name fewer months of a year, or ask for fewer designs (limit, offset)',
  },
  runTrials: { path: '/trials', message: 'ask for fewer trials, or for fewer significant digits' },
  fitCorrection: { path: '/readings', message: 'send fewer readings, or fewer earlier states' },
  seasonalFit: { path: '/climate', message: 'name fewer months, or give the ranges of the year' },
  ballSelection: { path: '/measured', message: 'send fewer measured balls' },
  pdf: { path: '', message: 'take a larger paper, or ask for svg or dxf' },
}

/** What to narrow in a request that asks for too much work. */
export const narrower = (task: TaskName): Fault => NARROWER[task] ?? { path: '', message: 'ask for less at once' }
