import { Counter, collectDefaultMetrics, Gauge, type Metric, Registry } from 'prom-client'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { TaskLoad } from '#src/workers/pool.ts'
import { type AnswerTimes, BUCKETS, type Series } from './answer-times.ts'

type Value = {
  readonly metricName?: string
  readonly labels: Readonly<Record<string, string | number>>
  readonly value: number
}

/** What the text of `/metrics` is made from, each time anew: the table of answers, the worker threads, and Node itself. */
export function expositionOf(
  times: AnswerTimes,
  load: () => TaskLoad,
  uncountedRequests?: () => number,
): () => Promise<string> {
  const register = new Registry()
  collectDefaultMetrics({ register })
  // Which Node it is concerns those who run it; strangers may read this page too.
  register.removeSingleMetric('nodejs_version_info')
  register.registerMetric(durations(times))
  const registers = [register]
  /** @param label of the figures where there are several */
  const add = (
    Kind: typeof Gauge | typeof Counter,
    name: string,
    help: string,
    of: () => number | Readonly<Record<string, number>>,
    label = '',
  ): void => {
    const made: Gauge | Counter = new Kind({
      name,
      help,
      labelNames: label === '' ? [] : [label],
      registers,
      collect: () => {
        const now = of()
        made.reset()
        if (typeof now === 'number') made.inc(now)
        else for (const [value, count] of Object.entries(now)) made.inc({ [label]: value }, count)
      },
    })
  }
  add(Gauge, 'racewright_worker_threads', 'Worker threads that are there.', () => load().threads)
  add(Gauge, 'racewright_tasks_running', 'Tasks that worker threads work at.', () => load().running)
  add(Gauge, 'racewright_tasks_waiting', 'Tasks that wait for a worker thread, by lane.', () => load().waiting, 'lane')
  add(Counter, 'racewright_tasks_done_total', 'Tasks that were worked out, or failed.', () => load().done)
  add(
    Counter,
    'racewright_tasks_refused_total',
    'Answers that were not worked out: for want of room (503: busy, displaced), or as too much work (422).',
    () => load().refused,
    'reason',
  )
  add(Counter, 'racewright_deadlines_missed_total', 'Answers that were not ready in time.', () => load().late)
  add(
    Counter,
    'racewright_work_estimated_seconds_total',
    'Processor time of the answers of worker threads, as estimated beforehand.',
    () => load().estimatedMs / 1000,
  )
  add(Counter, 'racewright_work_seconds_total', 'The same, as measured.', () => load().workedMs / 1000)
  add(Counter, 'racewright_workers_lost_total', 'Worker threads that ended in the midst of a task.', () => load().lost)
  add(
    Counter,
    'racewright_workers_stopped_total',
    'Worker threads that were ended because nobody waited for their task any more.',
    () => load().stopped,
  )
  if (uncountedRequests !== undefined)
    add(
      Counter,
      'racewright_requests_uncounted_total',
      'Requests that passed without being counted, as the shared store of the rate limit failed.',
      uncountedRequests,
    )
  return () => register.metrics()
}

/**
 * The table as a histogram. The library's own keeps its figures itself, at ten times the price a request; what it asks of
 * a metric is to say its values.
 */
function durations(times: AnswerTimes): Metric {
  const name = 'http_request_duration_seconds'
  const help = 'From the first byte of a request to the last of its answer, by the template of its path.'
  const get = async () => ({
    name,
    help,
    type: 'histogram',
    values: [...times.values()].flatMap((one) => valuesOf(name, one)),
  })
  return { name, help, get, reset: () => {} } as unknown as Metric
}

function valuesOf(name: string, { method, route, status, counts, seconds }: Series): readonly Value[] {
  const labels = { method, route, status }
  let total = 0
  const buckets = [...BUCKETS, '+Inf'].map((le, index): Value => {
    total += itemAt(counts, index)
    return { metricName: `${name}_bucket`, labels: { le, ...labels }, value: total }
  })
  return [
    ...buckets,
    { metricName: `${name}_sum`, labels, value: seconds },
    { metricName: `${name}_count`, labels, value: total },
  ]
}
