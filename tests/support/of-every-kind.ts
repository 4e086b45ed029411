import { ARRANGEMENT_NAMES, type ArrangementName, type Design, type DesignInput } from '#shared/bearing/arrangements.ts'
import { SPLITS } from '#shared/bearing/fields.ts'
import { inches, mm } from '#shared/units/length.ts'
import { anyDesigned } from './designed.ts'

/** A design, with the arrangement that its words are to be of. */
export interface OfKind {
  readonly arrangement: ArrangementName
  readonly design: Design
  readonly name: string
}

const SIZES = [
  { units: 'mm', balls: { count: 12, diameter: mm(16), material: 'wood' }, bore: mm(12) },
  {
    units: 'in',
    balls: { count: 12, diameter: inches(5 / 8), material: 'glass' },
    bore: inches(1 / 2),
    film: mm(0.05),
  },
  // Too little wood for any screw.
  { units: 'mm', balls: { count: 8, diameter: mm(6), material: 'steel' }, bore: mm(6) },
] as const

/** Designs of every arrangement in both units, split in every way, bare and with a film, with and without screws. */
export const OF_EVERY_KIND: readonly OfKind[] = ARRANGEMENT_NAMES.flatMap((arrangement) =>
  SIZES.flatMap(({ units, balls, bore, ...size }) => {
    const splits = arrangement === 'radial' || arrangement === 'caged' ? SPLITS : [undefined]
    return splits.map((split) => {
      const input = {
        arrangement,
        units,
        balls,
        bore,
        ...('film' in size && { finishAllowance: size.film }),
        ...(split !== undefined && { split }),
      }
      const name = [arrangement, units, `${balls.diameter} mm`, split].filter(Boolean).join(', ')
      return { arrangement, name, design: anyDesigned(input as DesignInput) }
    })
  }),
)
