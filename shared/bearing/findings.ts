import type { EccentricFilling } from '#shared/geometry/eccentric-filling.ts'
import { grooveDepthForSeat } from '#shared/geometry/seat.ts'
import { toDecimals } from '#shared/numbers/decimals.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { shopFigure, shopStep } from '#shared/units/shop-figure.ts'
import { stepDown, stepUp } from '#shared/units/step.ts'
import { type BallRing, gapAt, gapLimits } from './ball-ring.ts'
import * as defaults from './defaults.ts'
import type { FullRings } from './full-rings.ts'
import { plugReading } from './plug-reading.ts'
import type { PartName, RingName } from './refusal.ts'
import {
  depthPath,
  type GroovedParts,
  groovePath,
  type OutsideParts,
  outsidePath,
  type ResolvedBalls,
} from './resolve.ts'
import { deeperRing, type RingPair, shoulder } from './ring-pair.ts'
import type { Ring } from './rings.ts'
import { leastScrewWall } from './screw-wall.ts'
import type { Suggestion } from './suggestion.ts'
import type { Finding, WarningFacts } from './warning.ts'

/*
 * From where on a size is worth a warning. All common practice, no source; in ball diameters unless said otherwise.
 * `reaches` and `exceeds` leave a rounding error out of account, so that a size set to the limit is clear of it.
 */
const LEAST_LAND_GAP = 0.05
export const LEAST_WALL = 1 / 3
const LEAST_SHOULDER = 0.1
const LEAST_ENGAGEMENT = 0.15
export const MOST_CONFORMITY = 0.65
const LEAST_PLAY = 0.005
const FEWEST_FOR_SMOOTH_RUNNING = 6
/** Below the bolts that a lathe or a model takes, a smaller bore is no advice. */
const LEAST_BORE = mm(3)

const WITHIN = 1e-9
export const reaches = (value: number, least: number): boolean => value >= least - WITHIN * Math.abs(least)
const exceeds = (value: number, most: number): boolean => value > most + WITHIN * Math.abs(most)

export const RINGS = ['outerRing', 'innerRing'] as const satisfies readonly RingName[]

/** The circle and the gauge by which a full ring is cut to its gap, where the rule may spoil it. */
export const fullRingShopFindings = (bearing: FullRings): readonly Finding[] =>
  shopFindings(bearing, [
    [
      'grooveBottomDiameter',
      bearing.outerRing.grooveBottomDiameter,
      bearing.gapPerGrooveDepth / bearing.gapPerPitchRadius,
    ],
    ['gaugeDiameter', bearing.gauge.nominalDiameter, 1],
  ])

export const finding = (
  severity: Finding['severity'],
  path: string,
  facts: WarningFacts,
  ...remedies: Suggestion[]
): Finding => ({
  severity,
  path,
  facts,
  remedies,
})

export const length = (path: string, ...values: Mm[]): Suggestion[] =>
  values.map((value) => ({ path, kind: 'length', value }))
const number = (path: string, ...values: number[]): Suggestion[] =>
  values.map((value) => ({ path, kind: 'number', value }))

export const stepOf = ({ input }: ResolvedBalls): Mm => shopStep(input.units, input.shopDenominator)

/** A length of no less than so much: first as an even figure, then as it is. */
export const atLeast = (resolved: ResolvedBalls, path: string, size: Mm): Suggestion[] =>
  length(path, stepUp(size, stepOf(resolved)), size)

export function fewBalls({ input }: ResolvedBalls): readonly Finding[] {
  const { count } = input.balls
  if (!(count < FEWEST_FOR_SMOOTH_RUNNING)) return []
  const facts = { code: 'few-balls', count, fewest: FEWEST_FOR_SMOOTH_RUNNING } as const
  return [finding('risk', '/balls/count', facts, ...number('/balls/count', FEWEST_FOR_SMOOTH_RUNNING))]
}

