import { endByHalving } from '#shared/numbers/halving.ts'
import { THINNEST } from './defaults.ts'
import type { MatingFaceAdjustment } from './mating-faces.ts'

/*
 * Options for a groove that is too deep. Each option is tried as a bearing that can be put together and runs; each
 * says what the other parts must then measure. Facts alone: the words are made elsewhere.
 */

/** A bearing made from the wood as it is cut. Lengths in millimetres. */
export interface Remade {
  readonly grooveBottomDiameter: number
  readonly grooveDepth: number
  /** Least gap at which the last ball goes in. */
  readonly assemblyGap: number
  /** Whether a ball rides on the edges of either groove. */
  readonly onEdges: boolean
  /** Only of bearings with an inner ring. */
  readonly inner?: InnerSizes
  /** Only if each ball has its own pocket. */
  readonly pocketDiameter?: number
}

/** The inner ring that goes with it. */
interface InnerSizes {
  readonly grooveBottomDiameter: number
  readonly landDiameter: number
  readonly landGap: number
}

/** What an inner ring is turned to, before any finish, so that it fits a bearing that is not the design. */
interface InnerToCut {
  readonly grooveBottomDiameter: number
  /** Absent of a plain track. */
  readonly landDiameter?: number
  /** Whether one that was turned to the design already would have more than the most play that still runs well. */
  readonly isFinishedTooSmall: boolean
}

/** Changes to the design. */
export interface Change {
  readonly count: number
  readonly diameter: number
  /** Radius of the outer groove, as it is or as it is to be cut. */
  readonly x: number
  readonly gap: number
  /** Whether the groove keeps the arc of the cutter that was used, whatever the design says of other balls. */
  readonly keepsCutter: boolean
  /** The inner ring, as it is cut or as it is to be cut. */
  readonly inner?: { readonly play: number; readonly depth: number }
}

/** The design of the workpiece, behind an interface. */
export interface Workpiece {
  /** A bearing with these changes; undefined where there can be none. */
  readonly remade: (change: Change) => Remade | undefined
  /** The gap that balls of these sizes leave, in their order; undefined where they do not find room, or are kept apart. */
  readonly gapOfUnequal?: (x: number, diameters: readonly number[]) => number | undefined
  /** Radius of the arc of the groove that is cut; undefined for a plain track. */
  readonly arc?: number
  /** Whether the balls are of glass or steel, and knock. */
  readonly isHard: boolean
  /** Whether something may be glued into the groove all round. */
  readonly takesLining: boolean
  /** The inner ring as designed; only of bearings with one. */
  readonly innerAsDesigned?: { readonly grooveBottomDiameter: number; readonly radialInternalClearance: number }
  /** The change at the mating faces of a split ring that brings the play to an aim. */
  readonly matingFaces?: (play: number, aim: number) => MatingFaceAdjustment | undefined
}

export interface BallsOnHand {
  readonly diameter: number
  readonly quantity: number
}

/** Why an option is not possible. */
export type Obstacle =
  | 'none-on-hand'
  | 'out-of-band'
  | 'last-ball-stays-out'
  | 'rides-on-edges'
  | 'stands-out'
  | 'too-few-larger'
  | 'no-such-bearing'
  | 'too-thin'
  | 'too-much'
  | 'too-deep-for-it-too'

/** How a bearing behaves with too wide a gap, and with too much play. */
export type Life = 'hardly-noticed' | 'knocks' | 'balls-bunch' | 'ball-short'
export type LifeWithPlay = 'hardly-noticed' | 'rattles' | 'wanders'

export interface Tried {
  readonly possible: boolean
  readonly obstacle?: Obstacle
  readonly ballGap?: number
  readonly radialInternalClearance?: number
  readonly pocketDiameter?: number
  readonly inner?: InnerSizes
  readonly innerToCut?: InnerToCut
}

