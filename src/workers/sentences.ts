import type { Fault } from '#src/http/problem.ts'
import type { TaskName } from './thread.ts'

/** Every sentence about work in worker threads that a caller can read. */

export const TOO_BUSY = 'The service has too much work at the moment. Try again in a second.'
/** Nobody reads it; without it the log would report a bug. */
export const CALLER_LEFT = 'The connection was closed before the answer was ready.'

export const tooMuchWork = (mostSeconds: number): string =>
  `This request takes more work than one request may (${mostSeconds} s): see \`errors\`.`

const SEARCH: Fault = {
  path: '',
  message:
    'Ask for less: shorten the lists of balls, cutters and depths, narrow the ranges of counts and bores, name fewer months of a year, or ask for fewer designs (limit, offset).',
}
const TRIALS: Fault = { path: '/trials', message: 'Ask for fewer trials, or for fewer significant digits.' }

const FEWER_MONTHS = 'Name fewer months in `making.climate`, or give the ranges of the year instead.'

/** The part of a request to reduce, by the task that takes most of an answer's work. */
const NARROWER: Readonly<Record<TaskName, Fault>> = {
  beginSearch: SEARCH,
  furtherSearch: SEARCH,
  concludeSearch: SEARCH,
  prepareTrials: TRIALS,
  runTrials: TRIALS,
  concludeTrials: TRIALS,
  fitCorrection: { path: '/readings', message: 'Send fewer readings or fewer earlier states.' },
  seasonalFit: { path: '/design/making/climate', message: FEWER_MONTHS },
  seasonDefaults: { path: '', message: FEWER_MONTHS },
  ballSelection: { path: '/measured', message: 'Send fewer measured balls.' },
  safeOffsets: {
    path: '/design/balls/count',
    message: 'Ask for a turntable of fewer balls, or for the answer as JSON.',
  },
  pdf: { path: '', message: 'Choose a larger paper size, or ask for svg or dxf.' },
  browserScript: { path: '', message: 'Try again: the page is not ready yet.' },
}

/** The part to narrow in a request that takes too much work. */
export const narrower = (task: TaskName): Fault => NARROWER[task]