/** Whether so many balls can be put between rings of one piece, and what would help besides splitting one. */
export function oneRingMustOpen(
  { input, traits }: ResolvedBalls,
  { mostBalls, roomBetweenLands }: EccentricFilling,
  ...remedies: Suggestion[]
): readonly Finding[] {
  const { count } = input.balls
  // three balls with a gap of nearly half a ball are the one full ring that goes in
  if (count <= mostBalls && roomBetweenLands) return []
  const facts = { code: 'cannot-assemble', ballSet: traits.ballSet, count, mostBalls, roomBetweenLands } as const
  const split: Suggestion = { path: '/split', kind: 'choice', value: 'inner-ring' }
  return [finding('fault', '/split', facts, ...remedies, split)]
}

export function gapFindings({ resolved, assembly, ballGap }: FullRings): readonly Finding[] {
  const { assemblyGap } = assembly
  const { maxBallGap } = resolved
  const found: Finding[] = []
  if (!reaches(ballGap, assemblyGap)) {
    const facts = { code: 'gap-below-assembly-gap', ballGap, assemblyGap } as const
    found.push(finding('risk', '/ballGap', facts, ...atLeast(resolved, '/ballGap', assemblyGap)))
  }
  if (!reaches(maxBallGap, assemblyGap)) {
    const facts = { code: 'band-below-assembly-gap', maxBallGap, assemblyGap } as const
    const widened = mm(assemblyGap + defaults.BAND_BEYOND_ASSEMBLY)
    found.push(finding('risk', '/maxBallGap', facts, ...atLeast(resolved, '/maxBallGap', widened)))
  }
  return found
}

/** From this chance on the plugs mislead more often than not. */
const MISLEADING = 0.5

/** A ring that the plugs call finished, and that is not by the rule. */
export function plugFindings(ring: BallRing): readonly Finding[] {
  const { resolved } = ring
  const { probability, decides } = plugReading(ring)
  if (decides || probability === undefined) return []
  const { inBand, tooDeep } = probability
  const chance = tooDeep / (inBand + tooDeep)
  const { ballScatter: scatter, maxBallGap, input } = resolved
  const path = input.balls.diameters === undefined ? '/balls/standardDeviation' : '/balls/diameters'
  const facts = { code: 'plugs-cannot-tell', scatter, maxBallGap, tooDeep: chance } as const
  return [finding(chance < MISLEADING ? 'note' : 'risk', path, facts)]
}

export function playFindings({ resolved, radialInternalClearance: play }: RingPair): readonly Finding[] {
  const least = mm(LEAST_PLAY * resolved.ballDiameter)
  if (reaches(play, least)) return []
  const usual = mm(defaults.RADIAL_INTERNAL_CLEARANCE * resolved.ballDiameter)
  const path = '/radialInternalClearance'
  return [finding('risk', path, { code: 'no-play', play, least }, ...atLeast(resolved, path, usual))]
}

export const ringGrooveFindings = (pair: RingPair, ring: RingName): readonly Finding[] =>
  grooveFindings(pair.resolved, ring, pair[ring], pair.resolved.usualEngagement[ring])

/** A resolved input that may have grooves. */
interface GroovedBalls extends ResolvedBalls {
  readonly input: ResolvedBalls['input'] & GroovedParts
}

/** Findings about a groove, in whichever part it is cut. */
export function grooveFindings(
  resolved: GroovedBalls,
  ring: PartName,
  { seatDepth, grooveDepth, grooveRadius, seat }: Pick<Ring, 'seatDepth' | 'grooveDepth' | 'grooveRadius' | 'seat'>,
  usual: number,
): readonly Finding[] {
  const { ballDiameter, input } = resolved
  const ballRadius = mm(ballDiameter / 2)
  const path = groovePath(input, ring)
  const found: Finding[] = []
  if (seat === 'edges') {
    const facts = { code: 'rides-on-edges', ring, grooveRadius, ballRadius, seatDepth, grooveDepth } as const
    found.push(finding('risk', path, facts, ...arcRemedies(resolved, path)))
  }
  const widest = mm(MOST_CONFORMITY * ballDiameter)
  if (exceeds(grooveRadius, widest)) {
    found.push(
      finding('risk', path, { code: 'ball-wanders', ring, grooveRadius, most: widest }, ...arcRemedies(resolved, path)),
    )
  }
  const least = mm(LEAST_ENGAGEMENT * ballDiameter)
  if (!reaches(seatDepth, least)) {
    const depth = grooveDepthForSeat(least, grooveRadius, ballDiameter)
    const remedies = depth === undefined ? [] : depthRemedies(resolved, ring, depth, 'up')
    found.push(
      finding('risk', depthPath(input, ring), { code: 'shallow-engagement', ring, seatDepth, least }, ...remedies),
    )
  }
  if (!exceeds(ballRadius, grooveDepth)) {
    const facts = { code: 'groove-past-middle', ring, grooveDepth, ballRadius } as const
    const remedies = depthRemedies(resolved, ring, mm(usual * ballDiameter), 'down')
    found.push(finding('fault', depthPath(input, ring), facts, ...remedies))
  }
  return found
}

