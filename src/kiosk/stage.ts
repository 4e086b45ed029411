import type { Job } from '#src/kiosk/job/job.ts'
import type { DerivedBearing } from './derived-bearing.ts'

/** What every stage of the page gets. */
export interface StageProps {
  readonly job: Job
  readonly derived: DerivedBearing
  /** Takes over another job. */
  readonly change: (next: Job, field?: string) => void
  /** Shows another stage or ring of the same job. */
  readonly show: (next: Job) => void
}
