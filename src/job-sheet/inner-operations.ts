import { isCaged } from '#shared/bearing/arrangements.ts'
import { playBeforeFinish } from '#shared/bearing/before-finish.ts'
import { travelTowardsBall } from '#shared/geometry/travel-towards-ball.ts'
import { grooveStopShort } from '#shared/making/cutting-allowances.ts'
import { isBored } from '#shared/making/work-holding.ts'
import { playBand } from '#shared/questions/fit/fit-setup.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { ownCautions } from '#src/words/bearing-caution.ts'
import * as words from '#src/words/job-sheet/inner-ring.ts'
import type { MandrelFacts, OperationWords } from '#src/words/job-sheet/operation.ts'
import { READINGS, SIZES } from '#src/words/job-sheet/sizes.ts'
import { playReading } from './finish-operations.ts'
import { glueUp, joint } from './joint-operations.ts'
import { boreFor } from './mount-operations.ts'
import {
  acrossName,
  allowed,
  dowelOf,
  type GroovedJob,
  grooveReadings,
  halfOf,
  hasTracks,
  leftToSand,
  type Operation,
  playToReach,
  type RingJob,
  type Size,
  sandedLast,
  sandingSpeed,
  size,
  termsOf,
  thicknesses,
  turnedFirst,
  unitsOf,
} from './operation.ts'

/* Operations of an inner ring, from the board to the play. Common practice, no source, as all of the sheet. */

/** The inner ring of grooved rings, full or with a cage. */
export function innerGrooved(job: GroovedJob, arrangement: 'radial' | 'caged'): readonly Operation[] {
  const { split } = job.design.bearing.resolved
  const fit = innerFit(
    job,
    arrangement === 'caged' ? words.INNER_FIT.caged(split, travelTowardsBall(3)) : words.INNER_FIT.radial(split),
  )
  return [
    ...innerBlank(job),
    ...joint(job, 'innerRing'),
    innerOutside(job),
    innerGroove(job, arrangement),
    fit,
    innerSand(job),
  ]
}

/** What holds the ring by its bore. */
export const mandrelFacts = (job: RingJob): MandrelFacts => ({
  mandrel: job.stock.mandrel,
  isBored: isBored(job.stock.innerRing),
  units: unitsOf(job),
})

const isSplit = ({ design }: RingJob): boolean => design.bearing.resolved.split === 'inner-ring'

export function innerBlank(job: RingJob): readonly Operation[] {
  const { method, stock } = job
  const ring = stock.innerRing
  const bored = isBored(ring)
  const width = size(job, 'innerRing.width', SIZES.thickness)
  return [
    ...glueUp(ring, 'innerRing'),
    {
      ...words.innerBlank(method, {
        isSplit: isSplit(job),
        isSegmented: ring.segments !== undefined,
        isBored: bored,
      }),
      id: 'inner-blank',
      part: 'inner-ring',
      sizes: [
        size(job, turnedFirst(job).inner, SIZES.outsideLine),
        { name: SIZES.cuttingLine, value: ring.blank.roughCircle, ...allowed(job) },
        ...thicknesses(ring, isSplit(job) ? halfOf(width, SIZES.thicknessOfDisc) : width),
        ...boreFor(job, size(job, 'innerRing.boreDiameter', SIZES.bore)),
      ],
      cautions: [method === 'router-and-lathe' ? 'routing' : 'sawing', bored ? 'drilling' : 'turning', 'dust'],
      readings: [],
    },
  ]
}

const innerOutside = (job: GroovedJob): Operation => ({
  ...words.innerOutside(mandrelFacts(job)),
  id: 'inner-outside',
  part: 'inner-ring',
  sizes: [size(job, 'innerRing.landDiameter', SIZES.outsideLand)],
  cautions: ['turning', 'dust'],
  readings: [],
  speed: job.stock.innerRing.turning.speed,
})

function innerGroove(job: GroovedJob, arrangement: 'radial' | 'caged'): Operation {
  const short = grooveStopShort(job.design.bearing.innerRing.grooveDepth)
  return {
    ...words.innerGroove(arrangement, isSplit(job)),
    id: 'inner-groove',
    part: 'inner-ring',
    sizes: [
      size(job, 'innerRing.grooveRadius', SIZES.grooveRadius),
      size(job, 'innerRing.grooveDepth', SIZES.grooveDepth, -short),
      size(job, 'innerRing.grooveBottomDiameter', SIZES.acrossBottoms, 2 * short),
    ],
    cautions: ['turning', 'dust'],
    speed: job.stock.innerRing.turning.speed,
    readings: grooveReadings('inner'),
  }
}

/** The play to reach, and what three balls show for it where the cage does not hold all of them yet. */
function playSizes(job: RingJob): readonly Size[] {
  const play = playToReach(job)
  if (!isCaged(job.design)) return [play]
  return [{ name: SIZES.travelOnThree, value: mm(travelTowardsBall(3) * play.value), byCaliper: true }, play]
}

export const innerFit = (job: RingJob, words: OperationWords): Operation => ({
  ...words,
  id: 'inner-fit',
  part: 'inner-ring',
  sizes: playSizes(job),
  cautions: ownCautions(job.design.bearing.resolved.input),
  readings: [playReading(job), { name: READINGS.binds, at: 'inner', kind: 'binds', field: '' }],
})

/** What fit correction calls good, with the films of the finish still to come. */
function goodPlay({ design }: RingJob): { readonly min: Mm; readonly max: Mm } {
  const { resolved } = design.bearing
  const { min, max } = playBand(resolved.radialInternalClearance)
  return { min: playBeforeFinish(mm(min), resolved), max: playBeforeFinish(mm(max), resolved) }
}

export const innerSand = (job: RingJob): Operation => ({
  ...words.INNER_SAND[hasTracks(job) ? 'track' : 'groove'](termsOf(job), {
    play: goodPlay(job),
    isSplit: isSplit(job),
    isBare: job.design.bearing.resolved.finishAllowance > 0,
    units: unitsOf(job),
  }),
  id: 'inner-sand',
  part: 'inner-ring',
  sizes: [
    ...dowelOf(job),
    size(job, sandedLast(job).inner, acrossName(job)),
    leftToSand(job, 'innerRing'),
    ...playSizes(job),
  ],
  cautions: ['turning', 'dust'],
  speed: sandingSpeed(job.stock.innerRing.turning),
  readings: [playReading(job)],
})
