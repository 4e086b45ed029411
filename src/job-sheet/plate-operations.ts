import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { trialDepth } from '#shared/making/cutting-allowances.ts'
import type { PlateStock } from '#shared/making/stock.ts'
import { isBored } from '#shared/making/work-holding.ts'
import { mm } from '#shared/units/length.ts'
import type { CautionCode } from '#src/words/caution.ts'
import * as words from '#src/words/job-sheet/plates.ts'
import { gapToReach, SIZES } from '#src/words/job-sheet/sizes.ts'
import { plugFacts } from '#src/words/plugs.ts'
import { glueUp } from './joint-operations.ts'
import {
  arrangementOf,
  gapReadings,
  type Job,
  type Operation,
  plugReadings,
  ringCautions,
  sawLine,
  size,
  thicknesses,
  unitsOf,
} from './operation.ts'

/* Operations of a turntable: two plates alike, each with a groove in its face. Common practice, no source, as all of the sheet. */

type PlateJob = Job<ThrustDesign, PlateStock>

export const plates = (job: PlateJob): readonly Operation[] => [
  ...glueUp(job.stock.plates, 'plates'),
  layout(job),
  shape(job),
  trialGroove(job),
  tryBalls(job),
  groove(job),
  secondPlate(job),
]

function layout(job: PlateJob): Operation {
  const { plates } = job.stock
  return {
    ...words.plateLayout(plates.segments !== undefined),
    id: 'plate-layout',
    part: 'both',
    sizes: [
      size(job, 'plates.outsideDiameter', SIZES.outsideLine),
      ...sawLine(job, plates.blank),
      ...thicknesses(plates, size(job, 'plates.thickness', SIZES.planedThickness)),
    ],
    cautions: [],
    readings: [],
  }
}

const shape = (job: PlateJob): Operation => ({
  ...words.plateShape(job.method, {
    mandrel: job.stock.mandrel,
    isBored: isBored(job.stock.plates),
    isSegmented: job.stock.plates.segments !== undefined,
  }),
  id: 'plate-shape',
  part: 'both',
  // The bore is the seat of the pin.
  sizes: [
    { ...size(job, 'plates.boreDiameter', SIZES.bore), byCaliper: true },
    size(job, 'plates.outsideDiameter', SIZES.outside),
  ],
  cautions: [...(isBored(job.stock.plates) ? (['drilling'] as const) : []), ...ringCautions(job.method)],
  readings: [],
  ...turned(job),
})

/** A router needs no speed of the lathe. */
const turned = ({ method, stock }: PlateJob) =>
  method === 'router-and-lathe' ? {} : { speed: stock.plates.turning.speed }

const groovingCautions = ({ method }: PlateJob): readonly CautionCode[] => [
  method === 'router-and-lathe' ? 'routing' : 'turning',
  'dust',
]

function trialGroove(job: PlateJob): Operation {
  const { bearing } = job.design
  const depth = size(job, 'plates.grooveDepth', SIZES.grooveDepth)
  const over = mm(bearing.resolved.ballDiameter / 50)
  const opens = mm(bearing.gapPerPitchRadius * over)
  return {
    ...words.trialGroove(job.method, { over, opens, units: unitsOf(job) }),
    id: 'trial-groove',
    part: 'both',
    sizes: [
      size(job, 'pitchDiameter', SIZES.grooveCircle),
      { ...depth, stopAt: trialDepth(depth.value) },
      size(job, 'plates.grooveRadius', SIZES.grooveRadius),
    ],
    cautions: groovingCautions(job),
    readings: [],
    ...turned(job),
  }
}

function tryBalls(job: PlateJob): Operation {
  const { resolved, ballGap, gapPerPitchRadius } = job.design.bearing
  const lacking = mm(resolved.ballDiameter / 20)
  return {
    ...words.tryInPlate({
      count: resolved.input.balls.count,
      lacking,
      wider: mm(lacking / gapPerPitchRadius),
      units: unitsOf(job),
    }),
    id: 'try-balls',
    part: 'both',
    sizes: [{ symbol: DIMENSION_SYMBOLS.ballGap, name: gapToReach(arrangementOf(job)), value: ballGap }],
    cautions: [],
    readings: gapReadings(job),
  }
}

function groove(job: PlateJob): Operation {
  const plugs = plugFacts(job.design.bearing)
  return {
    ...words.plateGroove(job.method, plugs, unitsOf(job)),
    id: 'groove',
    part: 'both',
    sizes: [
      size(job, 'plates.grooveDepth', SIZES.grooveDepth),
      size(job, 'plates.grooveRadius', SIZES.grooveRadius),
      ...(plugs.decides
        ? [size(job, 'gauge.goDiameter', SIZES.goPlug), size(job, 'gauge.noGoDiameter', SIZES.noGoPlug)]
        : []),
    ],
    cautions: groovingCautions(job),
    readings: [...gapReadings(job), ...(plugs.decides ? plugReadings('plates') : [])],
  }
}

const secondPlate = (job: PlateJob): Operation => ({
  ...words.SECOND_PLATE,
  id: 'second-plate',
  part: 'both',
  sizes: [
    size(job, 'plates.grooveDepth', SIZES.grooveDepth),
    size(job, 'plates.grooveRadius', SIZES.grooveRadius),
    size(job, 'plateGap', SIZES.plateGap),
  ],
  cautions: groovingCautions(job),
  readings: [],
})
