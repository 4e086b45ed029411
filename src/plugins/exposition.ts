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
export function expositionOf(times: AnswerTimes, load: () => TaskLoad): () => Promise<string> {
  const register = new Registry()
  collectDefaultMetrics({ register })
  // Which Node it is concerns those who run it; strangers may read this page too.
  register.removeSingleMetric('nodejs_version_info')
  register.registerMetric(durations(times))
  const registers = [register]
  const gauge = (name: string, help: string, of: (now: TaskLoad) => number): void => {
    const made: Gauge = new Gauge({ name, help, registers, collect: () => made.set(of(load())) })
  }
  const counter = (name: string, help: string, of: (now: TaskLoad) => number): void => {
    const made: Counter = new Counter({
      name,
      help,
      registers,
      collect: () => {
        made.reset()
        made.inc(of(load()))
      },
    })
  }
  gauge('racewright_worker_threads', 'Worker threads that are there.', ({ threads }) => threads)
  gauge('racewright_tasks_running', 'Tasks that worker threads work at.', ({ running }) => running)
  gauge('racewright_tasks_waiting', 'Tasks that wait for a worker thread.', ({ waiting }) => waiting)
  counter('racewright_tasks_done_total', 'Tasks that were worked out, or failed.', ({ done }) => done)
  counter(
    'racewright_tasks_refused_total',
    'Tasks for which there was no room: answered 503.',
    ({ refused }) => refused,
  )
  counter('racewright_workers_lost_total', 'Worker threads that ended in the midst of a task.', ({ lost }) => lost)
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
