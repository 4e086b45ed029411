import { useId, useState } from 'preact/hooks'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import { withBearing } from '#src/kiosk/job/job.ts'
import { readLength, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { listOf, numberOf, part, textOf } from '#src/kiosk/json.ts'
import { LotPicture } from '#src/kiosk/pictures/lot.tsx'
import { useReply } from '#src/kiosk/reply.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing, Warnings } from '#src/kiosk/waiting.tsx'
import { BALLS } from '#src/words/kiosk/balls.ts'

/** The balls that a maker has: which of them to use, and in what order. */
export function BallsStage({ job, derived, change }: StageProps) {
  const id = useId()
  const [text, setText] = useState('')
  // As it was typed, as long as that is still the lot.
  const shown = linesOf(text).join() === job.lot.join() ? text : job.lot.join('\n')
  const { request, units, design, terms } = derived
  const unread = job.lot.find((text) => readLength(text, units) instanceof Unread)
  const needed = design?.bearing.resolved.input.balls.count ?? 0
  const isFull = traitsOf(derived).ballSet === 'full'
  const isEnough = isFull && unread === undefined && job.lot.length >= needed
  const reply = useReply('/v1/ball-selection', request && isEnough ? { design: request, measured: job.lot } : undefined)
  if (request === undefined) return <NoBearing derived={derived} />
  if (!isFull) return <p>{BALLS.apart}</p>
  return (
    <div class="columns">
      <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
        <label for={id}>{BALLS.measured(terms)}</label>
        <textarea
          id={id}
          name="lot"
          rows={10}
          inputMode="decimal"
          aria-describedby={`${id}-hint`}
          onInput={({ currentTarget }) => {
            setText(currentTarget.value)
            change({ ...job, lot: linesOf(currentTarget.value) }, 'lot')
          }}
          value={shown}
        />
        <small id={`${id}-hint`}>{BALLS.hint(terms)}</small>
        {unread !== undefined && <p class="fault">{BALLS.unread(unread)}</p>}
        {!isEnough && unread === undefined && <p>{BALLS.tooFew(job.lot.length, needed, terms)}</p>}
      </form>
      <div class="result">
        <Answered reply={reply}>
          {(answer) => {
            const chosen = listOf(answer['chosen']).map(part)
            const balls = chosen.map(({ index, diameter }) => ({
              number: numberOf(index) + 1,
              diameter: numberOf(diameter),
            }))
            return (
              <>
                <p class="summary">{textOf(answer['summary'])}</p>
                <LotPicture balls={balls} terms={terms} />
                <button
                  type="button"
                  class="go"
                  onClick={() =>
                    change(
                      withBearing(job, {
                        'balls.diameters': balls.map(({ diameter }) => diameter).join(','),
                        'balls.standardDeviation': '',
                      }),
                    )
                  }
                >
                  {BALLS.use(terms)}
                </button>
                <Warnings answer={answer} />
              </>
            )
          }}
        </Answered>
      </div>
    </div>
  )
}

/** One ball a line; blanks and semicolons part them too where no fraction is meant. */
const linesOf = (text: string): readonly string[] =>
  text
    .split(/[\n;\t]+/)
    .map((line) => withPoint(line).replaceAll(',', '.'))
    .filter((line) => line !== '')
