import type { Job } from '#src/kiosk/job/job.ts'
import { type BearingBefore, sizesChanged, withLot } from '#src/kiosk/job/lot.ts'
import { type Json, listOf, numberOf, part } from '#src/kiosk/json.ts'
import { LotPicture } from '#src/kiosk/pictures/lot.tsx'
import { BALLS } from '#src/words/kiosk/balls.ts'

/** The chosen balls, and the way to the bearing for them. */
export function LotChoice({
  job,
  derived,
  change,
  answer,
}: {
  readonly job: Job
  readonly derived: BearingBefore
  readonly change: (next: Job) => void
  /** Of the selection. */
  readonly answer: Json
}) {
  const { terms } = derived
  const next = withLot(job, answer)
  const balls = listOf(answer['chosen'])
    .map(part)
    .map(({ index, diameter }) => ({ number: numberOf(index) + 1, diameter: numberOf(diameter) }))
  return (
    <>
      <LotPicture balls={balls} terms={terms} />
      <p>{BALLS.changes(sizesChanged(derived, next), terms)}</p>
      <button type="button" class="go" onClick={() => change(next)}>
        {BALLS.use(terms)}
      </button>
    </>
  )
}
