import type { Groove } from '#shared/geometry/groove.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { Result } from '#shared/result.ts'
import { summary } from '#shared/statistics/summary.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded, roundedDown, roundedUp } from '#shared/units/rounded.ts'
import { USUAL_DENOMINATOR } from '#shared/units/shop-figure.ts'
import type { Assembly } from './assembly.ts'
import * as defaults from './defaults.ts'
import { type Fields, type Group, type InputOf, leavesOf, type ValueOf, valueAt } from './field.ts'
import type {
  BALLS,
  BallMaterial,
  depthFields,
  GROOVE,
  gapFields,
  innerRingGroup,
  outerRingGroup,
  outsideFields,
  ShopDenominator,
  Split,
  Tagged,
} from './fields.ts'
import type { PartName, Refusal } from './refusal.ts'
import type { Outside } from './rings.ts'
import type { Traits } from './traits.ts'

/*
 * The steps by which an arrangement resolves its input: fills in what was left out, and works out what follows from it at
 * once. What only one arrangement needs is in its own folder.
 */

export type BallsInput = ValueOf<typeof BALLS> & { readonly length?: Mm }
export type GrooveInput = ValueOf<typeof GROOVE>
export type DepthInput = InputOf<ReturnType<typeof depthFields>>
export type OutsideInput = InputOf<ReturnType<typeof outsideFields>>
export type OuterRingInput = ValueOf<ReturnType<typeof outerRingGroup>>
export type InnerRingInput = ValueOf<ReturnType<typeof innerRingGroup>>
export type GapInput = InputOf<ReturnType<typeof gapFields>>

/** The fields of every design input. */
export interface AnyInput extends Omit<Tagged<string>, 'arrangement'> {
  readonly arrangement?: string
  readonly balls: BallsInput
  readonly bore: Mm
  readonly finishAllowance?: Mm
  readonly shopDenominator?: ShopDenominator
}

/** The input of two rings, with or without grooves. */
export interface RingsInput extends AnyInput {
  readonly outerRing?: OutsideInput & DepthInput & { readonly groove?: GrooveInput }
  readonly innerRing?: InnerRingInput
  readonly groove?: GrooveInput
  readonly radialInternalClearance?: Mm
  readonly width?: Mm
}

/** The part of a resolved input that every arrangement shares. */
export interface ResolvedBalls {
  /** The whole input; sent again, it gives the same bearing. */
  readonly input: AnyInput
  readonly traits: Traits
  /** JSON pointers of what was assumed, in the order of the input. */
  readonly assumed: readonly string[]
  /** Mean of the real balls where they were measured, else the nominal diameter. */
  readonly ballDiameter: Mm
  /** Standard deviation of single balls round their mean: measured, stated or usual. */
  readonly ballScatter: Mm
  readonly finishAllowance: Mm
}

/** The same of a full ring of balls. */
export interface ResolvedBallRing extends ResolvedBalls {
  readonly ballGap: Mm
  readonly minBallGap: Mm
  readonly maxBallGap: Mm
  readonly assembly: Assembly
}

/** The same of two rings, whatever keeps the balls apart. */
export interface ResolvedRings extends ResolvedBalls {
  readonly input: RingsInput
  readonly outerGroove: Groove
  readonly innerGroove: Groove
  readonly split: Split
  readonly outside: Outside
  readonly radialInternalClearance: Mm
  readonly width: Mm
  /** Depth of the grooves that a maker would cut without being told, in ball diameters. */
  readonly usualEngagement: { readonly outerRing: number; readonly innerRing: number }
}

/** The same of two rings with a full ring between them. */
export interface Resolved extends ResolvedBallRing, ResolvedRings {
  readonly input: RingsInput
}

/** A gap this near to a whole ball, in ball diameters, is a ring that lacks a ball. Derived here. */
export const LARGEST_GAP = 0.95

type Part = DepthInput & { readonly groove?: GrooveInput }
/** The parts of an input that may have a groove. */
export type GroovedParts = { readonly [Name in PartName]?: Part } & { readonly groove?: GrooveInput }

/** The parts of an input that may have an outside. */
export type OutsideParts = { readonly [Name in Exclude<PartName, 'innerRing'>]?: OutsideInput }

/** A groove's depth and arc can be stated in several ways: a fault or a suggestion points at the one in use. */
export const depthPath = (input: GroovedParts, part: PartName): string =>
  `/${part}/${input[part]?.grooveDepth === undefined ? 'engagement' : 'grooveDepth'}`

/** An outside can be stated by its own size, or by the wood behind what is cut: the one in use. */
export const outsidePath = (input: OutsideParts, part: keyof OutsideParts): string =>
  `/${part}/${input[part]?.outsideDiameter === undefined ? 'wall' : 'outsideDiameter'}`

