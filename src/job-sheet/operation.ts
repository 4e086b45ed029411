import {
  ARRANGEMENT_NAMES,
  type ArrangementName,
  type CagedDesign,
  type Design,
  type FullRingDesign,
  isCaged,
  isOfPlates,
  isOfRollers,
  type RadialDesign,
} from '#shared/bearing/arrangements.ts'
import { sourceOfSize } from '#shared/bearing/assumed-sizes.ts'
import { playBeforeFinish } from '#shared/bearing/before-finish.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import {
  BY_CALIPER,
  cylinderKeys,
  DIMENSION_SYMBOLS,
  type Dimension,
  type DimensionKey,
} from '#shared/bearing/dimensions.ts'
import type { Allowances } from '#shared/bearing/making-input.ts'
import type { Method } from '#shared/bearing/method.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { SourceId } from '#shared/data/sources.ts'
import type { Blank } from '#shared/making/blanks.ts'
import { grooveStopShort, trackStopShort } from '#shared/making/cutting-allowances.ts'
import type { Mounting } from '#shared/making/mounting.ts'
import type { RingStock, Stock } from '#shared/making/stock.ts'
import type { Turning } from '#shared/making/work-holding.ts'
import type { ReadingKind } from '#shared/questions/fit/reading.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { tagOf } from '#src/api/answer.ts'
import type { CautionCode } from '#src/words/caution.ts'
import type { OperationWords } from '#src/words/job-sheet/operation.ts'
import { beforeFinishName, gapReading, READINGS, SIZES } from '#src/words/job-sheet/sizes.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'

/** A size to work to, and where to stop short of it. */
export type Size = {
  readonly symbol?: string
  readonly name: string
  readonly value: Mm
  readonly stopAt?: Mm
  /** How far off it may be, either way. */
  readonly tolerance?: Mm
  /** The source that it rests on, because nothing else was requested. */
  readonly source?: SourceId
  /** The rounding of a rule would spoil it: a caliper is set to it. */
  readonly byCaliper?: boolean
}

/** Between which a blank is turned that has been made round [1/min]. */
type Speed = Turning['speed']

export type Reading = {
  readonly name: string
  /** The part at which it is read: a ring, or plates, which are cut alike. */
  readonly at: 'outer' | 'inner' | 'plates'
  readonly kind: ReadingKind
  /** The field of the reading that takes the figure; empty for a tick. */
  readonly field: string
}

export type Operation = OperationWords & {
  readonly id: string
  readonly part: 'balls' | 'outer-ring' | 'inner-ring' | 'cage' | 'both'
  readonly sizes: readonly Size[]
  readonly cautions: readonly CautionCode[]
  readonly readings: readonly Reading[]
  /** Speed of the lathe. */
  readonly speed?: Speed
}

type SomeDesign = DesignOf<{ readonly resolved: ResolvedBalls }>

/** The input of every operation: the design, its stock, and the machines. */
export type Job<Of extends SomeDesign = FullRingDesign, From = Stock> = {
  readonly design: Of
  readonly stock: From
  readonly method: Method
  /** The mounting of two rings, if their plan of making is stated. */
  readonly mounting?: Mounting | undefined
}

/** The same, whatever it is made from. */
export type AnyJob<Of extends SomeDesign = SomeDesign> = Job<Of, unknown>

/** Two rings with grooves. */
export type GroovedJob = Job<RadialDesign | CagedDesign>
/** Two rings, whatever keeps the balls apart. */
export type RingJob = Job<FullRingDesign | CagedDesign>

export const arrangementOf = ({ design }: AnyJob): ArrangementName =>
  tagOf(design.bearing.resolved.input, ...ARRANGEMENT_NAMES)
export const termsOf = (job: AnyJob): Terms => TERMS[arrangementOf(job)]
export const unitsOf = ({ design }: AnyJob): Units => design.bearing.resolved.input.units

type TakesKeysOf<D> = D extends { dimensions: readonly Dimension<infer Key>[] } ? (key: Key) => void : never
/** The keys of sizes that each of some designs has: one that an arrangement lacks does not compile. */
type CommonKey<D> = TakesKeysOf<D> extends (key: infer Key) => void ? Key : never

