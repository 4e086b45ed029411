import {
  atLeast,
  depthRemedies,
  fewBalls,
  finding,
  landFindings,
  length,
  oneRingMustOpen,
  playFindings,
  RINGS,
  reaches,
  ringGrooveFindings,
  shoulderFindings,
  stepOf,
  wallFindings,
} from '#shared/bearing/findings.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { deeperRing } from '#shared/bearing/ring-pair.ts'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Finding } from '#shared/bearing/warning.ts'
import { boreRadiusForWeb } from '#shared/geometry/cage.ts'
import { pitchDiameterForHalfTurn } from '#shared/geometry/eccentric-filling.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { stepDown } from '#shared/units/step.ts'
import type { CagedBearing } from './geometry.ts'
import { webToFill } from './resolve.ts'

/*
 * From where on a size of the cage is worth a warning, in ball diameters. All common practice, no source.
 */
const LEAST_WEB = 0.15
const LEAST_THICKNESS = 0.25
const LEAST_RIM = 0.1
/** However small the balls: thinner wood than this breaks in the hand. Common practice, no source. */
const LEAST_WOOD = mm(1.5)
/** Left between cage and land where both rings have moved to one side. */
const LEAST_CLEARANCE = 0.02

/** Everything about a caged bearing that is worth a warning. What it has in common with a full ring is in `findings.ts`. */
export function cagedFindings(bearing: CagedBearing): readonly Finding[] {
  return [
    ...fewBalls(bearing.resolved),
    ...fillingFindings(bearing),
    ...playFindings(bearing),
    ...RINGS.flatMap((ring) => ringGrooveFindings(bearing, ring)),
    ...landFindings(bearing),
    ...wallFindings(bearing),
    ...RINGS.flatMap((ring) => shoulderFindings(bearing, ring)),
    ...webFindings(bearing),
    ...rimFindings(bearing),
    ...thicknessFindings(bearing),
    ...clearanceFindings(bearing),
  ]
}

/** How much further in than the balls' centres the cage's bore lies. */
const insetOf = ({ pitchRadius, cage }: CagedBearing): number => pitchRadius - cage.boreDiameter / 2

const leastWood = ({ ballDiameter }: ResolvedBalls, part: number): Mm => mm(Math.max(LEAST_WOOD, part * ballDiameter))

function fillingFindings(bearing: CagedBearing): readonly Finding[] {
  const { resolved, eccentricFilling } = bearing
  if (resolved.split !== 'none') return []
  const { pockets, ballDiameter } = resolved
  const web = webToFill(pockets, ballDiameter, insetOf(bearing))
  const wide = pitchDiameterForHalfTurn(pockets.ballCount, ballDiameter)
  return oneRingMustOpen(resolved, eccentricFilling, ...(web === undefined ? [] : apartRemedies(bearing, web, wide)))
}

/** Balls further apart, said in the way in which this input says it, first as an even figure and then as it is. */
function apartRemedies({ resolved }: CagedBearing, web: Mm, pitchDiameter: Mm): readonly Suggestion[] {
  const isWhole = resolved.input.cage?.pitchDiameter !== undefined
  const [path, size] = isWhole ? (['/cage/pitchDiameter', pitchDiameter] as const) : (['/cage/web', web] as const)
  return atLeast(resolved, path, size)
}

function webFindings(bearing: CagedBearing): readonly Finding[] {
  const { resolved, cage } = bearing
  const least = leastWood(resolved, LEAST_WEB)
  if (reaches(cage.web, least)) return []
  const wide = mm(2 * (boreRadiusForWeb(least, resolved.pockets) + insetOf(bearing)))
  const remedies = apartRemedies(bearing, least, wide)
  const path = remedies[0]?.path ?? '/cage/web'
  return [finding('risk', path, { code: 'web-thin', web: cage.web, least }, ...remedies)]
}

function rimFindings({ resolved, cage }: CagedBearing): readonly Finding[] {
  const least = leastWood(resolved, LEAST_RIM)
  if (reaches(cage.rim, least)) return []
  const wide = mm(cage.pocketDiameter + 2 * least)
  const facts = { code: 'cage-rim-thin', rim: cage.rim, least } as const
  return [finding('risk', '/cage/width', facts, ...atLeast(resolved, '/cage/width', wide))]
}

/** A thin cage stands between lands that are near: the deeper groove is the one to make shallower. */
function thicknessFindings(bearing: CagedBearing): readonly Finding[] {
  const { resolved, cage } = bearing
  const least = leastWood(resolved, LEAST_THICKNESS)
  if (reaches(cage.thickness, least)) return []
  const ring = deeperRing(bearing)
  const { grooveDepth } = bearing[ring]
  const depth = mm(grooveDepth - (least - cage.thickness))
  const remedies = depth > 0 ? depthRemedies(resolved, ring, depth, 'down') : []
  const facts = { code: 'cage-thin', thickness: cage.thickness, least } as const
  return [finding('risk', '/cage/landClearance', facts, ...remedies)]
}

/** Aside by all its play, the inner ring pushes the cage against the outer land: what is left over is twice the clearance less that. */
function clearanceFindings({ resolved, cage, radialInternalClearance: play }: CagedBearing): readonly Finding[] {
  const least = mm(LEAST_CLEARANCE * resolved.ballDiameter)
  const left = mm(2 * resolved.landClearance - play / 2)
  const path = '/cage/landClearance'
  const found: Finding[] = []
  if (!reaches(left, least)) {
    const needed = mm((least + play / 2) / 2)
    found.push(finding('risk', path, { code: 'cage-rubs', left, least }, ...atLeast(resolved, path, needed)))
  }
  if (!reaches(resolved.width, cage.width)) {
    const facts = { code: 'cage-stands-out', width: cage.width, ringWidth: resolved.width } as const
    found.push(
      finding(
        'note',
        '/cage/width',
        facts,
        ...length('/cage/width', stepDown(resolved.width, stepOf(resolved)), resolved.width),
      ),
    )
  }
  return found
}