export type Rescue =
  | (Tried & {
      readonly option: 'accept'
      readonly overMaxBallGap: number
      /** The gap over the ball diameter. */
      readonly shareOfBall: number
      readonly life: Life
    })
  | (Tried & {
      readonly option: 'accept-play'
      readonly overMaxPlay: number
      /** The play over the ball diameter. */
      readonly shareOfBall: number
      readonly life: LifeWithPlay
    })
  /** Above 0 to sand off both faces in all. */
  | (Tried & { readonly option: 'mating-faces'; readonly matingFaces: number })
  | BallsOnHandRescue
  | (Tried & {
      readonly option: 'mixed-balls'
      readonly diameter?: number
      readonly replacedCount?: number
      /** How much further in than the others the larger balls stand. */
      readonly standsOut?: number
    })
  | (Tried & {
      readonly option: 'larger-balls'
      readonly diameter?: number
      readonly largerBy?: number
      /** Between which the mean of such a set may lie. */
      readonly from?: number
      readonly to?: number
    })
  | (Tried & {
      readonly option: 'spacers'
      readonly spacerCount: number
      /** Absent if spacers so thin cannot be made. */
      readonly eachThickness?: number
      readonly singleThickness: number
    })
  | (Tried & { readonly option: 'lining'; readonly thickness: number; readonly grooveRadius?: number })
  | (Tried & {
      readonly option: 'one-ball-more'
      readonly ballCount: number
      readonly deeper: number
      readonly until?: { readonly grooveBottomDiameter: number; readonly grooveDepth: number }
    })
  | (Tried & { readonly option: 'new-blank' })
  | (Tried & { readonly option: 'new-inner-ring' })

type BallsOnHandRescue = Tried & {
  readonly option: 'balls-on-hand'
  readonly diameter?: number
  readonly ballCount: number
  /** Every lot that does not serve. */
  readonly passedOver: readonly PassedOver[]
}

/** A lot on hand that makes no full set, and why: with the figure that such balls would leave, where that is why. */
export interface PassedOver extends BallsOnHand {
  readonly obstacle?: Obstacle | 'too-few-balls'
  readonly ballGap?: number
  readonly radialInternalClearance?: number
}

/**
 * Lots on hand as full sets of one size: the one that comes nearest to the aim, possible ones first, and those that do not serve.
 *
 * @param figureOf the figure of a set that is to come to the aim
 */
export function fullSetOnHand(
  lots: readonly BallsOnHand[],
  { ballCount, aim }: { readonly ballCount: number; readonly aim: number },
  tried: (diameter: number) => Tried,
  figureOf: (tried: Tried) => number | undefined,
): BallsOnHandRescue {
  const enough = lots
    .filter(({ quantity }) => quantity >= ballCount)
    .map(({ diameter, quantity }) => ({ quantity, set: { diameter, ...tried(diameter) } }))
  const sets = enough.map(({ set }) => set)
  const passedOver = [
    ...enough.filter(({ set }) => !set.possible).map(({ quantity, set }) => ({ quantity, ...set })),
    ...lots
      .filter(({ quantity }) => quantity < ballCount)
      .map((lot) => ({ ...lot, obstacle: 'too-few-balls' as const })),
  ]
  const best = nearest(sets, aim, figureOf) ?? ({ possible: false, obstacle: 'none-on-hand' } as const)
  return { option: 'balls-on-hand', ballCount, ...best, passedOver }
}

/** A gap found by halving is met to within this [mm]. */
const CLOSE_ENOUGH = 1e-6

/** Judges a bearing of these sizes with this gap; omit `ballGap` if the balls are kept apart. */
export function judged(made: Remade | undefined, facts: Omit<Tried, 'possible'>): Tried {
  if (made === undefined) return { ...facts, possible: false, obstacle: 'no-such-bearing' }
  const { assemblyGap, onEdges, inner, pocketDiameter } = made
  const isShut = facts.ballGap !== undefined && !(facts.ballGap >= assemblyGap - CLOSE_ENOUGH)
  const obstacle = onEdges ? 'rides-on-edges' : isShut ? 'last-ball-stays-out' : undefined
  return {
    ...facts,
    possible: obstacle === undefined,
    ...(obstacle === undefined ? {} : { obstacle }),
    ...(inner === undefined ? {} : { inner }),
    ...(pocketDiameter === undefined ? {} : { pocketDiameter }),
  }
}