/** The path at which the arc of a part's groove was stated: the part's own, or that of both. */
export function groovePath(input: GroovedParts, part: PartName): string {
  const own = input[part]?.groove
  const groove = own ?? input.groove ?? {}
  const name =
    groove.grooveRadius === undefined
      ? groove.cutterDiameter === undefined
        ? 'conformity'
        : 'cutterDiameter'
      : 'grooveRadius'
  return `${own === undefined ? '' : `/${part}`}/groove/${name}`
}

/** The balls with every default filled in; `length` where they have one. */
export function ballsInput({ balls }: AnyInput, ballScatter: Mm, length?: Mm): BallsInput {
  const { count, diameter, diameters, material = defaults.BALL_MATERIAL } = balls
  return {
    count,
    diameter,
    ...(length === undefined ? {} : { length }),
    material,
    ...(diameters === undefined ? { standardDeviation: ballScatter } : { diameters }),
  }
}

/**
 * The mean and the scatter of the balls: measured, stated or usual.
 *
 * @param usualScatter by material, in ball diameters
 */
export function ballsOf(
  { balls, units }: AnyInput,
  usualScatter: Readonly<Record<BallMaterial, number>>,
): Pick<ResolvedBalls, 'ballDiameter' | 'ballScatter'> {
  const { diameter, diameters, material = defaults.BALL_MATERIAL, standardDeviation } = balls
  if (diameters === undefined || diameters.length === 0) {
    const ballScatter = standardDeviation ?? rounded(mm(usualScatter[material] * diameter), units)
    return { ballDiameter: diameter, ballScatter }
  }
  const measured = summary(diameters)
  return { ballDiameter: mm(measured.mean), ballScatter: mm(measured.standardDeviation) }
}

/**
 * Where the middle one of the measured balls is so far from their diameter, as a part of it, they are others, or one of the two is a
 * slip: common practice, no source.
 */
const OTHER_BALLS = 0.1

/** Why measured diameters cannot be those of a bearing's balls. */
export function faultsOfMeasured({ balls: { count, diameter, diameters } }: AnyInput): readonly Refusal[] {
  if (diameters === undefined || diameters.length === 0) return []
  const path = '/balls/diameters'
  const middle = itemAt(
    [...diameters].sort((one, other) => one - other),
    Math.floor(diameters.length / 2),
  )
  return [
    ...(diameters.length < count
      ? [{ code: 'too-few-measured', path, given: diameters.length, needed: count } as const]
      : []),
    ...(Math.abs(middle - diameter) > OTHER_BALLS * diameter
      ? [{ code: 'other-balls-measured', path, middle, diameter } as const]
      : []),
  ]
}

/** A depth that equals the radius within rounding is a half circle, not an undercut. */
const HALF_CIRCLE_WITHIN = 1e-12

/** The groove of a part that states its depth in one of two ways. */
export function grooveOf(
  part: DepthInput | undefined,
  arc: GrooveInput | undefined,
  ballDiameter: Mm,
  engagement: number,
): Groove {
  const depth = part?.grooveDepth ?? mm((part?.engagement ?? engagement) * ballDiameter)
  const { conformity, grooveRadius, cutterDiameter } = grooveInput(arc)
  const radius =
    grooveRadius ??
    (cutterDiameter === undefined ? mm((conformity ?? defaults.CONFORMITY) * ballDiameter) : mm(cutterDiameter / 2))
  return { radius, depth: depth <= radius * (1 + HALF_CIRCLE_WITHIN) ? mm(Math.min(depth, radius)) : depth }
}

export function undercut(input: GroovedParts, ring: PartName, { radius, depth }: Groove): readonly Refusal[] {
  if (depth <= radius) return []
  return [{ code: 'groove-undercut', path: depthPath(input, ring), ring, depth, grooveRadius: radius }]
}

/**
 * The gap to aim for and its limits, with the defaults filled in. A default never is what a gap is refused for: the aim keeps
 * to the limits that are stated, the limits lie round the aim, and both stay below a whole ball.
 */
