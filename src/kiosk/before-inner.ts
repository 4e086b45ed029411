import type { Job } from '#src/kiosk/job/job.ts'
import { ringNow } from '#src/kiosk/job/lathe.ts'
import { readingsIn } from '#src/kiosk/job/reading.ts'
import type { Json } from '#src/kiosk/json.ts'
import { type BeforeInner, outerFirst, outerLost } from '#src/words/kiosk/lathe.ts'
import type { Terms } from '#src/words/terms.ts'

/** What the service says of the outer ring. */
type Outer = { readonly kind: string; readonly body?: Json }

/**
 * Why no size of the inner ring holds yet: the outer ring was not measured, or is too deep, so that whatever rescues it
 * has an inner ring of its own. Once the play was read, that is what decides.
 *
 * @param outer what the service says of the outer ring
 */
export function beforeInner(outer: Outer, { outer: states, inner }: Job, terms: Terms): BeforeInner | undefined {
  if (readingsIn(states) === 0) return outerFirst(terms)
  const isPlayRead = ringNow(inner).readings.some(({ kind }) => kind === 'radial-play')
  const isLost = outer.kind === 'answer' && outer.body?.['reason'] === 'too-deep'
  return isLost && !isPlayRead ? outerLost(terms) : undefined
}
