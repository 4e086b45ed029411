import { assemblyOf } from '#shared/bearing/assembly.ts'
import { FULL_RING_ENGAGEMENT } from '#shared/bearing/defaults.ts'
import { resolveGroovedRings } from '#shared/bearing/grooved-rings.ts'
import { assumedIn, gapBand, type Resolution, type Resolved, wholeInput } from '#shared/bearing/resolve.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { type WaysIn, waysIn } from '#shared/geometry/ways-in.ts'
import { ok } from '#shared/result.ts'
import { RADIAL_FIELDS, type RadialInput } from './input.ts'

export const RADIAL_TRAITS: Traits = { members: 'rings', rolls: 'balls', ballSet: 'full', raceway: 'groove' }

export interface ResolvedRadial extends Resolved {
  readonly input: RadialInput
  readonly waysIn: WaysIn
}

/**
 * Fills in what was left out and works out what does not depend on the ring: the balls' mean, both grooves, the ways in
 * and the gap band.
 *
 * @returns all faults at once
 */
export function resolveRadial(input: RadialInput): Resolution<ResolvedRadial> {
  const resolution = resolveGroovedRings(input, {
    engagement: FULL_RING_ENGAGEMENT,
    split: 'inner-ring',
  })
  if (!resolution.ok) return resolution
  const rings = resolution.value
  const { ballDiameter, outerGroove, split } = rings
  const ways = waysIn({ groove: outerGroove, ballDiameter, ballCount: input.balls.count })
  const assembly = assemblyOf(ways, split)
  const band = gapBand(input, ballDiameter, assembly)
  const whole: RadialInput = wholeInput(RADIAL_FIELDS, input, { ...rings.input, arrangement: 'radial', ...band })
  return ok({
    ...rings,
    traits: RADIAL_TRAITS,
    input: whole,
    assumed: assumedIn(RADIAL_FIELDS, input, whole),
    waysIn: ways,
    assembly,
    ...band,
  })
}
