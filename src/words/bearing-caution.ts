import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Terms } from './terms.ts'

/* What can hurt someone with any bearing of a kind. Common practice, no source. */

/** A caution in the words of an arrangement. */
export type CautionWords = string | ((terms: Terms) => string)

/** By a code for programs. */
export const BEARING_CAUTIONS = {
  'light-use-only':
    'For models, demonstrations and light hand-turned work. Never drive it with a drill or a motor. Never use it to carry people, vehicles, overhead loads or safety-critical loads. Local rules and licensed practice come first.',
  'glass-balls': ({ element }: Terms) =>
    `Glass ${element.many} can shatter and fly. Do not spin the bearing with compressed air or a drill, and do not strike a ${element.one} that sticks.`,
  turning: ({ part, raceway }: Terms) =>
    `Secure the blank, start at the lowest speed, stand out of line with it while it spins up, and wear eye and face protection. Wear no gloves, loose sleeves or jewellery, and tie back long hair. Take the tool rest out before you sand. A ${part.one} with a ${raceway.one} is weaker than the blank it was cut from.`,
  dust: 'Wood dust harms the lungs, and some woods are worse than others: they irritate the skin or make you allergic. Collect it at the tool and wear a respirator that fits. Check the limits that apply where you are.',
  finish:
    'Ventilate while a finish or a wax dries, keep flames away, and keep it off your skin. Spread rags with oil, finish or wax flat to dry outdoors, or soak them in water: in a heap they can catch fire by themselves. What the maker of the finish says comes first.',
  'roller-skew':
    'Rollers that turn askew jam the bearing at once and can throw it off its shaft. Let them run free of the cheeks, turn the bearing by hand first, and stop when it tightens.',
} as const satisfies Readonly<Record<string, CautionWords>>

export type BearingCautionCode = keyof typeof BEARING_CAUTIONS

/** What can hurt someone with bearings of one arrangement alone. */
export const ownCautions = ({ arrangement }: { readonly arrangement?: string }): readonly BearingCautionCode[] =>
  arrangement === 'roller' ? ['roller-skew'] : []

/** The cautions for making and using a bearing with balls of a material, those of its arrangement alone among them. */
export const cautionCodes = (
  material: BallMaterial,
  input: { readonly arrangement?: string },
): readonly BearingCautionCode[] => [
  'light-use-only',
  ...ownCautions(input),
  ...(material === 'glass' ? (['glass-balls'] as const) : []),
  'turning',
  'dust',
  'finish',
]

export const inTerms = (words: CautionWords, terms: Terms): string => (typeof words === 'string' ? words : words(terms))
