import { type Groove, PLAIN_TRACK } from '#shared/geometry/groove.ts'
import { waysIn } from '#shared/geometry/ways-in.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { summary } from '#shared/statistics/summary.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { USUAL_DENOMINATOR } from '#shared/units/shop-figure.ts'
import { type Arrangement, nameOf, traitsOf } from './arrangement.ts'
import { type Assembly, assemblyOf, openAtItsSides } from './assembly.ts'
import * as defaults from './defaults.ts'
import type { BallsInput, DesignInput, GrooveInput, OutsideInput, RingInput, Split } from './design-input.ts'
import type { PartName, Refusal, RingName } from './refusal.ts'

/** Of an input with nothing left open what stands whatever lies round the balls and keeps them apart. */
export interface SettledBalls {
  /** The whole input; asked again, it gives the same bearing. */
  readonly input: DesignInput
  readonly traits: Arrangement
  /** JSON pointers of what was assumed, in the order of the input. */
  readonly assumed: readonly string[]
  /** Mean of the real balls where they were measured, else the nominal diameter. */
  readonly ballDiameter: Mm
  /** Standard deviation of single balls round their mean: measured, said or usual. */
  readonly ballScatter: Mm
  readonly finishAllowance: Mm
}

/** The same of a full ring of balls. */
export interface SettledBallRing extends SettledBalls {
  readonly ballGap: Mm
  readonly minBallGap: Mm
  readonly maxBallGap: Mm
}

/** The same of two rings, whatever keeps the balls apart. */
export interface SettledRings extends SettledBalls {
  readonly outerGroove: Groove
  readonly innerGroove: Groove
  readonly split: Split
  readonly radialInternalClearance: Mm
  readonly width: Mm
}

/** An input with nothing left open: what was asked, what was assumed, and the shapes that follow at once from both. */
export interface Settled extends SettledBallRing, SettledRings {
  readonly assembly: Assembly
}

/** A gap this near to a whole ball, in ball diameters, is a ring that lacks a ball. */
export const LARGEST_GAP = 0.95

/** A groove's depth and arc are given by name, so that a fault or a suggestion points at the name in use. */
export const depthPath = (input: DesignInput, part: PartName): string =>
  `/${part}/${input[part]?.grooveDepth === undefined ? 'engagement' : 'grooveDepth'}`

/** Where the arc of a ring's groove was said: at the ring or for both. */
export function groovePath(input: DesignInput, part: PartName): string {
  const own = part === 'plates' ? undefined : input[part]?.groove
  const groove = own ?? input.groove ?? {}
  const name =
    groove.grooveRadius === undefined
      ? groove.cutterDiameter === undefined
        ? 'conformity'
        : 'cutterDiameter'
      : 'grooveRadius'
  return `${own === undefined ? '' : `/${part}`}/groove/${name}`
}

/**
 * Fills in what was left out and works out what does not depend on the ring: the balls' mean, both grooves, the ways
 * in, the gap band. Pairs (`engagement` or `grooveDepth`, …) must have been told apart before; the length wins here.
 *
 * @returns all faults at once
 */
export function settle(input: DesignInput): Result<Settled, readonly Refusal[]> {
  const settling = settleRings(input)
  if (!settling.ok) return settling
  const rings = settling.value
  const { traits, ballDiameter, outerGroove } = rings
  const ways = waysIn({ groove: outerGroove, ballDiameter, ballCount: input.balls.count })
  const assembly = traits.raceway === 'groove' ? assemblyOf(ways, rings.split) : openAtItsSides(ways)
  const band = gapBand(input, ballDiameter, assembly.assemblyGap)
  const whole: DesignInput = { ...rings.input, ...band }
  return ok({ ...rings, input: whole, assumed: assumedIn(input, whole), assembly, ...band })
}

/** The rings' part of that. What else an arrangement has is added to `input` by whoever asks, who then knows what was assumed. */
export function settleRings(input: DesignInput): Result<Omit<SettledRings, 'assumed'>, readonly Refusal[]> {
  const foreign = foreignTo(input)
  if (foreign.length > 0) return fail(foreign)
  const traits = traitsOf(input)
  const { ballDiameter, ballScatter } = ballsOf(input, traits)
  const outerGroove = grooveOfRing(input, 'outerRing', ballDiameter, traits)
  const innerGroove = grooveOfRing(input, 'innerRing', ballDiameter, traits)
  const width = input.width ?? mm(defaults.WIDTH[traits.rolls] * ballDiameter)
  const faults = [
    ...tooFewMeasured(input),
    ...undercut(input, 'outerRing', outerGroove),
    ...undercut(input, 'innerRing', innerGroove),
    ...tooLong(input, width),
  ]
  if (faults.length > 0) return fail(faults)
  const split = traits.raceway === 'groove' ? (input.split ?? defaults.SPLIT[traits.ballSet]) : 'none'
  const radialInternalClearance = input.radialInternalClearance ?? mm(defaults.RADIAL_INTERNAL_CLEARANCE * ballDiameter)
  const finishAllowance = input.finishAllowance ?? defaults.FINISH_ALLOWANCE
  const whole: DesignInput = {
    units: input.units,
    ...(input.arrangement === undefined ? {} : { arrangement: input.arrangement }),
    balls: ballsInput(input, ballScatter, lengthOf(input, width, ballDiameter, traits)),
    bore: input.bore,
    ...ringsInput(input, ballDiameter, traits),
    radialInternalClearance,
    finishAllowance,
    width,
    ...(traits.raceway === 'groove' ? { split } : {}),
    ...(input.units === 'in' ? { shopDenominator: input.shopDenominator ?? USUAL_DENOMINATOR } : {}),
  }
  return ok({
    input: whole,
    traits,
    ballDiameter,
    ballScatter,
    outerGroove,
    innerGroove,
    split,
    radialInternalClearance,
    finishAllowance,
    width,
  })
}

