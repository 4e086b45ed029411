import { TextField } from '#src/kiosk/controls.tsx'
import { ballsIn } from '#src/kiosk/job/fit-request.ts'
import { withChoice } from '#src/kiosk/job/job.ts'
import { Unread } from '#src/kiosk/job/text.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { LATHE, latheWords } from '#src/words/kiosk/lathe.ts'

/** Other balls that the maker has: larger ones may save a groove that is too deep. */
export function OnHand({ job, derived, change }: StageProps) {
  const { units, terms } = derived
  const text = job.choices.onHand ?? ''
  const unread = ballsIn(text, units).find((each) => each instanceof Unread)
  return (
    <details open={text !== ''}>
      <summary>{latheWords(job.ring, terms).onHand}</summary>
      <TextField
        label={LATHE.onHandSizes}
        name="onHand"
        value={text}
        hint={LATHE.onHandHint(units)}
        fault={unread instanceof Unread ? unread.message : undefined}
        onInput={(typed) => change(withChoice(job, 'onHand', typed), 'onHand')}
      />
    </details>
  )
}
