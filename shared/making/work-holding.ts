import type { Segments } from '#shared/geometry/segments.ts'
import { inches, inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import type { Blank } from './blanks.ts'
import type { ResolvedMaking } from './defaults.ts'

/** A bolt through the bore on which the inner ring is turned. */
export interface Mandrel {
  readonly bolt: string
  readonly diameter: Mm
  /** Wall of the bush round the bolt; 0 if the bolt fits the bore. */
  readonly bush: Mm
}

/** How a blank is held: gripped round its outside, from inside its hole, or screwed or glued to a plate. */
type Grip = 'outside' | 'hole' | 'faceplate'

export interface Turning {
  /** Between which a balanced blank is turned [1/min]; an unbalanced one starts at the lowest that there is. */
  readonly speed: { readonly min: number; readonly max: number }
  /** How fast the rim runs at the most [m/s]. */
  readonly rimSpeed: number
  /** Absent where no chuck was named. */
  readonly grip?: Grip
  /** Whether it clears the bed. Absent where no swing was named. */
  readonly clearsBed?: boolean
}

/** Rule of woodturners, common practice, no source: diameter in inches times revolutions a minute. */
const SPEEDS = { min: 6000, max: 9000 } as const
/** No bench lathe for wood is sure to run faster, however small the blank [1/min]: common practice, no source. */
const FASTEST = 3500

const BOLTS: Readonly<Record<Units, readonly (readonly [name: string, diameter: Mm])[]>> = {
  in: ['1/4', '5/16', '3/8', '7/16', '1/2', '5/8', '3/4', '7/8', '1', '1 1/4', '1 1/2'].map(
    (name) => [`${name} in`, inches(fraction(name))] as const,
  ),
  mm: [5, 6, 8, 10, 12, 16, 20, 24, 30, 36].map((diameter) => [`M${diameter}`, mm(diameter)] as const),
}

/** `1 1/4` as 1.25: the names above and nothing else. */
function fraction(name: string): number {
  return name.split(' ').reduce((sum, part) => {
    const [above = 0, below = 1] = part.split('/').map(Number)
    return sum + above / below
  }, 0)
}

/** Of the bits that a drill press turns by hand feed in wood: common practice, no source. */
const WIDEST_BIT = inches(2)
/** Whether there is a bit of that size. */
export const hasBit = (hole: Mm): boolean => hole <= WIDEST_BIT
/** Whether a bit bores the hole of a blank: it must be as wide, and find wood at its point, which a ring of segments leaves out. */
export const isBored = ({ blank, segments }: Hollow): boolean =>
  hasBit(blank.cutHole) && (segments === undefined || segments.innerEdge === 0)

interface Hollow {
  readonly blank: Pick<Blank, 'cutHole'>
  readonly segments?: Pick<Segments, 'innerEdge'>
}

/** A bolt that is less than this thinner than the bore fits it: common practice, no source. */
const FITS_WITHIN = mm(0.2)

/** @returns undefined for a bore smaller than any bolt that is strong enough */
export function mandrelFor(bore: Mm, units: Units): Mandrel | undefined {
  const [largest] = BOLTS[units].filter(([, diameter]) => diameter <= bore * (1 + 1e-9)).slice(-1)
  if (largest === undefined) return undefined
  const [bolt, diameter] = largest
  return { bolt, diameter, bush: mm(bore - diameter < FITS_WITHIN ? 0 : (bore - diameter) / 2) }
}

/** As thick as a bolt through the stub of a plate need be: it only clamps. Common practice, no source. */
const STUB_BOLT: Readonly<Record<Units, Mm>> = { in: inches(0.5), mm: mm(12) }

/**
 * The bolt that clamps a plate through a wooden stub in its bore: at most half as thick, so that wood is left round it.
 *
 * @returns undefined for a bore so small that the stub takes a screw
 */
export const stubBoltFor = (bore: Mm, units: Units): Mandrel | undefined => {
  const held = mandrelFor(mm(Math.min(bore / 2, STUB_BOLT[units])), units)
  return held && { ...held, bush: mm((bore - held.diameter) / 2) }
}

export function turningOf({ roughCircle, roughHole }: Blank, { chuck, swing }: ResolvedMaking): Turning {
  // At the fastest that there is, the rule keeps the ratio of its ends.
  const inInches = Math.max(inUnits(roughCircle, 'in'), SPEEDS.max / FASTEST)
  const isGripped = (diameter: Mm | undefined): boolean =>
    chuck !== undefined && diameter !== undefined && diameter >= chuck.min && diameter <= chuck.max
  const grip: Grip = isGripped(roughCircle) ? 'outside' : isGripped(roughHole) ? 'hole' : 'faceplate'
  return {
    speed: { min: SPEEDS.min / inInches, max: SPEEDS.max / inInches },
    rimSpeed: (Math.PI * roughCircle * (SPEEDS.max / inInches)) / 1000 / 60,
    ...(chuck === undefined ? {} : { grip }),
    ...(swing === undefined ? {} : { clearsBed: roughCircle <= swing }),
  }
}

/** The finish added to each surface after turning. */
export interface Finish {
  readonly name: string
  /** Per surface. */
  readonly thickness: { readonly min: Mm; readonly max: Mm }
}

/** Per surface, as makers reckon: common practice, no source. */
export const FINISHES: readonly Finish[] = [
  { name: 'oil or wax, wiped off', thickness: { min: mm(0), max: mm(0.01) } },
  { name: 'shellac or varnish, three thin coats', thickness: { min: mm(0.03), max: mm(0.08) } },
  { name: 'varnish, three brushed coats', thickness: { min: mm(0.08), max: mm(0.15) } },
  { name: 'grain raised by water, before it is sanded again', thickness: { min: mm(0.02), max: mm(0.1) } },
]