/** Every name that an arrangement has not, wherever it was given. */
export function foreignTo(input: DesignInput): readonly Refusal[] {
  return traitsOf(input)
    .lacks.filter(({ names }) => isGiven(input, names))
    .map(({ path }) => ({ code: 'not-of-arrangement', path, arrangement: nameOf(input) }))
}

function isGiven(input: DesignInput, names: readonly string[]): boolean {
  let at: unknown = input
  for (const name of names) at = at === undefined ? undefined : Object(at)[name]
  return at !== undefined
}

/** A roller as long as the ring is wide, or longer, would be pinched between the cheeks. */
function tooLong({ balls: { length } }: DesignInput, width: Mm): readonly Refusal[] {
  return length === undefined || length < width
    ? []
    : [{ code: 'roller-longer-than-ring', path: '/balls/length', given: length, below: width }]
}

/** What rolls, with nothing left open but the length of rollers. */
export function ballsInput({ balls }: DesignInput, ballScatter: Mm, length?: Mm): BallsInput {
  const { count, diameter, diameters, material = defaults.BALL_MATERIAL } = balls
  return {
    count,
    diameter,
    ...(length === undefined ? {} : { length }),
    material,
    ...(diameters === undefined ? { standardDeviation: ballScatter } : { diameters }),
  }
}

/** Of rollers: what is left of the width when they run free; of a ring so narrow that nothing would be, half of it. */
function lengthOf({ balls }: DesignInput, width: Mm, diameter: Mm, { rolls }: Arrangement): Mm | undefined {
  if (rolls === 'balls') return undefined
  return balls.length ?? mm(Math.max(width - defaults.END_CLEARANCE * diameter, width / 2))
}

function ringsInput(
  input: DesignInput,
  ballDiameter: Mm,
  { raceway, ballSet }: Arrangement,
): Pick<DesignInput, 'outerRing' | 'innerRing' | 'groove'> {
  const outside = outsideInput(input.outerRing, input.units, mm(defaults.OUTER_WALL * ballDiameter))
  if (raceway === 'track') return { outerRing: outside }
  return {
    outerRing: { ...depthInput(input.outerRing, defaults.OUTER_ENGAGEMENT), ...outside },
    innerRing: depthInput(input.innerRing, defaults.INNER_ENGAGEMENT[ballSet]),
    ...(input.outerRing?.groove !== undefined && input.innerRing?.groove !== undefined
      ? {}
      : { groove: grooveInput(input.groove) }),
  }
}

export function ballsOf(
  { balls }: DesignInput,
  { rolls }: Arrangement,
): Pick<SettledBalls, 'ballDiameter' | 'ballScatter'> {
  const { diameter, diameters, material = defaults.BALL_MATERIAL, standardDeviation } = balls
  if (diameters === undefined || diameters.length === 0) {
    return {
      ballDiameter: diameter,
      ballScatter: standardDeviation ?? mm(defaults.SCATTER[rolls][material] * diameter),
    }
  }
  const measured = summary(diameters)
  return { ballDiameter: mm(measured.mean), ballScatter: mm(measured.standardDeviation) }
}

export function tooFewMeasured({ balls: { count, diameters } }: DesignInput): readonly Refusal[] {
  if (diameters === undefined || diameters.length >= count) return []
  return [{ code: 'too-few-measured', path: '/balls/diameters', given: diameters.length, needed: count }]
}

/** A depth that equals the radius within rounding is a half circle, not an undercut. */
const HALF_CIRCLE_WITHIN = 1e-12

function grooveOfRing(input: DesignInput, ring: RingName, ballDiameter: Mm, traits: Arrangement): Groove {
  if (traits.raceway === 'track') return PLAIN_TRACK
  return grooveOf(input[ring], input[ring]?.groove ?? input.groove, ballDiameter, usualEngagement(ring, traits))
}

/** How deep a ring's groove is where nobody says, in ball diameters. */
export const usualEngagement = (ring: RingName, { ballSet }: Arrangement): number =>
  ring === 'outerRing' ? defaults.OUTER_ENGAGEMENT : defaults.INNER_ENGAGEMENT[ballSet]