/** The usual arc, said in the way in which this input says it. */
function arcRemedies(resolved: ResolvedBalls, path: string): readonly Suggestion[] {
  const radius = defaults.CONFORMITY * resolved.ballDiameter
  if (path.endsWith('conformity')) return number(path, defaults.CONFORMITY)
  return atLeast(resolved, path, mm(path.endsWith('cutterDiameter') ? 2 * radius : radius))
}

/** A groove depth, said in the way in which this input says it, first as an even figure and then as it is. */
export function depthRemedies(
  resolved: GroovedBalls,
  part: PartName,
  depth: Mm,
  way: 'up' | 'down',
): readonly Suggestion[] {
  const path = depthPath(resolved.input, part)
  const round = way === 'up' ? stepUp : stepDown
  if (path.endsWith('grooveDepth')) return length(path, round(depth, stepOf(resolved)), depth)
  const engagement = depth / resolved.ballDiameter
  return number(path, toDecimals(round(engagement, mm(0.01)), 2), engagement)
}

export function landFindings(bearing: RingPair): readonly Finding[] {
  const { resolved, leastLandGap } = bearing
  const least = mm(LEAST_LAND_GAP * resolved.ballDiameter)
  if (reaches(leastLandGap, least)) return []
  const ring = deeperRing(bearing)
  const { grooveRadius, seatDepth } = bearing[ring]
  const seat = mm(seatDepth - (least - leastLandGap))
  const depth = seat > 0 ? grooveDepthForSeat(seat, grooveRadius, resolved.ballDiameter) : undefined
  const remedies = depth === undefined ? [] : depthRemedies(resolved, ring, depth, 'down')
  const isClear = leastLandGap > WITHIN * resolved.ballDiameter
  const facts: WarningFacts = isClear
    ? { code: 'lands-nearly-touch', leastLandGap, least }
    : { code: 'lands-touch', leastLandGap }
  return [finding(isClear ? 'risk' : 'fault', depthPath(resolved.input, ring), facts, ...remedies)]
}

export function wallFindings(bearing: RingPair): readonly Finding[] {
  const { resolved, outerRing: outer, innerRing: inner } = bearing
  const least = mm(LEAST_WALL * resolved.ballDiameter)
  const found = [...outerWallFindings(resolved, 'outerRing', outer.wall, outer.grooveBottomDiameter)]
  const thicker = (wall: Mm): readonly Suggestion[] =>
    moreWoodInside(resolved, inner.grooveBottomDiameter - 2 * wall, bearing.pitchRadius + (wall - inner.wall))
  if (!reaches(inner.wall, least)) {
    found.push(finding('risk', '/bore', { code: 'inner-wall-thin', wall: inner.wall, least }, ...thicker(least)))
  }
  const screwed = leastScrewWall(resolved.input.units)
  if (resolved.split === 'inner-ring' && !reaches(inner.wall, screwed)) {
    const facts = { code: 'no-room-for-screws', wall: inner.wall, least: screwed } as const
    found.push(finding('risk', '/bore', facts, ...thicker(screwed)))
  }
  return found
}

