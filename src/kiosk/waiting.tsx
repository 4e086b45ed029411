import type { ComponentChildren } from 'preact'
import { noBearing, SHELL } from '#src/words/kiosk/page.ts'
import { sentencesOf } from '#src/words/kiosk/sentences.ts'
import { Messages } from './controls.tsx'
import type { DerivedBearing } from './derived-bearing.ts'
import { type Json, listOf, part, textOf } from './json.ts'
import type { Awaited } from './reply.ts'

/** What the service says, once it does; until then, and where it does not, why. */
export function Answered(of: { readonly reply: Awaited; readonly children: (body: Json) => ComponentChildren }) {
  const { reply } = of
  // That nobody answers stands above, once for the whole page.
  if (reply.kind === 'nothing' || reply.kind === 'unreached') return null
  if (reply.kind === 'waiting') return <p class="waiting">{SHELL.waiting}</p>
  if (reply.kind === 'problem') return <Messages class="refusals" title={SHELL.refused} texts={reply.messages} />
  return <>{of.children(reply.body)}</>
}

/** A summary of several sentences: the first by itself, the others as points that can be looked through. */
export function Summary({ text, isGrave = false }: { readonly text: string; readonly isGrave?: boolean }) {
  const [first, ...points] = sentencesOf(text)
  return (
    <>
      <p class={isGrave ? 'summary fault' : 'summary'}>{first}</p>
      {points.length > 0 && (
        <ul>
          {points.map((point) => (
            <li key={point}>{point}</li>
          ))}
        </ul>
      )}
    </>
  )
}

/** What the service warns of with an answer. */
export const Warnings = ({ answer }: { readonly answer: Json }) => (
  <Noticed
    notices={listOf(answer['warnings'])
      .map(part)
      .map(({ severity, message }) => ({ severity: textOf(severity), message: textOf(message) }))}
    follow={() => null}
  />
)

/** What is warned of, each in the colour of its severity, and apart from it what is only good to know, as in frames. */
export const Noticed = <Each extends { readonly severity: string; readonly message: string }>(of: {
  readonly notices: readonly Each[]
  readonly follow: (notice: Each) => ComponentChildren
}) => (
  <>
    {[false, true].map((isNote) => {
      const notices = of.notices.filter(({ severity }) => (severity === 'note') === isNote)
      return (
        notices.length > 0 && (
          <section class="warnings" key={String(isNote)}>
            <h3>{isNote ? SHELL.notes : SHELL.warnings}</h3>
            <ul>
              {notices.map((notice) => (
                <li key={notice.message} class={notice.severity}>
                  {notice.message} {of.follow(notice)}
                </li>
              ))}
            </ul>
          </section>
        )
      )
    })}
  </>
)

/** Whether an answer warns of what must not be. */
export const isGrave = (reply: Awaited): boolean =>
  reply.kind === 'answer' && listOf(reply.body['warnings']).some((warning) => part(warning)['severity'] === 'fault')

/** Why a stage has nothing to show: sizes that are still to come are no fault of the maker's. That there is no network stands above. */
export function NoBearing({ derived: { isWaiting, isUnreached, correctAt } }: { readonly derived: DerivedBearing }) {
  if (isWaiting) return <p class="waiting">{SHELL.waiting}</p>
  return isUnreached ? null : <p class="fault">{noBearing(correctAt)}</p>
}
