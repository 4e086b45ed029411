import { ARRANGEMENTS, type Question, type RadialInput } from '#shared/bearing/arrangements.ts'
import * as defaults from '#shared/bearing/defaults.ts'
import type { InputOf } from '#shared/bearing/field.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import { denominatorInput } from '#shared/bearing/resolve.ts'
import { type LoadCheckInput, type ResolvedLoad, resolveLoad } from '#shared/questions/load/input.ts'
import type { Year } from '#shared/questions/season/input.ts'
import { inches, type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'

/** It searches among bearings of two grooved rings with a full ring of balls. */
export const DESIGN_SEARCH = { name: 'design-search', serves: ['radial'] } as const satisfies Question

/** Balls on hand, or to be had. */
export interface BallStock {
  readonly diameter: Mm
  readonly material?: BallMaterial
  /** Scatter of single balls round their mean. */
  readonly standardDeviation?: Mm
  /** How many there are; as many as are wanted when it is not said. */
  readonly quantity?: number
}

/** What a design is scored by, in the order in which it is told. */
export const CRITERIA = ['closure', 'wall', 'nesting', 'seat', 'sensitivity', 'material'] as const
export type Criterion = (typeof CRITERIA)[number]
export type Weights = Readonly<Record<Criterion, number>>

const { fields } = ARRANGEMENTS.radial.fields
/** What is the same in every design that is tried: the rows of a design. */
export const SHARED_FIELDS = {
  ballGap: fields.ballGap,
  minBallGap: fields.minBallGap,
  maxBallGap: fields.maxBallGap,
  radialInternalClearance: fields.radialInternalClearance,
  finishAllowance: fields.finishAllowance,
  width: fields.width,
  split: fields.split,
  shopDenominator: fields.shopDenominator,
}
export type SharedDesign = Pick<RadialInput, 'units'> & InputOf<typeof SHARED_FIELDS>

export const SHOWN = ['best-of-each-ring', 'all'] as const
/** `best-of-each-ring`: of the designs with the same balls and count only the best. */
export type Shown = (typeof SHOWN)[number]

/** The limits within which a maker looks for a bearing, and what is on hand. */
export interface DesignSearchInput {
  readonly shared: SharedDesign
  readonly outsideDiameter: { readonly least?: Mm; readonly most: Mm }
  readonly bore: { readonly least: Mm; readonly most: Mm; readonly step?: Mm }
  readonly balls: readonly BallStock[]
  readonly counts?: { readonly least?: number; readonly most?: number }
  /** Round-nosed cutters; the usual conformity when none is named. */
  readonly cutterDiameters?: readonly Mm[]
  readonly outerEngagements?: readonly number[]
  readonly innerEngagements?: readonly number[]
  /** Of the boards from which rings are cut; of any width when none is named. */
  readonly boardWidths?: readonly Mm[]
  /** Wood between two rings cut one out of the other: the cut, and what is left to turn. */
  readonly partingWidth?: Mm
  readonly weights?: Partial<Weights>
  /** Only designs whose groove, cut to the nearest figure of the rule, still leaves a gap within its band. */
  readonly onlyOnRule?: boolean
  /** What it is to carry without a deeper dent than is borne. */
  readonly load?: Pick<LoadCheckInput, 'radialLoad' | 'wood' | 'dentFraction'>
  /** The woods, and the year in which it is to run from end to end. */
  readonly year?: Year
  /** Every candidate, or of each ball and count only the best. */
  readonly show?: Shown
  readonly offset?: number
  readonly limit?: number
}

/** The input with nothing left open, and its grid: every combination of the lists is a candidate. */
export interface ResolvedSearch {
  readonly shared: SharedDesign
  readonly outsideDiameter: { readonly least: Mm; readonly most: Mm }
  readonly balls: readonly Required<Omit<BallStock, 'quantity'>>[]
  /** How many balls there are of each stock. */
  readonly quantities: readonly number[]
  /** undefined: the usual conformity. */
  readonly cutters: readonly (Mm | undefined)[]
  readonly outerEngagements: readonly number[]
  readonly innerEngagements: readonly number[]
  readonly counts: readonly number[]
  readonly bores: readonly Mm[]
  /** Ascending. */
  readonly boardWidths: readonly Mm[]
  readonly partingWidth: Mm
  readonly weights: Weights
  readonly onlyOnRule: boolean
  readonly load?: ResolvedLoad
  readonly year?: Year
  readonly show: Shown
  readonly offset: number
  readonly limit: number
}

/** Fewer run rough, and more are seldom turned. Common practice, no source. */
const COUNTS = { least: 6, most: 40 }
const LIMIT = 10
/** Common practice, no source: how much each counts when nothing is said. */
const WEIGHTS: Weights = { closure: 3, wall: 2, nesting: 1, seat: 2, sensitivity: 2, material: 1 }

const boreStep = (units: Units): Mm => (units === 'in' ? inches(1 / 8) : mm(2))
const partingWidth = (units: Units): Mm => (units === 'in' ? inches(1 / 4) : mm(6))

/** How many candidates must be found good: they fill the page, and tell whether there are more behind it. */
export const candidatesAsked = ({ offset = 0, limit = LIMIT }: Pick<DesignSearchInput, 'offset' | 'limit'>): number =>
  offset + limit + 1

/** How many candidates an input has, before any list of them is made: whoever asks for too many hears of it at once. */
export function candidatesIn(input: DesignSearchInput): number {
  const { least, most } = countsOf(input)
  return (
    input.balls.length *
    (input.cutterDiameters?.length ?? 1) *
    (input.outerEngagements?.length ?? 1) *
    (input.innerEngagements?.length ?? 1) *
    Math.max(0, most - least + 1) *
    boreCount(input)
  )
}

/** Both ends of the counts: what is said of one moves the other, if it must. */
export function countsOf({ counts: { least, most } = {} }: Pick<DesignSearchInput, 'counts'>): {
  readonly least: number
  readonly most: number
} {
  return {
    least: least ?? Math.min(COUNTS.least, most ?? COUNTS.least),
    most: most ?? Math.max(COUNTS.most, least ?? COUNTS.most),
  }
}

export function resolveSearch(input: DesignSearchInput): ResolvedSearch {
  const { shared, outsideDiameter, balls, cutterDiameters, boardWidths = [] } = input
  const { least, most } = countsOf(input)
  const step = boreStepOf(input)
  return {
    shared: wholeShared(shared),
    outsideDiameter: { least: outsideDiameter.least ?? mm(0), most: outsideDiameter.most },
    balls: balls.map(({ diameter, material = defaults.BALL_MATERIAL, standardDeviation }) => ({
      diameter,
      material,
      standardDeviation: standardDeviation ?? rounded(mm(defaults.BALL_SCATTER[material] * diameter), shared.units),
    })),
    quantities: balls.map(({ quantity = Number.POSITIVE_INFINITY }) => quantity),
    cutters: cutterDiameters ?? [undefined],
    outerEngagements: input.outerEngagements ?? [defaults.FULL_RING_ENGAGEMENT.outerRing],
    innerEngagements: input.innerEngagements ?? [defaults.FULL_RING_ENGAGEMENT.innerRing],
    counts: Array.from({ length: Math.max(0, most - least + 1) }, (_, place) => least + place),
    bores: Array.from({ length: boreCount(input) }, (_, place) =>
      place === 0 ? input.bore.least : rounded(mm(input.bore.least + place * step), shared.units),
    ),
    boardWidths: [...boardWidths].sort((one, other) => one - other),
    partingWidth: input.partingWidth ?? partingWidth(shared.units),
    weights: { ...WEIGHTS, ...input.weights },
    onlyOnRule: input.onlyOnRule ?? false,
    // Wooden balls are taken to be of the rings' wood.
    ...(input.load === undefined ? {} : { load: resolveLoad(input.load, true) }),
    ...(input.year === undefined ? {} : { year: input.year }),
    show: input.show ?? 'best-of-each-ring',
    offset: input.offset ?? 0,
    limit: input.limit ?? LIMIT,
  }
}

/** With the defaults that are one value for all designs. */
const wholeShared = (shared: SharedDesign): SharedDesign => ({
  minBallGap: mm(defaults.MIN_BALL_GAP),
  finishAllowance: defaults.FINISH_ALLOWANCE,
  split: 'inner-ring',
  ...denominatorInput(shared),
  ...shared,
})

export const boreStepOf = ({ bore, shared }: Pick<DesignSearchInput, 'bore' | 'shared'>): Mm =>
  bore.step ?? boreStep(shared.units)

/** A step that comes to the largest bore within rounding comes to it. */
const WITHIN = 1e-9

const boreCount = (input: DesignSearchInput): number =>
  Math.max(0, Math.floor((input.bore.most - input.bore.least) / boreStepOf(input) + WITHIN) + 1)