/** @param hollow across what is cut into the part, at its widest [mm] */
export function outerWallFindings(
  resolved: ResolvedBalls & { readonly input: OutsideParts },
  part: keyof OutsideParts,
  wall: Mm,
  hollow: number,
): readonly Finding[] {
  const least = mm(LEAST_WALL * resolved.ballDiameter)
  if (reaches(wall, least)) return []
  const path = outsidePath(resolved.input, part)
  const size = path.endsWith('wall') ? least : mm(hollow + 2 * least)
  return [finding('risk', path, { code: 'outer-wall-thin', wall, least }, ...atLeast(resolved, path, size))]
}

/** Two ways to more wood round the bore: a bore no larger than this, or balls that run on a circle this large. */
export function moreWoodInside(resolved: ResolvedBalls, bore: number, pitchRadius: number): readonly Suggestion[] {
  const even = stepDown(bore, stepOf(resolved))
  return [...(even >= LEAST_BORE ? length('/bore', even) : []), ...moreBalls(resolved, pitchRadius)]
}

/** So many balls as close on a circle that large: with them there is room inside. */
function moreBalls({ ballDiameter }: ResolvedBalls, pitchRadius: number): readonly Suggestion[] {
  const count = Math.ceil(Math.PI / Math.asin(Math.min(1, ballDiameter / (2 * pitchRadius))))
  return number('/balls/count', count)
}

export function shoulderFindings(bearing: RingPair, ring: RingName): readonly Finding[] {
  const { ballDiameter, width } = bearing.resolved
  const least = mm(LEAST_SHOULDER * ballDiameter)
  const side = shoulder(bearing, ring)
  if (reaches(side, least)) return []
  const { grooveWidth } = bearing[ring]
  // both rings are as wide: enough for the wider groove, so that the other ring does not ask again
  const wide = mm(Math.max(bearing.outerRing.grooveWidth, bearing.innerRing.grooveWidth) + 2 * least)
  const facts: WarningFacts =
    side > 0
      ? { code: 'shoulders-thin', ring, shoulder: side, least }
      : { code: 'groove-wider-than-ring', ring, grooveWidth, width }
  return [finding(side > 0 ? 'risk' : 'fault', '/width', facts, ...atLeast(bearing.resolved, '/width', wide))]
}

/** The finest rule that a shop has, as a fraction of an inch. */
const FINEST_DENOMINATOR = 128

type Measured = Extract<WarningFacts, { code: 'shop-rounding-spoils-gap' }>['dimension']

/** Sizes by which a ring is cut to its gap, each with how far the balls move per unit of its radius. */
export function shopFindings(
  ring: BallRing,
  measured: readonly (readonly [dimension: Measured, diameter: Mm, perRadius: number])[],
): readonly Finding[] {
  const { resolved, pitchRadius } = ring
  const { ballDiameter, input } = resolved
  const { least, most } = gapLimits(resolved)
  return measured.flatMap(([dimension, diameter, perRadius]) => {
    const { text, error } = shopFigure(diameter, input.units, input.shopDenominator)
    const gapThere = gapAt(ring, mm(pitchRadius + (perRadius * error) / 2)) ?? mm(-ballDiameter)
    const within = WITHIN * ballDiameter
    if (gapThere >= least - within && gapThere <= most + within) return []
    const facts = {
      code: 'shop-rounding-spoils-gap',
      dimension,
      shop: text,
      shopError: error,
      gapThere,
      least,
      most,
    } as const
    const finer = input.units === 'in' ? number('/shopDenominator', FINEST_DENOMINATOR) : []
    return [finding('risk', '/ballGap', facts, ...finer, ...length('/ballGap', ...evenGaps(ring, diameter)))]
  })
}

/** Ball gaps that put a diameter on a figure of the rule: the nearest below, and the nearest two above. */
function evenGaps(ring: BallRing, diameter: Mm): readonly Mm[] {
  const step = stepOf(ring.resolved)
  return [stepDown(diameter, step), stepUp(diameter, step), mm(stepUp(diameter, step) + step)]
    .map((even) => gapAt(ring, mm(ring.pitchRadius + (even - diameter) / 2)))
    .filter((gap): gap is Mm => gap !== undefined && gap >= 0)
}
