/**
 * A slotted countersunk wood screw by its diameter [mm]. Core: GB/T 922, wood screw threads, the largest (DIN 7998 differs by
 * 0.1 at the most where it was seen); head: DIN 97 (`din-97`).
 */
export interface MetricWoodScrew {
  readonly diameter: number
  readonly core: number
  readonly head: number
}

export const METRIC_WOOD_SCREWS: readonly MetricWoodScrew[] = [
  { diameter: 3, core: 2.1, head: 5.6 },
  { diameter: 3.5, core: 2.5, head: 6.5 },
  { diameter: 4, core: 2.8, head: 7.5 },
  { diameter: 5, core: 3.5, head: 9.2 },
  { diameter: 6, core: 4.2, head: 11 },
]

/** Lengths that are sold [mm]: common practice, no source. */
export const METRIC_SCREW_LENGTHS: readonly number[] = [10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100]

/** Angle of their flat head, from one flank to the other [degrees]: that of DIN 963, see the source `din-97`. */
export const METRIC_HEAD_ANGLE = 90

/** Pilot hole over core, as for screws in inches: the rule of the American Wood Council, as l-36.com quotes it. */
const PILOT_OF_CORE = { softwood: 0.7, hardwood: 0.9 } as const
/** Room of the shank in its hole [mm]: common practice, no source. */
const SHANK_ROOM = 0.2

/** Drills are sold by tenths of a millimetre: common practice, no source. */
const toTenths = (size: number): number => Math.round(10 * size) / 10

export const metricPilot = ({ core }: MetricWoodScrew, lumber: keyof typeof PILOT_OF_CORE): number =>
  toTenths(PILOT_OF_CORE[lumber] * core)

export const metricClearance = ({ diameter }: MetricWoodScrew): number => toTenths(diameter + SHANK_ROOM)
