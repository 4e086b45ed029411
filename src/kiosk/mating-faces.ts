import { ifTooDeep } from '#src/words/kiosk/lathe.ts'
import type { Terms } from '#src/words/terms.ts'
import { type Json, listOf, numberOf, part, textOf } from './json.ts'

/**
 * What brings a split inner ring back while nobody knows whether its play is too large. Once that is known, it stands among the ways to
 * save the ring; without a play that was read, its figure would be a guess.
 */
export function facesAdvice(answer: Json, terms: Terms): string | undefined {
  const { matingFaces, message } = part(answer['adjustment'])
  const isOpen = answer['reason'] === 'cannot-be-told' || part(answer['nextReading'])['why'] === 'verdict-uncertain'
  const isRead = listOf(part(answer['input'])['readings']).some((each) => part(each)['kind'] === 'radial-play')
  return isOpen && isRead && numberOf(matingFaces) > 0 ? ifTooDeep(textOf(message), terms) : undefined
}