/** The groove of a ring or a plate that says its depth in one of two ways. */
export function grooveOf(
  part: Pick<RingInput, 'engagement' | 'grooveDepth'> | undefined,
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

export function undercut(input: DesignInput, ring: PartName, { radius, depth }: Groove): readonly Refusal[] {
  if (depth <= radius) return []
  return [{ code: 'groove-undercut', path: depthPath(input, ring), ring, depth, grooveRadius: radius }]
}

export function gapBand(
  input: DesignInput,
  ballDiameter: Mm,
  assemblyGap: Mm,
): Pick<Settled, 'ballGap' | 'minBallGap' | 'maxBallGap'> {
  const minBallGap = input.minBallGap ?? mm(defaults.MIN_BALL_GAP)
  const widest = input.maxBallGap ?? defaults.WIDEST_BALL_GAP * ballDiameter
  const wished = Math.max(defaults.BALL_GAP * ballDiameter, assemblyGap)
  const ballGap = input.ballGap ?? mm(Math.max(minBallGap, Math.min(wished, widest)))
  // No default of ours may be what a gap is refused for: the band reaches over the aim and stays below a whole ball.
  const above = Math.max(ballGap, minBallGap)
  const room = Math.max(defaults.MAX_BALL_GAP * ballDiameter, above + defaults.LEAST_BAND_ABOVE_AIM * ballDiameter)
  const maxBallGap = input.maxBallGap ?? mm(Math.min(room, (above + LARGEST_GAP * ballDiameter) / 2))
  return { ballGap, minBallGap, maxBallGap }
}

export function grooveInput(groove: GrooveInput | undefined): GrooveInput {
  if (groove?.grooveRadius !== undefined) return { grooveRadius: groove.grooveRadius }
  if (groove?.cutterDiameter !== undefined) return { cutterDiameter: groove.cutterDiameter }
  return { conformity: groove?.conformity ?? defaults.CONFORMITY }
}

export function depthInput(ring: RingInput | undefined, engagement: number): RingInput {
  const depth =
    ring?.grooveDepth === undefined ? { engagement: ring?.engagement ?? engagement } : { grooveDepth: ring.grooveDepth }
  return ring?.groove === undefined ? depth : { ...depth, groove: grooveInput(ring.groove) }
}

export function outsideInput(outside: OutsideInput | undefined, units: Units, usualWall: Mm): OutsideInput {
  if (outside?.outsideDiameter !== undefined) return { outsideDiameter: outside.outsideDiameter }
  const roundTo = outside?.roundOutsideDiameterTo
  return {
    wall: outside?.wall ?? usualWall,
    roundOutsideDiameterTo: roundTo === undefined ? defaults.roundOutsideDiameterTo(units) : roundTo,
  }
}

/** Everything that may be left out and is then assumed, in the order of the input. */
const OPEN: readonly (readonly [path: string, of: (input: DesignInput) => unknown])[] = [
  ['/balls/length', ({ balls }) => balls.length],
  ['/balls/material', ({ balls }) => balls.material],
  ['/balls/standardDeviation', ({ balls }) => balls.standardDeviation],
  ['/outerRing/engagement', ({ outerRing }) => outerRing?.engagement],
  ['/outerRing/groove/conformity', ({ outerRing }) => outerRing?.groove?.conformity],
  ['/outerRing/wall', ({ outerRing }) => outerRing?.wall],
  ['/outerRing/roundOutsideDiameterTo', ({ outerRing }) => outerRing?.roundOutsideDiameterTo],
  ['/innerRing/engagement', ({ innerRing }) => innerRing?.engagement],
  ['/innerRing/groove/conformity', ({ innerRing }) => innerRing?.groove?.conformity],
  ['/plates/engagement', ({ plates }) => plates?.engagement],
  ['/plates/wall', ({ plates }) => plates?.wall],
  ['/plates/roundOutsideDiameterTo', ({ plates }) => plates?.roundOutsideDiameterTo],
  ['/plates/thickness', ({ plates }) => plates?.thickness],
  ['/groove/conformity', ({ groove }) => groove?.conformity],
  ['/cage/web', ({ cage }) => cage?.web],
  ['/cage/pocketClearance', ({ cage }) => cage?.pocketClearance],
  ['/cage/landClearance', ({ cage }) => cage?.landClearance],
  ['/cage/width', ({ cage }) => cage?.width],
  ['/ballGap', ({ ballGap }) => ballGap],
  ['/minBallGap', ({ minBallGap }) => minBallGap],
  ['/maxBallGap', ({ maxBallGap }) => maxBallGap],
  ['/radialInternalClearance', ({ radialInternalClearance }) => radialInternalClearance],
  ['/finishAllowance', ({ finishAllowance }) => finishAllowance],
  ['/width', ({ width }) => width],
  ['/split', ({ split }) => split],
  ['/shopDenominator', ({ shopDenominator }) => shopDenominator],
]

/** What the whole input says and the caller's does not. */
export function assumedIn(asked: DesignInput, whole: DesignInput): readonly string[] {
  const assumed: string[] = []
  for (const [path, of] of OPEN) if (of(asked) === undefined && of(whole) !== undefined) assumed.push(path)
  return assumed
}
