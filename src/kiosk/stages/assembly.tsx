import { useReply } from '#src/kiosk/reply.ts'
import { listOf, part, textOf } from '#src/kiosk/service.ts'
import type { StageProps } from '#src/kiosk/stage.ts'
import { Answered, NoBearing } from '#src/kiosk/waiting.tsx'
import { CARE } from '#src/words/kiosk/care.ts'

/** The last operations of the job sheet: those that take all of its parts. */
export function AssemblyStage({ derived }: StageProps) {
  const { request } = derived
  const reply = useReply('/v1/job-sheet', request)
  if (request === undefined) return <NoBearing derived={derived} />
  return (
    <Answered reply={reply}>
      {(sheet) => (
        <ol class="operations">
          {listOf(sheet['operations'])
            .map(part)
            .filter((operation) => operation['part'] === 'both')
            .map((operation) => (
              <li key={textOf(operation['id'])}>
                <h3>{textOf(operation['title'])}</h3>
                <p>{textOf(operation['how'])}</p>
                <p>
                  <strong>{CARE.check}</strong> {textOf(operation['check'])}
                </p>
                <p>
                  <strong>{CARE.mistake}</strong> {textOf(part(operation['mistake'])['looksLike'])}{' '}
                  {textOf(part(operation['mistake'])['costs'])}
                </p>
              </li>
            ))}
        </ol>
      )}
    </Answered>
  )
}
