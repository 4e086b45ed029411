import type { RollerDesign } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { trackStopShort } from '#shared/making/cutting-allowances.ts'
import { requestedScrew } from '#shared/making/screws.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import * as balls from '#src/words/job-sheet/balls.ts'
import { INNER_FIT } from '#src/words/job-sheet/inner-ring.ts'
import * as words from '#src/words/job-sheet/rollers.ts'
import { READINGS, SIZES } from '#src/words/job-sheet/sizes.ts'
import { innerBlank, innerFit, innerSand, mandrelFacts } from './inner-operations.ts'
import { screwSizes } from './joint-operations.ts'
import {
  glassCautions,
  type Job,
  type Operation,
  type RingJob,
  ROUND_CAUTIONS,
  sawLine,
  size,
  thicknesses,
  unitsOf,
} from './operation.ts'

/* Operations that differ if rollers run on plain tracks between cheeks. Common practice, no source, as all of the sheet. */

type RollerJob = Job<RollerDesign>

/** Wood that saw or router leave on a track for the lathe, radially: on the smallest rings no more than there is. */
export const leftOnTrack = (job: RingJob): Mm =>
  mm(Math.min(job.stock.resolved.allowances.turning, job.design.bearing.resolved.ballDiameter / 2))

/** So far before the end of the last pass the tool stops. */
const stopShort = (job: RollerJob): Mm => trackStopShort(job.design.bearing.resolved.ballDiameter, unitsOf(job))

export function cutRollers(job: RollerJob): Operation {
  const { count, material = BALL_MATERIAL } = job.design.bearing.resolved.input.balls
  return {
    ...balls.cutRollers({ count, material }),
    id: 'cut-rollers',
    part: 'balls',
    sizes: [size(job, 'rollerLength', SIZES.length)],
    cautions: material === 'glass' ? glassCautions(job) : ['sawing', 'dust'],
    readings: [],
  }
}

export function outerTrack(job: RollerJob): Operation {
  const short = stopShort(job)
  const over = mm(short / 5)
  const opens = mm(job.design.bearing.gapPerGrooveDepth * over)
  return {
    ...words.outerTrack({ over, opens, units: unitsOf(job) }),
    id: 'outer-track',
    part: 'outer-ring',
    sizes: [size(job, 'outerRing.trackDiameter', SIZES.track, -2 * short)],
    cautions: ['turning', 'dust'],
    speed: job.stock.outerRing.turning.speed,
    readings: [{ name: READINGS.acrossTrack, at: 'outer', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

export const innerTracked = (job: RollerJob): readonly Operation[] => [
  ...innerBlank(job),
  innerTrack(job),
  innerFit(job, INNER_FIT.roller()),
  innerSand(job),
]

const innerTrack = (job: RollerJob): Operation => ({
  ...words.innerTrack(mandrelFacts(job)),
  id: 'inner-track',
  part: 'inner-ring',
  sizes: [
    size(job, 'innerRing.trackDiameter', SIZES.track, 2 * stopShort(job)),
    size(job, 'innerRing.width', SIZES.widthAsRollers),
  ],
  cautions: ['turning', 'dust'],
  speed: job.stock.innerRing.turning.speed,
  readings: [{ name: READINGS.acrossTrack, at: 'inner', kind: 'groove-bottom-diameter', field: '/value' }],
})

export function cheeks(job: RollerJob): readonly Operation[] {
  const { design, stock, method: machines } = job
  const { cheeks: ring, cheekScrews, resolved } = stock
  if (ring === undefined) return []
  const { axialPlay } = design.bearing
  return [
    {
      ...words.cheeks({
        machines,
        axialPlay,
        screws: cheekScrews,
        requested: requestedScrew(resolved.screws),
        units: unitsOf(job),
      }),
      id: 'cheeks',
      part: 'outer-ring',
      sizes: [
        size(job, 'cheeks.outsideDiameter', SIZES.outside),
        ...sawLine(job, ring.blank),
        size(job, 'cheeks.holeDiameter', SIZES.hole),
        ...thicknesses(ring, size(job, 'cheeks.thickness', SIZES.thickness)),
        ...(cheekScrews ? screwSizes(cheekScrews, cheekScrews.screwCircle) : []),
      ],
      cautions: [...new Set([...(cheekScrews ? [] : (['sawing'] as const)), ...ROUND_CAUTIONS[machines]])],
      readings: [],
    },
  ]
}
