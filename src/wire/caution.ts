import { type Static, Type } from 'typebox'
import type { BallMaterial } from '#shared/bearing/design-input.ts'

export const Caution = Type.Object(
  { code: Type.String({ description: 'A name for programs.' }), message: Type.String() },
  { $id: 'Caution', description: 'What can hurt someone. Local rules and licensed practice come first.' },
)
type Caution = Static<typeof Caution>

const USE: Caution = {
  code: 'light-use-only',
  message:
    'For models, demonstrations and light hand-turned work. Never to carry people, vehicles, overhead or safety-critical loads. Local rules and licensed practice come first.',
}

const SHOP: readonly Caution[] = [
  {
    code: 'turning',
    message:
      'Secure the blank, start at the lowest speed, stand out of its plane while it spins up, and wear eye and face protection. A ring with a groove is weaker than the blank it came from.',
  },
  {
    code: 'dust',
    message:
      'Wood dust harms the lungs and some woods are worse: collect it at the tool and wear a respirator that fits. Check the limits that apply where you are.',
  },
  {
    code: 'finish',
    message:
      'Ventilate while a finish dries, keep flames away, and spread oily rags flat to dry: in a heap they can catch fire by themselves.',
  },
]

const GLASS: Caution = {
  code: 'glass-balls',
  message:
    'Glass balls can shatter and fly. Do not spin the bearing with compressed air or a drill, and do not strike a ball that sticks.',
}

/** The cautions for making and using a bearing with such balls. */
export const cautionsFor = (material: BallMaterial): Caution[] => [
  USE,
  ...(material === 'glass' ? [GLASS] : []),
  ...SHOP,
]
