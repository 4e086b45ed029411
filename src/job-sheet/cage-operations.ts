import type { CagedDesign } from '#shared/bearing/arrangements.ts'
import { turnRatios } from '#shared/questions/load/speeds.ts'
import { mm } from '#shared/units/length.ts'
import * as words from '#src/words/job-sheet/cage.ts'
import { OUTER_GROOVE } from '#src/words/job-sheet/outer-ring.ts'
import { READINGS, SIZES } from '#src/words/job-sheet/sizes.ts'
import { glueUp } from './joint-operations.ts'
import {
  dowelOf,
  glassCautions,
  halfOf,
  type Job,
  type Operation,
  ringCautions,
  sawLine,
  size,
  thicknesses,
  unitsOf,
} from './operation.ts'
import { outerGrooveSizes } from './outer-operations.ts'
import { plugsToTry } from './workshop-operations.ts'

/* Operations that differ if a cage holds fewer balls than fill the ring. Common practice, no source, as all of the sheet. */

export type CagedJob = Job<CagedDesign>

export const plugGroove = (job: CagedJob): Operation => ({
  ...OUTER_GROOVE.caged(job.design.bearing.resolved.input.balls),
  id: 'outer-groove',
  part: 'outer-ring',
  sizes: [...outerGrooveSizes(job), ...dowelOf(job, 'outerRing'), ...plugsToTry(job)],
  cautions: ['turning', 'sanding-inside', 'dust'],
  speed: job.stock.outerRing.turning.speed,
  readings: [{ name: READINGS.plug, at: 'inner', kind: 'plug', field: '/result' }],
})

export function cageRing(job: CagedJob): readonly Operation[] {
  const { cage } = job.stock
  if (cage === undefined) return []
  const { pieces } = cage.blank
  const outside = size(job, 'cage.outsideDiameter', SIZES.outside)
  const bore = size(job, 'cage.boreDiameter', SIZES.bore)
  const land = {
    outer: size(job, 'outerRing.landDiameter', SIZES.hole),
    inner: size(job, 'innerRing.landDiameter', SIZES.outside),
  }
  const width = size(job, 'cage.width', pieces === 2 ? SIZES.thicknessOfBoth : SIZES.thickness)
  return [
    ...glueUp(cage, 'cage'),
    {
      ...words.cageRing(job.method, {
        pieces,
        isSegmented: cage.segments !== undefined,
        outerClearance: mm(land.outer.value - outside.value),
        innerClearance: mm(bore.value - land.inner.value),
        units: unitsOf(job),
      }),
      id: 'cage-ring',
      part: 'cage',
      sizes: [
        outside,
        ...sawLine(job, cage.blank),
        bore,
        ...thicknesses(cage, pieces === 2 ? halfOf(width, SIZES.thicknessOfEach) : width),
        ...(pieces === 2 ? [width] : []),
      ],
      cautions: ringCautions(job.method),
      readings: [],
    },
  ]
}

export function pockets(job: CagedJob): Operation {
  const { cage, resolved } = job.design.bearing
  const { count } = resolved.input.balls
  return {
    ...words.cagePockets({
      count,
      pocket: size(job, 'cage.pocketDiameter', SIZES.pocket).value,
      leastWeb: mm(cage.web / 2),
      units: unitsOf(job),
    }),
    id: 'cage-pockets',
    part: 'cage',
    sizes: [size(job, 'cage.pocketDiameter', SIZES.pocket), size(job, 'cage.web', SIZES.web)],
    cautions: ['drilling', 'dust'],
    readings: [],
  }
}

/** The last of all: the cage is opened again only where it is screwed. */
export function fill(job: CagedJob): Operation {
  const { resolved, ballSpacing, fillingAngle } = job.design.bearing
  const { count } = resolved.input.balls
  return {
    ...words.cageFill(resolved.split, {
      count,
      fillingAngle,
      easeLand: mm(resolved.ballDiameter / 50),
      cageTurns: cageTurns(job.design),
      units: unitsOf(job),
    }),
    id: 'fill',
    part: 'both',
    sizes: [{ name: SIZES.ballSpacing, value: ballSpacing }],
    cautions: glassCautions(job),
    readings: [],
  }
}

const TURNS = 10

/** Turns of the cage for ten of the inner ring, with the outer one held: fewer than half, and fewer still with few balls. */
function cageTurns({ bearing: { pitchRadius: pitch, resolved } }: CagedDesign): number {
  const { ballDiameter, input } = resolved
  const radii = { outer: pitch + ballDiameter / 2, pitch, inner: pitch - ballDiameter / 2 }
  return Math.round(TURNS * turnRatios(radii, input.balls.count, 'inner-ring').ballSet)
}
