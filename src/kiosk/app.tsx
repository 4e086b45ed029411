import type { FunctionComponent } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { EXAMPLE_JOB, STAGES, type Stage } from '#src/kiosk/job/job.ts'
import type { JobStore } from '#src/kiosk/job/store.ts'
import { later } from '#src/kiosk/second-script.ts'
import { AssemblyStage } from '#src/kiosk/stages/assembly.tsx'
import { BallsStage } from '#src/kiosk/stages/balls.tsx'
import { BearingStage } from '#src/kiosk/stages/bearing.tsx'
import { CareStage } from '#src/kiosk/stages/care.tsx'
import { LatheStage } from '#src/kiosk/stages/lathe.tsx'
import { PlaceStage } from '#src/kiosk/stages/place.tsx'
import { RunStage } from '#src/kiosk/stages/run.tsx'
import { SheetsStage } from '#src/kiosk/stages/sheets.tsx'
import { numbered, SHELL, stageLead, stageName } from '#src/words/kiosk/page.ts'
import type { Terms } from '#src/words/terms.ts'
import { Messages } from './controls.tsx'
import { CopyLink } from './copy-link.tsx'
import { type DerivedBearing, useDerivedBearing } from './derived-bearing.ts'
import { useReach } from './reach.ts'
import type { StageProps } from './stage.ts'

const STAGE_VIEWS: Readonly<Record<Stage, FunctionComponent<StageProps>>> = {
  bearing: BearingStage,
  place: PlaceStage,
  balls: BallsStage,
  run: RunStage,
  sheets: SheetsStage,
  lathe: LatheStage,
  assembly: AssemblyStage,
  care: CareStage,
}

/** The whole page. It shows the job of the store and nothing that was shown before. */
export function App({ store }: { readonly store: JobStore }) {
  const [, setCount] = useState(0)
  useEffect(() => store.subscribe(() => setCount((count) => count + 1)), [store])
  const job = store.job()
  const derived = useDerivedBearing(job.bearing)
  const View = STAGE_VIEWS[job.stage]
  const go = (stage: Stage) => store.show({ ...job, stage })
  const at = STAGES.indexOf(job.stage)
  return (
    <>
      <header>
        <h1>Racewright</h1>
        <p>{SHELL.lead}</p>
        <div class="tools">
          <button type="button" disabled={!store.canUndo()} onClick={store.undo}>
            {SHELL.undo}
          </button>
          <CopyLink job={job} />
        </div>
      </header>
      <StageList current={job.stage} terms={derived.terms} go={go} />
      <main>
        <p class="print-only">{SHELL.notToScale}</p>
        <h2>{stageName(job.stage, derived.terms)}</h2>
        <p class="lead">{stageLead(job.stage, derived.terms, derived.arrangement === 'caged')}</p>
        <p
          class={derived.name === '' ? 'bearing-name refused' : 'bearing-name'}
          id="bearing-name"
          role="status"
          aria-busy={derived.isWaiting}
        >
          {derived.name || derived.refusals[0] || (derived.isUnreached && SHELL.unreached)}
        </p>
        <OutOfReach isSaid={derived.name === '' && derived.isUnreached} />
        {job.stage !== 'bearing' && <Carried derived={derived} go={() => go('bearing')} />}
        {!isSecureContext && <p class="warning">{SHELL.insecure}</p>}
        <OtherTab store={store} />
        {later()
          ?.lostLines(store.lost())
          .map((line) => (
            <p class="fault" key={line}>
              {line}
            </p>
          ))}
        <View job={job} derived={derived} change={store.change} show={store.show} />
        {job.stage === 'bearing' && <Example change={store.change} />}
        <Steps
          at={at}
          terms={derived.terms}
          correctAt={derived.refusals.length > 0 ? derived.correctAt[0] : undefined}
          go={go}
        />
        <Messages class="cautions" title={SHELL.cautions} texts={derived.cautions} />
      </main>
    </>
  )
}