/**
 * A rescue with the sizes to which its inner ring is turned.
 *
 * @param film what films take of the play until the bearing is finished, in all
 */
export function withInnerToCut<Of extends Rescue>(
  rescue: Of,
  { innerAsDesigned, arc }: Pick<Workpiece, 'innerAsDesigned' | 'arc'>,
  film: number,
): Of {
  const { inner } = rescue
  if (inner === undefined || innerAsDesigned === undefined) return rescue
  const larger = inner.grooveBottomDiameter - innerAsDesigned.grooveBottomDiameter
  const innerToCut: InnerToCut = {
    grooveBottomDiameter: inner.grooveBottomDiameter - film,
    ...(arc === undefined ? {} : { landDiameter: inner.landDiameter - film }),
    // Twice the design's play still runs well.
    isFinishedTooSmall: larger > innerAsDesigned.radialInternalClearance,
  }
  return { ...rescue, innerToCut }
}

/** A lining, or coats of finish, on the bottom of the groove. */
export function linedGroove(
  thickness: number,
  ballDiameter: number,
  arc: number | undefined,
  bearing: Tried,
): Extract<Rescue, { option: 'lining' }> {
  const grooveRadius = arc === undefined ? undefined : arc - thickness
  const facts = { option: 'lining', thickness, ...(grooveRadius === undefined ? {} : { grooveRadius }) } as const
  const obstacle = !(thickness >= THINNEST)
    ? 'too-thin'
    : grooveRadius !== undefined && grooveRadius < ballDiameter / 2
      ? 'rides-on-edges'
      : undefined
  return obstacle === undefined ? { ...facts, ...bearing } : { ...facts, ...bearing, possible: false, obstacle }
}

/** The one that is nearest the aim, possible ones first. */
export function nearest<T extends Tried>(all: readonly T[], aim: number, of: (tried: T) => number | undefined) {
  const possible = all.filter((each) => each.possible)
  const off = (each: T): number => Math.abs((of(each) ?? Number.POSITIVE_INFINITY) - aim)
  return (possible.length > 0 ? possible : all).toSorted((one, other) => off(one) - off(other))[0]
}

/** No bag of balls runs further off than this from what the ring was designed for. Common practice, no source. */
const LARGEST_BALL = 1.25
const HALVINGS = 60

/** The size of ball that brings a figure down to its aim. Undefined where no such bag is sold. */
const ballFor = (figure: (diameter: number) => number, aim: number, ballDiameter: number): number | undefined =>
  sizeFor(figure, aim, ballDiameter, LARGEST_BALL * ballDiameter)

/** The ends of a range of ball sizes are found to some ten thousandths of a millimetre. */
const RANGE_HALVINGS = 14

/**
 * The set of larger balls that brings a figure to its aim, and the sizes between which a set does: no shop sells a size to the hundredth, so a
 * maker sorts a bag for it.
 *
 * @param figure the figure with balls of a diameter, falling
 * @param tried what speaks against a set
 */
export function largerSet(
  figure: (diameter: number) => number,
  aim: number,
  ballDiameter: number,
  tried: (diameter: number) => Tried,
): Rescue {
  const diameter = ballFor(figure, aim, ballDiameter)
  if (diameter === undefined) return { option: 'larger-balls', possible: false, obstacle: 'out-of-band' }
  const set = { option: 'larger-balls', diameter, largerBy: diameter - ballDiameter, ...tried(diameter) } as const
  if (!set.possible) return set
  const does = (size: number) => tried(size).possible
  const [from] = endByHalving(does, diameter, ballDiameter, RANGE_HALVINGS)
  const [to] = endByHalving(does, diameter, LARGEST_BALL * ballDiameter, RANGE_HALVINGS)
  return { ...set, from, to }
}

/** The size between two at which a figure that falls has come down to its aim; undefined where it has not. */
export function sizeFor(
  figure: (size: number) => number,
  aim: number,
  least: number,
  most: number,
): number | undefined {
  if (figure(most) > aim) return undefined
  const [low, high] = endByHalving((size) => figure(size) > aim, least, most, HALVINGS)
  return (low + high) / 2
}
