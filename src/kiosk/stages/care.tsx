import { hasPlace } from '#src/kiosk/job/bearing.ts'
import { type Json, listOf, part, textOf } from '#src/kiosk/json.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, isGrave, NoBearing } from '#src/kiosk/waiting.tsx'
import { CARE, Operation } from './assembly.tsx'
import { CarriedLoad, loadOf } from './run.tsx'

/** Where the finished bearing may stand, what it carries, and how to look after it. */
export function CareStage({ job, derived }: StageProps) {
  const { request } = derived
  const isPlaced = hasPlace(job.bearing)
  const season = useReply('/v1/seasonal-fit', isPlaced && request ? { design: request } : undefined)
  const loads = useReply('/v1/load-check', loadOf(job, derived))
  const sheet = useReply('/v1/job-sheet', request)
  const words = later()?.care
  if (request === undefined) return <NoBearing derived={derived} />
  if (words === undefined) return null
  const carried = (
    <>
      <h3>{words.load}</h3>
      {loads.kind === 'nothing' && <p>{words.noLoad}</p>}
      <CarriedLoad reply={loads} />
    </>
  )
  return (
    <>
      {isGrave(loads) && carried}
      <h3>{words.air}</h3>
      {!isPlaced && <p>{words.noAir}</p>}
      <Answered reply={season}>
        {(answer) => <p>{[textOf(part(answer['band'])['message']), words.stiff(...stoppedAt(answer))].join(' ')}</p>}
      </Answered>
      {!isGrave(loads) && carried}
      <h3>{words.rest}</h3>
      <Answered reply={sheet}>
        {({ operations }) =>
          listOf(operations)
            .map(part)
            .filter(({ id }) => id === CARE)
            .map((operation) => <Operation key={CARE} operation={operation} told={derived.cautions} />)
        }
      </Answered>
      <p>
        <small>{words.standing}</small>
      </p>
    </>
  )
}

/** Whether anything stops the bearing in drier and in damper air. */
function stoppedAt(answer: Json): [boolean, boolean] {
  const { min, max } = part(answer['band'])
  return [listOf(part(min)['stoppedBy']).length > 0, listOf(part(max)['stoppedBy']).length > 0]
}