/** That the service cannot be reached, once for all answers of the stage. */
function OutOfReach({ isSaid }: { readonly isSaid: boolean }) {
  const reach = useReach()
  if (reach === 'browser') return <p class="from-here">{SHELL.here}</p>
  return reach === 'nobody' && !isSaid ? <p class="fault">{SHELL.unreached}</p> : null
}

/** What the first stage warns of: whoever opens a link at the lathe must not miss it. */
function Carried({ derived: { warnings }, go }: { readonly derived: DerivedBearing; readonly go: () => void }) {
  const words = later()?.carried
  if (words === undefined || warnings.length === 0) return null
  const told = warnings.filter(({ severity }) => severity !== 'note')
  const isBoxed = told.length > 0
  // Of what is only good to know nothing is said beside a warning: it stands where that is read.
  const count = told.length || warnings.length
  const grave = warnings.filter(({ severity }) => severity === 'fault')
  return (
    <section class={grave.length > 0 ? 'carried grave' : isBoxed ? 'carried beside' : 'beside'}>
      <Messages title={words.grave} texts={grave.map(({ message }) => message)} />
      <p>
        {words.count(count, !isBoxed)}{' '}
        <button
          type="button"
          onClick={() => {
            go()
            // Once the stage is drawn.
            setTimeout(() => document.querySelector('.warnings')?.scrollIntoView())
          }}
        >
          {words.read(count)}
        </button>
      </p>
    </section>
  )
}

/** Tabs do not change each other; but whoever reads a reading here must know that another was entered there. */
function OtherTab({ store }: { readonly store: JobStore }) {
  const other = store.other()
  return (
    <div class="other" role="status">
      {other && (
        <>
          <p class="warning">{SHELL.otherTab}</p>
          <button type="button" onClick={() => store.change({ ...other, stage: store.job().stage })}>
            {SHELL.takeOther}
          </button>
        </>
      )}
    </div>
  )
}

interface GoProps {
  readonly terms: Terms
  readonly go: (stage: Stage) => void
}

/** Every stage by its number. On a narrow screen the list is longer than the screen: the current one is pushed into it. */
function StageList({ current, terms, go }: GoProps & { readonly current: Stage }) {
  const list = useRef<HTMLOListElement>(null)
  useEffect(() => {
    const item = list.current?.children[STAGES.indexOf(current)]
    if (list.current !== null && item instanceof HTMLElement) list.current.scrollLeft = item.offsetLeft - MARGIN
  }, [current])
  return (
    <nav aria-label={SHELL.stages}>
      <ol ref={list}>
        {STAGES.map((stage, index) => (
          <li key={stage}>
            <button type="button" aria-current={stage === current ? 'step' : undefined} onClick={() => go(stage)}>
              {numbered(index + 1, stageName(stage, terms))}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  )
}

/** So much of the stage before stays in sight [px]: there is more to the left. */
const MARGIN = 60

/** To the stage before, and to the next. Of a bearing that cannot be, every stage but the first has nothing: the way back comes first. */
function Steps({ at, terms, correctAt, go }: GoProps & { readonly at: number; readonly correctAt: Stage | undefined }) {
  const [before, after] = [STAGES[at - 1], STAGES[at + 1]]
  return (
    <p class="steps">
      {correctAt && correctAt !== STAGES[at] && (
        <button type="button" class="go" onClick={() => go(correctAt)}>
          {SHELL.correct}
        </button>
      )}
      {before && (
        <button type="button" onClick={() => go(before)}>
          {SHELL.previous}: {stageName(before, terms)}
        </button>
      )}
      {after && (
        // At the lathe what comes next hangs on the readings: the advice has that button.
        <button type="button" class={correctAt || STAGES[at] === 'lathe' ? undefined : 'go'} onClick={() => go(after)}>
          {SHELL.next}: {stageName(after, terms)}
        </button>
      )}
    </p>
  )
}

/** An invented bearing to look at. */
function Example({ change }: Pick<StageProps, 'change'>) {
  return (
    <p class="example">
      <button type="button" id="example" onClick={() => change(EXAMPLE_JOB)}>
        {SHELL.example}
      </button>
      <small>
        {SHELL.exampleNote} {SHELL.replaces}
      </small>
    </p>
  )
}
