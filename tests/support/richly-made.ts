import { type Design, woodPartsOf } from '#shared/bearing/arrangements.ts'
import type { MakingInput } from '#shared/bearing/making-input.ts'
import { mm } from '#shared/units/length.ts'
import type { OfKind } from './of-every-kind.ts'
import { withMaking } from './with-making.ts'

const CLIMATE = {
  today: { relativeHumidity: 50 },
  relativeHumidity: { min: 35, max: 60 },
  temperature: { min: 18, max: 24 },
} as const

/** The same design with much stated of its making: woods of every construction, a year, screws, and both kinds of mounting. */
export function richly({ design, arrangement }: OfKind): readonly Design[] {
  const parts = woodPartsOf({ arrangement })
  const ofParts = (wood: object) => Object.fromEntries(parts.map((part) => [part, wood]))
  const isOfPlates = arrangement === 'thrust'
  const makings: readonly MakingInput[] = [
    {
      name: 'Tide clock',
      method: 'router-and-lathe',
      woods: ofParts({ construction: 'segmented-quarter-sawn', species: 'cherry-black' }),
      climate: CLIMATE,
      mounting: {
        shaft: { material: 'wood', species: 'ash-white', hold: 'pressed' },
        housing: { species: 'walnut-black', ...(isOfPlates && { hold: 'glued' as const }) },
      },
      kerf: mm(0.2),
    },
    {
      method: 'lathe-only',
      lumber: 'softwood',
      woods: ofParts({ construction: 'cross-laminated-ply' }),
      climate: CLIMATE,
      mounting: isOfPlates ? { shaft: { hold: 'retained' } } : { turns: 'outer-ring', drive: 'hub' },
      boards: [{ thickness: mm(40), width: mm(300), length: mm(2000) }],
    },
  ]
  return makings.map((making) => withMaking(design, making))
}
