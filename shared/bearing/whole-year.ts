import { inScale } from '#shared/units/temperature.ts'
import { type Construction, isSegmented, USUAL_SEGMENTS } from '#shared/wood/construction.ts'
import type { ClimateInput, WoodInput, WoodsInput } from './making-input.ts'
import { PART_NAMES } from './wood-parts.ts'

/* Woods and climate with every default filled in: stated again, they mean the same. */

/** Default temperature indoors [degrees C]: common practice, no source. */
export const USUAL_TEMPERATURE = 20

const USUAL_CONSTRUCTION: Construction = 'flat-sawn'

/** How a part is made where its maker states only its pieces, or nothing of it. */
export const constructionOf = ({ construction, segments }: WoodInput): Construction =>
  construction ?? (segments === undefined ? USUAL_CONSTRUCTION : 'segmented')

export function wholeWoods<Woods extends WoodsInput>(woods: Woods): Woods {
  const parts = PART_NAMES.flatMap((part) => {
    const wood = woods[part]
    return wood === undefined ? [] : [[part, wholeWood(wood)] as const]
  })
  // Each part that was stated, and no other, is there with more of it stated.
  return { ...Object.fromEntries(parts), ...(woods.balls && { balls: woods.balls }) } as Woods
}

/** The same of one part. */
export function wholeWood(wood: WoodInput): WoodInput {
  const construction = constructionOf(wood)
  return { ...(isSegmented({ construction }) && { segments: { count: USUAL_SEGMENTS } }), ...wood, construction }
}

export function wholeClimate<Climate extends ClimateInput>(climate: Climate): Climate {
  const { temperatureScale = 'celsius', today, temperature, ...rest } = climate
  const usual = inScale(USUAL_TEMPERATURE, temperatureScale)
  const range = temperature ?? (rest.relativeHumidity && { min: usual, max: usual })
  // Whatever was stated is there as it was stated.
  return {
    temperatureScale,
    today: today.moistureContent === undefined ? { ...today, temperature: today.temperature ?? usual } : today,
    ...(range && { temperature: range }),
    ...rest,
  } as Climate
}
