import { type Json, listOf, part, textOf } from '#src/kiosk/json.ts'
import { useReply } from '#src/kiosk/reply.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing } from '#src/kiosk/waiting.tsx'
import { SHEET } from '#src/words/job-sheet/sheet.ts'

/** The last operations of the job sheet: those after both rings fit. */
export function AssemblyStage({ derived }: StageProps) {
  const { request } = derived
  const reply = useReply('/v1/job-sheet', request)
  if (request === undefined) return <NoBearing derived={derived} />
  return (
    <Answered reply={reply}>
      {(sheet) => (
        <ol class="operations">
          {lastOf(listOf(sheet['operations']).map(part)).map((operation) => (
            <li key={textOf(operation['id'])}>
              <h3>{textOf(operation['title'])}</h3>
              <p>{textOf(operation['how'])}</p>
              <p>
                <strong>{SHEET.check}:</strong> {textOf(operation['check'])}
              </p>
              <p>
                <strong>{SHEET.mistake}:</strong> {textOf(part(operation['mistake'])['looksLike'])}
              </p>
              <p>
                <strong>{SHEET.cost}:</strong> {textOf(part(operation['mistake'])['costs'])}
              </p>
            </li>
          ))}
        </ol>
      )}
    </Answered>
  )
}

/** From the finish on: all that comes before is done when everything fits. */
const lastOf = (operations: readonly Json[]): readonly Json[] =>
  operations.slice(operations.findIndex((operation) => operation['id'] === 'finish'))
