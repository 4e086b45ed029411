import { inches, type Mm } from '#shared/units/length.ts'
/**
 * A slotted wood screw by its gauge [in]. Shank and head: ASME B18.6.1; root and holes: published tables (see the sources
 * `asme-b18.6.1` and `wood-screw-holes`). What was not read is left out. Holes are drills, as the tables name them.
 */
export interface WoodScrew {
  readonly gauge: number
  readonly diameter: number
  readonly threadsPerInch?: number
  /** Largest diameter of a flat head. */
  readonly head?: number
  /** Mean diameter at the root of the thread. */
  readonly root?: number
  readonly clearance?: string
  readonly softwoodPilot?: string
  readonly hardwoodPilot?: string
}

export const WOOD_SCREWS: readonly WoodScrew[] = [
  { gauge: 0, diameter: 0.06 },
  { gauge: 1, diameter: 0.073, threadsPerInch: 28, head: 0.146 },
  {
    gauge: 2,
    diameter: 0.086,
    threadsPerInch: 26,
    head: 0.172,
    root: 0.054,
    clearance: '3/32',
    softwoodPilot: '1/32',
    hardwoodPilot: '3/64',
  },
  { gauge: 3, diameter: 0.099, threadsPerInch: 24, head: 0.199 },
  {
    gauge: 4,
    diameter: 0.112,
    threadsPerInch: 22,
    head: 0.225,
    root: 0.075,
    clearance: '7/64',
    softwoodPilot: '3/64',
    hardwoodPilot: '1/16',
  },
  { gauge: 5, diameter: 0.125, threadsPerInch: 20, head: 0.252 },
  {
    gauge: 6,
    diameter: 0.138,
    threadsPerInch: 18,
    head: 0.279,
    root: 0.094,
    clearance: '9/64',
    softwoodPilot: '1/16',
    hardwoodPilot: '5/64',
  },
  { gauge: 7, diameter: 0.151, threadsPerInch: 16, head: 0.305 },
  {
    gauge: 8,
    diameter: 0.164,
    head: 0.332,
    root: 0.112,
    clearance: '11/64',
    softwoodPilot: '5/64',
    hardwoodPilot: '3/32',
  },
  { gauge: 9, diameter: 0.177, head: 0.358 },
  {
    gauge: 10,
    diameter: 0.19,
    head: 0.385,
    root: 0.13,
    clearance: '3/16',
    softwoodPilot: '3/32',
    hardwoodPilot: '7/64',
  },
  { gauge: 11, diameter: 0.203 },
  {
    gauge: 12,
    diameter: 0.216,
    head: 0.438,
    root: 0.148,
    clearance: '7/32',
    softwoodPilot: '7/64',
    hardwoodPilot: '1/8',
  },
  { gauge: 14, diameter: 0.242, root: 0.165, clearance: '1/4', softwoodPilot: '7/64', hardwoodPilot: '9/64' },
  { gauge: 16, diameter: 0.268, root: 0.184, clearance: '17/64', softwoodPilot: '9/64', hardwoodPilot: '5/32' },
  { gauge: 18, diameter: 0.294, root: 0.204, clearance: '19/64' },
  { gauge: 20, diameter: 0.32, root: 0.223, clearance: '5/16' },
  { gauge: 24, diameter: 0.372 },
]

/**
 * The drill for the hole that the shank goes through: the printed one, or the next 1/64 in up where the printed table has
 * rounded it below the shank.
 */
export function clearanceDrill({ clearance, diameter }: WoodScrew): string | undefined {
  if (clearance === undefined) return undefined
  let [sixtyFourths, parts] = [64 * fraction(clearance), 64]
  while (sixtyFourths < 64 * diameter) sixtyFourths += 1
  for (; sixtyFourths % 2 === 0; sixtyFourths /= 2) parts /= 2
  return `${sixtyFourths}/${parts}`
}

/** A drill by its name in inches, `7/64`. */
export const drillDiameter = (name: string): Mm => inches(fraction(name))

function fraction(name: string): number {
  const [above = Number.NaN, below = Number.NaN] = name.split('/').map(Number)
  return above / below
}

/** Lengths that are sold [in]: common practice, no source. */
export const SCREW_LENGTHS: readonly number[] = [
  0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4,
]

/**
 * What a wood screw may hold in side grain, for each inch of thread [lbf]:  p = 2850 G² D  (`screw-withdrawal`): about a fifth of
 * the load that pulls it out.
 *
 * @param specificGravity G, of the ovendry mass and the volume at 12 %
 * @param diameter D [in]
 */
export const withdrawalPerInch = (specificGravity: number, diameter: number): number =>
  2850 * specificGravity * specificGravity * diameter

/** Angle of a flat head, from one flank to the other [degrees]; source `screw-head-angle`. */
export const FLAT_HEAD_ANGLE = 82
