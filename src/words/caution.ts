import type { Terms } from './terms.ts'

export const CAUTION_CODES = [
  'light-use-only',
  'glass-balls',
  'turning',
  'dust',
  'finish',
  'sawing',
  'drilling',
  'routing',
  'roller-skew',
  'core-loose',
  'sanding-inside',
] as const
export type CautionCode = (typeof CAUTION_CODES)[number]

/** What can hurt someone, and what to do about it. */
export function cautionSentence(code: CautionCode, { element, raceway, part }: Terms): string {
  switch (code) {
    case 'light-use-only':
      return 'For models, demonstrations and light work turned by hand. Never use it to carry people, vehicles, or overhead or safety-critical loads. Local rules and licensed practice come first.'
    case 'glass-balls':
      return `Glass ${element.many} can shatter and fly. Do not spin the bearing with compressed air or a drill, and do not strike a ${element.one} that sticks.`
    case 'turning':
      return `Secure the blank, start at the lowest speed, stand out of its plane while it spins up, and wear eye and face protection. A ${part.one} with a ${raceway.one} is weaker than the blank it came from.`
    case 'dust':
      return 'Wood dust harms the lungs, and some woods are worse than others: collect it at the tool, and wear a respirator that fits. Check the limits that apply where you are.'
    case 'finish':
      return 'Ventilate the room while a finish dries, and keep flames away. Spread oily rags flat to dry: in a heap they can catch fire by themselves.'
    case 'sawing':
      return 'Set the blade guard down to the wood, and keep your hands out of the line of the cut. Let the saw stop before you touch the offcut. Wear eye and ear protection.'
    case 'drilling':
      return 'Clamp the wood: a bit that catches swings it. Wear no gloves or loose sleeves near the bit.'
    case 'routing':
      return `Clamp the blank and pin the jig. Unplug the router before you change the bit. Take shallow passes against the rotation of the bit, and never free a ${part.one} while the bit is still running.`
    case 'roller-skew':
      return 'Rollers that run askew jam the bearing at once and can throw it off its shaft. Let them run free of the cheeks, turn the bearing by hand first, and stop when it tightens.'
    case 'core-loose':
      return 'The core comes loose at the last cut. Slow down, leave a thin web, stop, and break it out by hand with the machine at rest.'
    case 'sanding-inside':
      return 'Hold abrasive inside a turning ring by its two ends, never wound round a finger, on the side where the wood runs away from your hand.'
    default:
      return code satisfies never
  }
}
