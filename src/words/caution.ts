import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Terms } from './terms.ts'

/** What can hurt someone, by a code for programs. */
const CAUTIONS = {
  'light-use-only':
    'For models, demonstrations and light hand-turned work. Never use it to carry people, vehicles, overhead loads or safety-critical loads. Local rules and licensed practice come first.',
  'glass-balls': ({ element }: Terms) =>
    `Glass ${element.many} can shatter and fly. Do not spin the bearing with compressed air or a drill, and do not strike a ${element.one} that sticks.`,
  turning: ({ part, raceway }: Terms) =>
    `Secure the blank, start at the lowest speed, stand out of line with it while it spins up, and wear eye and face protection. A ${part.one} with a ${raceway.one} is weaker than the blank it was cut from.`,
  dust: 'Wood dust harms the lungs, and some woods are worse than others. Collect it at the tool and wear a respirator that fits. Check the limits that apply where you are.',
  finish:
    'Ventilate while a finish dries and keep flames away. Spread oily rags flat to dry: in a heap they can catch fire by themselves.',
  sawing:
    'Lower the blade guard to the wood, keep your hands out of the line of the cut, and touch the offcut only when the saw has stopped. Wear eye and ear protection.',
  drilling: 'Clamp the wood: a bit that catches swings it. Wear no gloves or loose sleeves near the bit.',
  routing: ({ part }: Terms) =>
    `Clamp the blank and pin the jig. Unplug the router to change the bit. Take shallow passes against the rotation of the bit, and never free a ${part.one} while the bit is running.`,
  'roller-skew':
    'Rollers that turn askew jam the bearing at once and can throw it off its shaft. Let them run free of the cheeks, turn the bearing by hand first, and stop when it tightens.',
  'core-loose':
    'The core comes loose at the last cut. Slow down, leave a thin web, stop the machine, and break the core out by hand.',
  'sanding-inside': ({ raceway }: Terms) =>
    raceway.one === 'track'
      ? 'Keep your fingers out of a turning ring: hold the block by its handle, on the side where the wood runs away from your hand.'
      : 'Hold abrasive inside a turning ring by its two ends, never wound round a finger, on the side where the wood runs away from your hand.',
} as const satisfies Readonly<Record<string, string | ((terms: Terms) => string)>>

export type CautionCode = keyof typeof CAUTIONS
export const CAUTION_CODES = Object.keys(CAUTIONS) as readonly CautionCode[]

/** The names by which cautions are called where they have been read already. */
const NAMES: Readonly<Record<CautionCode, string>> = {
  'light-use-only': 'light use only',
  'glass-balls': 'glass',
  turning: 'turning',
  dust: 'dust',
  finish: 'finish',
  sawing: 'sawing',
  drilling: 'drilling',
  routing: 'routing',
  'roller-skew': 'askew rollers',
  'core-loose': 'loose core',
  'sanding-inside': 'sanding inside',
}

export const cautionName = (code: string): string => NAMES[code as CautionCode]

/** What can hurt someone with bearings of one arrangement alone. */
export const ownCautions = ({ arrangement }: { readonly arrangement?: string }): readonly CautionCode[] =>
  arrangement === 'roller' ? ['roller-skew'] : []

export function cautionSentence(code: CautionCode, terms: Terms): string {
  const sentence: string | ((terms: Terms) => string) = CAUTIONS[code]
  return typeof sentence === 'string' ? sentence : sentence(terms)
}

/** The cautions for making and using a bearing with balls of a material, those of its arrangement alone among them. */
export const cautionCodes = (
  material: BallMaterial,
  input: { readonly arrangement?: string },
): readonly CautionCode[] => [
  'light-use-only',
  ...ownCautions(input),
  ...(material === 'glass' ? (['glass-balls'] as const) : []),
  'turning',
  'dust',
  'finish',
]
