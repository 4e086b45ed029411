import { useId, useState } from 'preact/hooks'
import { traitsOf } from '#shared/bearing/arrangements.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import { listIn, readLength, Unread, withPoint } from '#src/kiosk/job/text.ts'
import { textOf } from '#src/kiosk/json.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing, Summary, Warnings } from '#src/kiosk/waiting.tsx'
import { inUnit } from '#src/words/kiosk/page.ts'

/** The balls that a maker has: which of them to use, and in what order. */
export function BallsStage({ job, derived, change }: StageProps) {
  const id = useId()
  const [text, setText] = useState('')
  // As it was typed, as long as that is still the lot.
  const shown = linesOf(text).join() === job.lot.join() ? text : job.lot.join('\n')
  const { request, units, design, terms } = derived
  const unread = job.lot.findIndex((text) => readLength(text, units) instanceof Unread)
  const needed = design?.bearing.resolved.input.balls.count ?? 0
  const isFull = traitsOf(derived).ballSet === 'full'
  const isEnough = isFull && unread < 0 && job.lot.length >= needed
  const reply = useReply('/v1/ball-selection', request && isEnough ? { design: request, measured: job.lot } : undefined)
  if (request === undefined) return <NoBearing derived={derived} />
  const { balls: words, LotChoice: Choice } = later() ?? {}
  if (words === undefined || Choice === undefined) return null
  if (!isFull) return <p>{words.apart}</p>
  return (
    <div class="columns">
      <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
        <label for={id}>{inUnit(words.measured(terms), units)}</label>
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
        <small id={`${id}-hint`}>{words.hint(terms)}</small>
        {unread >= 0 && <p class="fault">{words.unread(unread + 1, itemAt(job.lot, unread), terms)}</p>}
        {!isEnough && unread < 0 && <p>{words.tooFew(job.lot.length, needed, terms)}</p>}
      </form>
      <div class="result">
        <Answered reply={reply}>
          {(answer) => (
            <>
              <Summary text={textOf(answer['summary'])} />
              <Choice job={job} derived={derived} change={change} answer={answer} />
              <Warnings answer={answer} />
            </>
          )}
        </Answered>
      </div>
    </div>
  )
}

/** One ball a line, or several with semicolons between them. No point or comma stays that an address could take for another. */
const linesOf = (text: string): readonly string[] => listIn(text).map((line) => withPoint(line).replaceAll(',', '.'))
