import { traitsOf } from '#shared/bearing/arrangements.ts'
import { Picks } from '#src/kiosk/controls.tsx'
import { fitRequest } from '#src/kiosk/job/fit-request.ts'
import { type Job, withRing } from '#src/kiosk/job/job.ts'
import { ringNow, untouched, withCut, withoutReading, withReading } from '#src/kiosk/job/lathe.ts'
import { readingsIn } from '#src/kiosk/job/reading.ts'
import { part } from '#src/kiosk/json.ts'
import { type Awaited, useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { NoBearing } from '#src/kiosk/waiting.tsx'
import { adviceFor, LATHE } from '#src/words/kiosk/lathe.ts'
import { SHELL, stageName } from '#src/words/kiosk/page.ts'
import { Advice, Go, GrooveNow } from './advice.tsx'
import { CutForm } from './cut-form.tsx'
import { OnHand } from './on-hand.tsx'
import { type Asked, ReadingForm } from './reading-form.tsx'

/** Cut, measure, and what to do next: for the ring on the lathe, from everything that was read and cut. */
export function LatheStage({ job, derived, change, show }: StageProps) {
  const { request, arrangement, units, terms, name, design } = derived
  const hasInner = traitsOf(derived).members === 'rings'
  const ringJob: Job = hasInner ? job : { ...job, ring: 'outer' }
  const { ring } = ringJob
  // The cage keeps the balls apart, so their gap says nothing of the outer groove.
  const isOuterByGap = traitsOf(derived).ballSet === 'full'
  const isByGap = ring === 'inner' || isOuterByGap
  const reply = useReply(
    '/v1/fit-correction',
    isByGap && request ? fitRequest(ringJob, request, units, hasInner) : undefined,
  )
  const isInnerByGap = ring === 'inner' && isOuterByGap
  const outer = useReply(
    '/v1/fit-correction',
    isInnerByGap && request ? fitRequest({ ...job, ring: 'outer' }, request, units, hasInner) : undefined,
  )
  const sheet = useReply('/v1/job-sheet', request)
  if (request === undefined || design === undefined) return <NoBearing derived={derived} />
  const title = adviceFor(name, hasInner ? LATHE[ring] : terms.part.many)
  const states = job[ring]
  const isOf = `${name} ${ring} ${states.length}`
  // What is entered far below the advice changes it: it comes into sight.
  const take = (entered: Parameters<typeof withRing>[1]) => {
    change(withRing(ringJob, entered))
    document.getElementById('advice')?.scrollIntoView({ block: 'nearest' })
  }
  const toRing = (picked: Job['ring']) => show({ ...job, ring: picked })
  const next =
    hasInner && ring === 'outer'
      ? { label: later()?.toInner, go: () => toRing('inner') }
      : { label: `${SHELL.next}: ${stageName('assembly', terms)}`, go: () => show({ ...job, stage: 'assembly' }) }
  const isRead = states.length > 1 || readingsIn(states) > 0
  const before = isInnerByGap ? later()?.beforeInner(outer, job, terms) : undefined
  const isCutNext = before === undefined && reply.kind === 'answer' && reply.body['action'] === 'cut'
  const cut = (
    <CutForm
      key={`cut ${isOf}`}
      reply={reply}
      units={units}
      ofCut={terms.ofCut}
      isAdvised={isCutNext}
      last={states.findLast((state) => state.cut !== undefined)?.cut?.with}
      onCut={(made) => take(withCut(made))}
    />
  )
  const { Besides, GrooveHistory, ToPlug } = later() ?? {}
  const besides = Besides && <Besides derived={derived} toSheets={() => show({ ...job, stage: 'sheets' })} />
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
          onPick={toRing}
        />
      )}
      {isByGap ? (
        <>
          <div>
            <Advice
              reply={reply}
              derived={derived}
              title={title}
              isLone={readingsIn(states) === 1}
              before={before}
              toOuter={() => toRing('outer')}
              next={next}
            />
            {isCutNext && cut}
            {besides}
          </div>
          <ReadingForm
            key={`read ${isOf}`}
            ring={ring}
            units={units}
            arrangement={arrangement}
            asked={askedIn(reply)}
            last={ringNow(states).readings.at(-1)?.kind}
            blanks={sheet}
            onEnter={(reading) => take(withReading(reading))}
          />
          <div>
            <p>{later()?.backOnLathe(terms)}</p>
            {isRead && <GrooveNow reply={reply} derived={derived} />}
            {GrooveHistory && (
              <GrooveHistory
                states={states}
                ring={ring}
                units={units}
                terms={terms}
                onRemove={(index) => change(withRing(ringJob, withoutReading(index)))}
                onStartAgain={() => change(withRing(ringJob, untouched))}
              />
            )}
            <OnHand job={ringJob} derived={derived} change={change} show={show} />
            {!isCutNext && cut}
          </div>
        </>
      ) : (
        <>
          {ToPlug && (
            <ToPlug derived={derived} title={title}>
              <Go {...next} />
            </ToPlug>
          )}
          {besides}
        </>
      )}
    </div>
  )
}

/** What the advice asks to read next; undefined until there is advice. */
function askedIn(reply: Awaited): Asked | undefined {
  if (reply.kind !== 'answer') return undefined
  const { kind, ballsLeftOut, count } = part(reply.body['askedReading'])
  const second = ballsLeftOut ?? count
  return typeof kind === 'string' ? { kind, ...(second !== undefined && { second: String(second) }) } : {}
}
