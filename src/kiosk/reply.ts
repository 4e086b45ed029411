import { useEffect, useState } from 'preact/hooks'
import { calmly } from './calmly.ts'
import { noteReach } from './reach.ts'
import { ask, type Reply } from './service.ts'

/** So long nobody touches anything before the page asks. */
const CALM_MS = 250

/** A reply to what is asked now, or that it is still to come. There is never a reply to what was asked before. */
export type Awaited = Reply | { readonly kind: 'waiting' } | { readonly kind: 'nothing' }

interface Kept {
  readonly question: string
  readonly reply: Reply
}

/**
 * What the service says of a question. Each reply is kept with its question, and shown for that one alone: as soon as
 * anything in the question changes, it is gone.
 *
 * @param body undefined where there is nothing to ask
 */
export function useReply(path: string, body: object | undefined): Awaited {
  const question = body === undefined ? undefined : `${path} ${JSON.stringify(body)}`
  const [kept, setKept] = useState<Kept>()
  const [tries, setTries] = useState(0)
  const isUnreached = kept?.question === question && kept?.reply.kind === 'unreached'

  useEffect(() => {
    if (question === undefined || body === undefined) return
    return calmly(
      CALM_MS,
      (signal) => whenWhole().then(() => ask(path, body, signal)),
      (reply) => setKept({ question, reply }),
    )
  }, [question, tries])

  // A network that comes back brings the answer by itself.
  useEffect(() => {
    if (!isUnreached) return
    const again = () => {
      noteReach(undefined)
      setTries((count) => count + 1)
    }
    addEventListener('online', again)
    return () => removeEventListener('online', again)
  }, [isUnreached])

  if (question === undefined) return { kind: 'nothing' }
  return kept?.question === question ? kept.reply : { kind: 'waiting' }
}

/** Once the whole document is there, and so the second script. */
const whenWhole = (): Promise<unknown> =>
  document.readyState === 'loading'
    ? new Promise((resolve) => addEventListener('DOMContentLoaded', resolve, { once: true }))
    : Promise.resolve()
