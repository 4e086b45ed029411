import { traitsOf } from '#shared/bearing/arrangements.ts'
import { Picks } from '#src/kiosk/controls.tsx'
import { fitRequest } from '#src/kiosk/job/fit-request.ts'
import { type Job, withRing } from '#src/kiosk/job/job.ts'
import { untouched, withCut, withoutReading, withReading } from '#src/kiosk/job/lathe.ts'
import { useReply } from '#src/kiosk/reply.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { NoBearing } from '#src/kiosk/waiting.tsx'
import { adviceFor, LATHE } from '#src/words/kiosk/lathe.ts'
import { Advice } from './advice.tsx'
import { CutForm } from './cut-form.tsx'
import { GrooveHistory } from './groove-history.tsx'
import { OnHand } from './on-hand.tsx'
import { ReadingForm } from './reading-form.tsx'

/** Cut, measure, and what to do next: for the ring on the lathe, from everything that was read and cut. */
export function LatheStage({ job, derived, change, show }: StageProps) {
  const { request, units, name } = derived
  const hasInner = traitsOf(derived).members === 'rings'
  const ringJob: Job = hasInner ? job : { ...job, ring: 'outer' }
  const reply = useReply('/v1/fit-correction', request && fitRequest(ringJob, request, units, hasInner))
  const sheet = useReply('/v1/job-sheet', request)
  if (request === undefined) return <NoBearing derived={derived} />
  const states = job[ringJob.ring]
  const isOf = `${name} ${ringJob.ring} ${states.length}`
  return (
    <div class="lathe">
      {hasInner && (
        <Picks
          legend={LATHE.ring}
          name="ring"
          value={job.ring}
          options={[
            { value: 'outer', label: LATHE.outer },
            { value: 'inner', label: LATHE.inner },
          ]}
          onPick={(ring: Job['ring']) => show({ ...job, ring })}
        />
      )}
      <Advice reply={reply} derived={derived} title={adviceFor(name, ringJob.ring)} />
      <div class="columns even">
        <ReadingForm
          key={`read ${isOf}`}
          ring={ringJob.ring}
          units={units}
          blanks={sheet}
          onEnter={(reading) => change(withRing(ringJob, withReading(reading)))}
        />
        <div>
          <GrooveHistory
            states={states}
            onRemove={(index) => change(withRing(ringJob, withoutReading(index)))}
            onStartAgain={() => change(withRing(ringJob, untouched))}
          />
          <OnHand job={job} units={units} change={change} />
          <CutForm
            key={`cut ${isOf}`}
            reply={reply}
            units={units}
            onCut={(cut) => change(withRing(ringJob, withCut(cut)))}
          />
        </div>
      </div>
    </div>
  )
}
