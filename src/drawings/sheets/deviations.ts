import type { Design } from '#shared/bearing/arrangements.ts'
import { limitedSizes } from '#shared/bearing/gap-limits.ts'
import type { Deviations } from './size-columns.ts'
import { deviationText } from './size-text.ts'

/** The limits printed after the sizes that have limits of their own. */
export function deviationsOf(design: Design): Deviations {
  const limits = limitedSizes(design)
  return Object.fromEntries(
    design.dimensions.flatMap(({ key, value }) => {
      const of = limits[key]
      return of === undefined ? [] : [[key, deviationText(design.bearing, value, of)] as const]
    }),
  )
}
