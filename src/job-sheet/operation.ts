import { type Design, type FullRingDesign, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { cylinderKeys, DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import type { SettledBalls } from '#shared/bearing/resolve.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { sawAllowance } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { CautionCode } from '#src/api/caution.ts'
import type { Method } from '#src/api/job-sheet/schema.ts'

/** A size to work to, and where to stop short of it. */
export type Size = {
  readonly symbol?: string
  readonly name: string
  readonly value: Mm
  readonly stopAt?: Mm
}

export type Reading = {
  readonly name: string
  /** What it was read at: a ring, or plates, which are cut alike. */
  readonly at: 'outer' | 'inner' | 'plates'
  readonly kind: string
  /** Where the figure goes in the reading; empty for a tick. */
  readonly field: string
}

export type Operation = {
  readonly id: string
  readonly part: 'balls' | 'outer-ring' | 'inner-ring' | 'cage' | 'both'
  readonly title: string
  readonly tool: string
  readonly how: string
  readonly sizes: readonly Size[]
  readonly check: string
  readonly mistake: { readonly looksLike: string; readonly costs: string }
  readonly cautions: readonly CautionCode[]
  readonly readings: readonly Reading[]
}

type SomeDesign = DesignOf<{ readonly settled: SettledBalls }>

/** What the operations have in common: the design, the machines, and lengths in words. */
export type Job<Of extends SomeDesign = FullRingDesign> = {
  readonly design: Of
  readonly method: Method
  readonly say: (length: Mm) => string
}

/** Two rings, whatever keeps the balls apart. */
export type RingJob = Job<DesignOf<RingPair>>

/** A size of the design, as it is to be cut, and how far from it to stop. */
export function size({ design }: Job<SomeDesign>, key: DimensionKey, name: string, stopShort = 0): Size {
  const row = design.dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  const value = row.cutTo ?? row.value
  return {
    symbol: DIMENSION_SYMBOLS[key],
    name,
    value,
    ...(stopShort !== 0 && { stopAt: mm(value + stopShort) }),
  }
}

/** What a disc is sawn or cut out by, for the lathe to take the rest. */
export const roughCircle = ({ design }: Job<SomeDesign>, outside: Size): Mm =>
  mm(outside.value + 2 * sawAllowance(design.bearing.settled.input.units))

/** The line of that on a template, where it is sawn. */
export const sawLine = (job: Job<SomeDesign>, outside: Size): readonly Size[] =>
  job.method === 'saw-and-lathe' ? [{ name: 'saw by, the dashed line', value: roughCircle(job, outside) }] : []

/** Where the gap is made: at the outer ring, or at plates. */
export const madeAt = (design: Design): Reading['at'] => (isOfPlates(design) ? 'plates' : 'outer')

/** The gap of a full ring; in a cage there is none to read. */
export const gapReadings = (design: Design): readonly Reading[] =>
  isCaged(design) ? [] : [{ name: 'gap, all balls in', at: madeAt(design), kind: 'ball-gap', field: '/value' }]

export const LAYOUT_CHECK =
  'The bar on the printed template first: 100 mm, and 4 in. Then the circles with a rule, twice, crosswise.'

/** How a flat disc with a hole comes to round: with what, what is done about the hole, and what of it can hurt. */
export const DISC_BY: Readonly<
  Record<Method, { readonly tool: string; readonly round: string; readonly cautions: readonly CautionCode[] }>
> = {
  'saw-and-lathe': {
    tool: 'drill press, band saw or scroll saw, lathe',
    round: 'saw it out along the dashed line and turn it to round',
    cautions: ['drilling', 'sawing', 'turning', 'dust'],
  },
  'lathe-only': {
    tool: 'drill press, lathe',
    round: 'knock its corners off by hand and turn it to round',
    cautions: ['drilling', 'turning', 'dust'],
  },
  'router-and-lathe': {
    tool: 'drill press, router on a circle jig',
    round: 'rout it to round',
    cautions: ['drilling', 'routing', 'dust'],
  },
}

export const hasTracks = ({ design }: RingJob): boolean => design.bearing.settled.traits.raceway === 'track'

/** What is sanded to fit: the bottoms of grooves, or tracks. */
export const bottomKeys = (job: RingJob): ReturnType<typeof cylinderKeys> =>
  hasTracks(job)
    ? cylinderKeys(job.design.bearing)
    : { outer: 'outerRing.grooveBottomDiameter', inner: 'innerRing.grooveBottomDiameter' }
