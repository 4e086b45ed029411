import type { MakingInput } from '#shared/bearing/making-input.ts'
import type { MountingInput } from '#shared/bearing/mounting-input.ts'
import { type Mounting, mountingOf } from './mounting.ts'
import type { Screws } from './split-ring.ts'
import { type Stock, type StockedRings, stockOf } from './stock.ts'

/**
 * A plan with all that was found for two rings filled in: asked for again, it finds the same.
 *
 * @param mounting that of the bearing, where it is known already
 * @param stock that of the bearing, where it is known already
 */
export function wholePlan(
  bearing: StockedRings,
  mounting: Mounting = mountingOf(bearing),
  { split, cheekScrews }: Pick<Stock, 'split' | 'cheekScrews'> = stockOf(bearing),
): MakingInput {
  const { making = {} } = bearing.resolved.input
  const screws = split?.screws ?? cheekScrews
  return {
    ...making,
    ...(screws && { screws: { count: screws.count, ...requestedSize(screws) } }),
    mounting: wholeMounting(mounting, making.mounting),
  }
}

/** The size of screws as it is asked for. */
export const requestedSize = ({ size }: Pick<Screws, 'size'>) =>
  'gauge' in size ? { gauge: size.gauge } : { metricDiameter: size.diameter }

function wholeMounting({ turns, shaft, housing, drive }: Mounting, request: MountingInput = {}): MountingInput {
  return {
    ...request,
    shaft: { ...request.shaft, diameter: shaft.shaftDiameter, material: shaft.material, hold: shaft.hold },
    ...(housing && { housing: { ...request.housing, thickness: housing.thickness, hold: housing.hold } }),
    turns,
    ...(drive && { drive: drive.kind }),
  }
}
