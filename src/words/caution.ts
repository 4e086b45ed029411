import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { ToolName } from '#shared/questions/fit/reading.ts'
import { BEARING_CAUTIONS, type CautionWords, inTerms } from './bearing-caution.ts'
import type { Terms } from './terms.ts'

const ROUND_STOCK = 'Round stock rolls: hold it in a V-block or a cradle, never by hand.'

/** What can hurt someone, by a code for programs: with any bearing, and at one step of the work. Common practice, no source. */
const CAUTIONS = {
  ...BEARING_CAUTIONS,
  epoxy:
    'Epoxy harms the skin and can make you allergic to it for good, and its vapour irritates. Wear gloves that it does not soak through, let fresh air in, keep it out of your eyes, and wait until it is hard before you sand it. What the maker of your epoxy says comes first.',
  grinding:
    'Sparks set wood dust and shavings alight: clear them away before you grind, and grind away from them. Wear eye protection, and no gloves at the wheel.',
  sawing: `Lower the blade guard to the wood, keep your hands out of the line of the cut, and touch the offcut only when the saw has stopped. ${ROUND_STOCK} Wear eye and ear protection.`,
  drilling: `Clamp the wood: a bit that catches swings it. ${ROUND_STOCK} Wear no gloves or loose sleeves near the bit.`,
  routing: ({ part }: Terms) =>
    `Clamp the blank and pin the jig. Unplug the router to change the bit. Take shallow passes against the rotation of the bit, and never free a ${part.one} while the bit is running.`,
  'core-loose':
    'The core comes loose at the last cut. Slow down, leave a thin web, stop the machine, and break the core out by hand.',
  'sanding-inside': ({ raceway }: Terms) =>
    raceway.one === 'track'
      ? 'Keep your fingers out of a turning ring: hold the block by its handle, on the side where the wood runs away from your hand.'
      : 'Hold abrasive inside a turning ring by its two ends, never wound round a finger, on the side where the wood runs away from your hand.',
} as const satisfies Readonly<Record<string, CautionWords>>

export type CautionCode = keyof typeof CAUTIONS
export const CAUTION_CODES = Object.keys(CAUTIONS) as readonly CautionCode[]

/** The names by which cautions are called where they have been read already. */
const NAMES: Readonly<Record<CautionCode, string>> = {
  'light-use-only': 'light use only',
  'glass-balls': 'glass',
  turning: 'turning',
  dust: 'dust',
  finish: 'finish',
  epoxy: 'epoxy',
  grinding: 'grinding',
  sawing: 'sawing',
  drilling: 'drilling',
  routing: 'routing',
  'roller-skew': 'askew rollers',
  'core-loose': 'loose core',
  'sanding-inside': 'sanding inside',
}

export const cautionName = (code: string): string => NAMES[code as CautionCode]

export const cautionSentence = (code: CautionCode, terms: Terms): string => inTerms(CAUTIONS[code], terms)

/** A caliper or a ball in a groove that turns is torn out of the hand. */
export const STOP_TO_MEASURE = 'Stop the lathe each time you measure.'

/** The same of plates, which some cut with a router. */
export const STOP_ANY_MACHINE = 'Stop the machine each time you measure.'

/** Beside an advice to cut or to sand. */
export function cuttingCaution(tool: ToolName, ring: FittedRing, terms: Terms): string {
  const isPlate = terms.part.one === 'plate'
  const stop = isPlate ? STOP_ANY_MACHINE : STOP_TO_MEASURE
  if (tool === 'abrasive') return `${stop} ${TOOL_REST_OUT} ${holdToSand(ring, terms)}`
  return isPlate
    ? `${stop} Wait until it stands still before you reach in.`
    : `${stop} Set the tool rest close to the wood, and turn the ${terms.part.one} by hand once before you start.`
}

/** Fingers are drawn in between a rest and the wood. */
const TOOL_REST_OUT = 'Take the tool rest out before you sand.'

/** Only an outer ring is sanded inside. */
function holdToSand(ring: FittedRing, terms: Terms): string {
  if (ring === 'outer' && terms.part.one === 'ring') return cautionSentence('sanding-inside', terms)
  const hold =
    terms.raceway.one === 'track'
      ? 'the block by its handle'
      : 'the strip of abrasive by its two ends, never wound round a finger'
  return `Hold ${hold}, on the side where the wood runs away from your hand.`
}
