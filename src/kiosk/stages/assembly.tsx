import { turningRing } from '#shared/bearing/mounting-input.ts'
import { Choice } from '#src/kiosk/controls.tsx'
import { countedIn } from '#src/kiosk/derived-bearing.ts'
import { type BearingTexts, withBearing } from '#src/kiosk/job/job.ts'
import { type Json, listOf, messagesOf, part, textOf } from '#src/kiosk/json.ts'
import { type Awaited, useReply } from '#src/kiosk/reply.ts'
import { later } from '#src/kiosk/second-script.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing } from '#src/kiosk/waiting.tsx'
import { LABELS } from '#src/words/job-sheet/labels.ts'

/** The last operations of the job sheet: those after the raceways fit, up to the care, which is a stage of its own. */
export function AssemblyStage({ job, derived, change }: StageProps) {
  const { request } = derived
  const reply = useReply('/v1/job-sheet', request)
  if (request === undefined) return <NoBearing derived={derived} />
  return (
    <>
      <Holds job={job} derived={derived} change={change} counted={countedOf(reply)} />
      <Answered reply={reply}>
        {(sheet) => (
          <ol class="operations">
            {lastOf(listOf(sheet['operations']).map(part)).map((operation) => (
              <li key={textOf(operation['id'])}>
                <h3>{textOf(operation['title'])}</h3>
                <Operation operation={operation} told={derived.cautions} />
              </li>
            ))}
          </ol>
        )}
      </Answered>
    </>
  )
}

const countedOf = (reply: Awaited): BearingTexts => (reply.kind === 'answer' ? countedIn(reply.body['assumed']) : {})

type HoldsProps = Pick<StageProps, 'job' | 'derived' | 'change'> & { readonly counted: BearingTexts }

/** How the bearing is held: what is glued, nobody opens again. What is not chosen says what stands for it. */
function Holds({ job, derived, change, counted }: HoldsProps) {
  const words = later()
  const { bearing } = job
  // Where the outer ring turns, no housing holds it.
  const isTurned = turningRing({ turns: bearing[TURNS], drive: bearing[DRIVE] } as Turned) === 'outer-ring'
  const rows = words?.holdChoices(derived.arrangement, derived.terms) ?? []
  return (
    <form autocomplete="off" onSubmit={(event) => event.preventDefault()}>
      {rows.slice(0, isTurned ? 1 : rows.length).map(({ name, label, options }) => (
        <Choice
          key={name}
          label={label}
          name={name}
          value={bearing[name] ?? ''}
          options={[{ value: '', label: words?.notChosen(counted[name]) ?? '' }, ...options]}
          onPick={(hold) => change(withBearing(job, { [name]: hold }), name)}
        />
      ))}
    </form>
  )
}

type Turned = Parameters<typeof turningRing>[0]

const MOUNTING = 'making.mounting'
const TURNS = `${MOUNTING}.turns`
const DRIVE = `${MOUNTING}.drive`

/** What comes first once the raceways fit: a cage, cheeks, the full depth of a plate's groove, or else the finish. */
const FIRST = ['cage-ring', 'cheeks', 'groove', 'finish']

const lastOf = (operations: readonly Json[]): readonly Json[] =>
  operations
    .slice(operations.findIndex((operation) => FIRST.includes(textOf(operation['id']))))
    .filter((operation) => operation['id'] !== CARE)

/** Of the operation that looks after a bearing. */
export const CARE = 'care'

/**
 * How an operation is done, with its dangers, its check and what goes wrong.
 *
 * @param of.told cautions that stand on every stage already
 */
export const Operation = ({ operation, told }: { readonly operation: Json; readonly told: readonly string[] }) => (
  <>
    {messagesOf(operation['cautions'])
      .filter((message) => !told.includes(message))
      .map((message) => (
        <p key={message}>
          <strong>{LABELS.caution}:</strong> {message}
        </p>
      ))}
    {operation['counted'] !== undefined && (
      <p>
        <strong>{LABELS.counted}:</strong> {textOf(operation['counted'])}
      </p>
    )}
    {textOf(operation['how'])
      .split('\n')
      .map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
    {later()
      ?.checksOf(operation)
      .map(([label, words]) => (
        <p key={label}>
          <strong>{label}:</strong> {words}
        </p>
      ))}
  </>
)