/** A size of the design, as it is to be cut, and how far from it to stop. */
export function size<D extends SomeDesign>(
  { design }: AnyJob<D>,
  key: (CommonKey<D> & DimensionKey) | CylinderKey,
  name: string,
  stopShort = 0,
): Size {
  const row = design.dimensions.find((dimension) => dimension.key === key)
  if (row === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
  const value = row.cutTo ?? row.value
  return {
    symbol: DIMENSION_SYMBOLS[row.key],
    name,
    value,
    ...sourced(row.key, design),
    ...(BY_CALIPER.has(row.key) && { byCaliper: true }),
    ...(stopShort !== 0 && { stopAt: mm(value + stopShort) }),
  }
}

/** A size as it is in bare wood; its symbol is that of the finished size. */
export function inBareWood({ symbol, ...finished }: Size, value: Mm, name = finished.name): Size {
  if (value === finished.value) return { ...(symbol !== undefined && { symbol }), ...finished }
  return { ...finished, name, value }
}

/** The play to reach with the finish still to come. */
export function playToReach(job: RingJob): Size {
  const { resolved } = job.design.bearing
  const play = size(job, 'radialInternalClearance', SIZES.playToReach)
  return inBareWood(play, playBeforeFinish(play.value, resolved), beforeFinishName(play.name))
}

/** The source of a size that was not stated. */
export function sourced(key: DimensionKey, { bearing }: SomeDesign): Pick<Size, 'source'> {
  const source = sourceOfSize(key, bearing.resolved)
  return source === undefined ? {} : { source }
}

/** The line of a template along which a blank is sawn, where it is, for the lathe to take the rest. */
export const sawLine = (job: AnyJob, { roughCircle }: Blank): readonly Size[] =>
  job.method === 'saw-and-lathe' ? [{ name: SIZES.sawingLine, value: roughCircle, ...allowed(job) }] : []

/** The source of an allowance, which is common practice unless it is stated. */
export const allowed = ({ design }: AnyJob, of: keyof Allowances = 'turning'): Pick<Size, 'source'> =>
  design.bearing.resolved.input.making?.allowances?.[of] === undefined ? { source: 'trade' } : {}

/** How thick a blank is, where the maker leaves something on its sides, and how thick each piece of it becomes. */
export const thicknesses = ({ blank, sideAllowance }: RingStock, becomes: Size): readonly Size[] =>
  sideAllowance === 0
    ? [becomes]
    : [{ name: blank.pieces === 1 ? SIZES.blank : SIZES.eachBlank, value: blank.thickness }, becomes]

/** Half of a ring that comes apart. */
export const halfOf = ({ value }: Size, name: string): Size => ({ name, value: mm(value / 2) })

/** The part at which the fit is made: the gap at the outer ring or the plates, the play of balls in a cage at the inner ring. */
export const madeAt = (design: Design): Reading['at'] =>
  isOfPlates(design) ? 'plates' : isCaged(design) ? 'inner' : 'outer'

/** The gap of a full ring; in a cage there is none to read. */
export const gapReadings = (job: AnyJob<Design>): readonly Reading[] =>
  isCaged(job.design)
    ? []
    : [{ name: gapReading(arrangementOf(job)), at: madeAt(job.design), kind: 'ball-gap', field: '/value' }]

/** Blanks for the readings of both plugs. */
export const plugReadings = (at: Reading['at']): readonly Reading[] =>
  [READINGS.goPlug, READINGS.noGoPlug].map((name) => ({ name, at, kind: 'plug', field: '/result' }))

/** Blanks for the depth of a groove: across its bottoms, or below the cylinder that it was cut into. */
export const grooveReadings = (at: 'outer' | 'inner'): readonly Reading[] => [
  { name: READINGS.acrossBottoms, at, kind: 'groove-bottom-diameter', field: '/value' },
  { name: READINGS.depth, at, kind: 'groove-depth', field: '/value' },
  {
    name: at === 'outer' ? READINGS.holeThere : READINGS.outsideThere,
    at,
    kind: 'groove-depth',
    field: '/landDiameter',
  },
]

/** Cautions for balls of glass. */
export const glassCautions = ({ design }: AnyJob): readonly CautionCode[] =>
  design.bearing.resolved.input.balls.material === 'glass' ? ['glass-balls'] : []

/** Cautions for making a bored disc round. */
export const ROUND_CAUTIONS: Readonly<Record<Method, readonly CautionCode[]>> = {
  'saw-and-lathe': ['drilling', 'sawing', 'turning', 'dust'],
  'lathe-only': ['drilling', 'turning', 'dust'],
  'router-and-lathe': ['drilling', 'routing', 'dust'],
}

/** The same of a ring that is turned or routed at one setting: nothing is bored. */
export const ringCautions = (method: Method): readonly CautionCode[] =>
  ROUND_CAUTIONS[method].filter((code) => code !== 'drilling')

/** Whether what rolls is of wood. */
export const isRollingWood = ({ design }: AnyJob): boolean => design.bearing.resolved.input.balls.material === 'wood'

export const hasTracks = ({ design }: RingJob): boolean => isOfRollers(design)

/** The key of a cylinder as a design of two rings has it, which one only its arrangement tells. */
type CylinderKey = DimensionKey & { readonly ofDesign: true }
type CylinderKeys = { readonly outer: CylinderKey; readonly inner: CylinderKey }

/** The cylinders that both rings are turned to first: lands, where a groove is cut into them, or else the tracks themselves. */
export const turnedFirst = ({ design }: RingJob): CylinderKeys => cylinderKeys(design.bearing) as CylinderKeys

/** The cylinders that are sanded to fit: the bottoms of grooves, or tracks. */
export const sandedLast = (job: RingJob): CylinderKeys =>
  hasTracks(job)
    ? turnedFirst(job)
    : ({ outer: 'outerRing.grooveBottomDiameter', inner: 'innerRing.grooveBottomDiameter' } as CylinderKeys)

/** How the cylinders that are sanded to fit are named among the sizes. */
export const acrossName = (job: RingJob): string => (hasTracks(job) ? SIZES.track : SIZES.acrossBottoms)

/** How much the sharp tool leaves on a raceway for the abrasive, all round. */
export function leftToSand({ design }: RingJob, ring: RingName): Size {
  const { resolved } = design.bearing
  const value = isOfRollers(design)
    ? trackStopShort(resolved.ballDiameter, resolved.input.units)
    : grooveStopShort(design.bearing[ring].grooveDepth)
  return { name: SIZES.leftToSand, value }
}

/** Sanded no faster than at half the speed of turning: common practice, no source. */
export const sandingSpeed = ({ speed }: Pick<Turning, 'speed'>): Speed => ({ min: speed.min / 2, max: speed.max / 2 })

/** The dowel under the abrasive for a groove, measured with the abrasive on: then the thickness of the paper need not be known. */
export function dowelOf(job: RingJob, ring: 'outerRing' | 'innerRing' = 'innerRing'): readonly Size[] {
  if (hasTracks(job)) return []
  const { value } = size(job, `${ring}.grooveRadius` as CylinderKey, SIZES.abrasiveDowel)
  return [{ name: SIZES.abrasiveDowel, value: mm(2 * value), byCaliper: true }]
}
