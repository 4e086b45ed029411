import { hasPlace } from '#src/kiosk/job/bearing.ts'
import { useReply } from '#src/kiosk/reply.ts'
import { part, textOf } from '#src/kiosk/service.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing } from '#src/kiosk/waiting.tsx'
import { CARE } from '#src/words/kiosk/care.ts'
import { CarriedLoad, loadOf } from './run.tsx'

/** Where the finished bearing may stand, what it carries, and how to look after it. */
export function CareStage({ job, derived }: StageProps) {
  const { request, terms } = derived
  const isPlaced = hasPlace(job.bearing)
  const season = useReply('/v1/seasonal-fit', isPlaced && request ? { design: request } : undefined)
  const loads = useReply('/v1/load-check', loadOf(job, derived))
  if (request === undefined) return <NoBearing derived={derived} />
  return (
    <>
      <h3>{CARE.air}</h3>
      {!isPlaced && <p>{CARE.noAir}</p>}
      <Answered reply={season}>{(answer) => <p>{textOf(part(answer['band'])['message'])}</p>}</Answered>
      <h3>{CARE.load}</h3>
      {loads.kind === 'nothing' && <p>{CARE.noLoad}</p>}
      <CarriedLoad reply={loads} />
      <h3>{CARE.rest}</h3>
      <ul>
        {CARE.habits(terms).map((habit) => (
          <li key={habit}>{habit}</li>
        ))}
      </ul>
      <p>
        <small>{CARE.standing}</small>
      </p>
    </>
  )
}