export function gapBand(
  input: GapInput & Pick<AnyInput, 'units'>,
  ballDiameter: Mm,
  { assemblyGap }: Assembly,
): Pick<ResolvedBallRing, 'ballGap' | 'minBallGap' | 'maxBallGap'> {
  const { units, minBallGap = mm(defaults.MIN_BALL_GAP) } = input
  // Rounded up, so that the last ball still goes in.
  const least = (...gaps: readonly number[]): Mm => roundedUp(mm(Math.max(...gaps)), units)
  const most = (gap: number): Mm => roundedDown(mm(gap), units)
  const usualGap = least(defaults.BALL_GAP * ballDiameter, assemblyGap + defaults.GAP_BEYOND_ASSEMBLY)
  const widestGap = input.maxBallGap ?? most(defaults.WIDEST_BALL_GAP * ballDiameter)
  const ballGap = input.ballGap ?? mm(Math.max(minBallGap, Math.min(usualGap, widestGap)))
  const above = Math.max(ballGap, minBallGap)
  const usualMax = least(
    defaults.MAX_BALL_GAP * ballDiameter,
    above + defaults.LEAST_BAND_ABOVE_AIM * ballDiameter,
    assemblyGap + defaults.BAND_BEYOND_ASSEMBLY,
  )
  // Of an aim that is itself beyond the widest, half of what is left.
  const widestMax = most(
    Math.max(defaults.WIDEST_MAX_BALL_GAP * ballDiameter, (above + LARGEST_GAP * ballDiameter) / 2),
  )
  const maxBallGap = input.maxBallGap ?? mm(Math.max(above, Math.min(usualMax, widestMax)))
  return { ballGap, minBallGap, maxBallGap }
}

/** A groove's arc with its default filled in, in the one way in which it was stated. */
export function grooveInput(groove: GrooveInput | undefined): GrooveInput {
  if (groove?.grooveRadius !== undefined) return { grooveRadius: groove.grooveRadius }
  if (groove?.cutterDiameter !== undefined) return { cutterDiameter: groove.cutterDiameter }
  return { conformity: groove?.conformity ?? defaults.CONFORMITY }
}

/** The groove that both rings share, where not each of them states its own. */
export const sharedGrooveInput = ({ outerRing, innerRing, groove }: RingsInput): { readonly groove?: GrooveInput } =>
  outerRing?.groove !== undefined && innerRing?.groove !== undefined ? {} : { groove: grooveInput(groove) }

/** A part's depth, and a groove of its own, with the default filled in. */
export function depthInput(part: Part | undefined, engagement: number): Part {
  const depth =
    part?.grooveDepth === undefined ? { engagement: part?.engagement ?? engagement } : { grooveDepth: part.grooveDepth }
  return part?.groove === undefined ? depth : { ...depth, groove: grooveInput(part.groove) }
}

/** The outside with its defaults filled in, in the one way in which it was stated. */
export function outsideInput(outside: OutsideInput | undefined, units: Units, usualWall: Mm): Outside {
  if (outside?.outsideDiameter !== undefined) return { outsideDiameter: outside.outsideDiameter }
  const roundTo = outside?.roundOutsideDiameterTo
  return {
    wall: outside?.wall ?? rounded(usualWall, units),
    roundOutsideDiameterTo: roundTo === undefined ? defaults.roundOutsideDiameterTo(units) : roundTo,
  }
}

/** The rule's denominator: of inches only. */
export const denominatorInput = ({
  units,
  shopDenominator,
}: Pick<AnyInput, 'units' | 'shopDenominator'>): { readonly shopDenominator?: ShopDenominator } =>
  units === 'in' ? { shopDenominator: shopDenominator ?? USUAL_DENOMINATOR } : {}

type KeysOf<T> = T extends unknown ? keyof T : never
type AtKey<T, Name extends PropertyKey> = T extends { readonly [N in Name]?: infer V } ? NonNullable<V> : never

/** The names of the rows that an input never states, at whatever depth; `never` where it states them all. */
type Forgotten<F extends Fields, Whole> = {
  [Name in keyof F & string]: Name extends KeysOf<Whole>
    ? F[Name] extends { kind: 'group'; fields: infer Inner extends Fields }
      ? `${Name}.${Forgotten<Inner, AtKey<Whole, Name>>}`
      : never
    : Name
}[keyof F & string]

/** The same input where its type states every row, and else a type that names those it forgets. */
type Complete<F extends Fields, Whole> = [Forgotten<F, Whole>] extends [never]
  ? Whole
  : { readonly forgotten: Forgotten<F, Whole> }

/**
 * An input with every default filled in, and what is carried along beside its rows. A row that is forgotten does not compile: what is not stated here is neither echoed
 * nor named among the assumptions.
 */
export const wholeInput = <const F extends Fields, Whole extends InputOf<F>>(
  _rows: Group<F>,
  { making, seasoned }: Pick<AnyInput, 'making' | 'seasoned'>,
  whole: Whole & Complete<F, Whole>,
): Whole => ({ ...whole, ...(making && { making }), ...(seasoned && { seasoned }) })

/** JSON pointers of what the whole input states and the caller's does not, or has from the season. */
export const assumedIn = ({ fields }: Group, input: AnyInput, whole: AnyInput): readonly string[] =>
  leavesOf(fields)
    .filter(
      ({ path, names }) =>
        (valueAt(input, names) === undefined || input.seasoned?.paths.includes(path)) &&
        valueAt(whole, names) !== undefined,
    )
    .map(({ path }) => path)

/** A resolved input, or all faults at once. */
export type Resolution<S> = Result<S, readonly Refusal[]>
