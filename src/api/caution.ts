import { type Static, Type } from 'typebox'
import type { Traits } from '#shared/bearing/arrangement.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SettledBalls } from '#shared/bearing/resolve.ts'

export const Caution = Type.Object(
  {
    code: Type.String({ description: 'A name for programs.' }),
    message: Type.String({ description: 'The caution in words.' }),
  },
  { $id: 'Caution', description: 'What can hurt someone. Local rules and licensed practice come first.' },
)
export type Caution = Static<typeof Caution>

const MESSAGES = {
  'light-use-only':
    'For models, demonstrations and light hand-turned work. Never to carry people, vehicles, overhead or safety-critical loads. Local rules and licensed practice come first.',
  'glass-balls':
    'Glass balls can shatter and fly. Do not spin the bearing with compressed air or a drill, and do not strike a ball that sticks.',
  turning:
    'Secure the blank, start at the lowest speed, stand out of its plane while it spins up, and wear eye and face protection. A ring with a groove is weaker than the blank it came from.',
  dust: 'Wood dust harms the lungs and some woods are worse: collect it at the tool and wear a respirator that fits. Check the limits that apply where you are.',
  finish:
    'Ventilate while a finish dries, keep flames away, and spread oily rags flat to dry: in a heap they can catch fire by themselves.',
  sawing:
    'Blade guard down to the wood, hands out of the line of the cut, and the saw at rest before the offcut is touched. Eye and ear protection.',
  drilling: 'Clamp the wood: a bit that catches swings it. No gloves or loose sleeves near the bit.',
  routing:
    'Clamp the blank and pin the jig, unplug the router to change the bit, take shallow passes against the turn of the bit, and never free a ring with the bit still running.',
  'roller-skew':
    'Rollers that turn askew jam the bearing at once and can throw it off its shaft: let them run free of the cheeks, turn by hand first, and stop when it tightens.',
  'core-loose':
    'The core comes loose at the last cut: slow down, leave a thin web, stop, and break it out by hand with the machine at rest.',
  'sanding-inside':
    'Hold abrasive inside a turning ring by its two ends, never wound round a finger, on the side where the wood runs away from the hand.',
} as const satisfies Readonly<Record<string, string>>
export type CautionCode = keyof typeof MESSAGES

export const caution = (code: CautionCode): Caution => ({ code, message: MESSAGES[code] })

/** The cautions for making and using a bearing with balls, or rollers, of a material. */
export const cautionsFor = (material: BallMaterial, rolls: Traits['rolls'] = 'balls'): Caution[] => [
  caution('light-use-only'),
  ...(rolls === 'rollers' ? [caution('roller-skew')] : []),
  ...(material === 'glass' ? [caution('glass-balls')] : []),
  ...(['turning', 'dust', 'finish'] as const).map(caution),
]

/** The cautions for a design. */
export const cautionsOf = ({ input, traits }: Pick<SettledBalls, 'input' | 'traits'>): Caution[] =>
  cautionsFor(input.balls.material ?? BALL_MATERIAL, traits.rolls)
