import { type Design, isCaged } from '#shared/bearing/arrangements.ts'
import { mm } from '#shared/units/length.ts'
import { SIZES } from '#src/words/job-sheet/sizes.ts'
import * as words from '#src/words/job-sheet/workshop.ts'
import { type AnyJob, arrangementOf, type Operation, size, unitsOf } from './operation.ts'

/* What is done before the first cut and after the last one, whatever the bearing. Common practice, no source. */

export const chooseWood = (job: AnyJob<Design>): Operation => ({
  ...words.wood(arrangementOf(job)),
  id: 'choose-wood',
  part: 'both',
  sizes: [],
  cautions: [],
  readings: [],
})

/** How far a turned plug may be off: common practice, no source. */
const PLUG_ERROR = mm(0.05)

export function makeGauges(job: AnyJob<Design>): Operation {
  const { design } = job
  return {
    ...words.gauges(arrangementOf(job), { within: PLUG_ERROR, units: unitsOf(job) }),
    id: 'make-gauges',
    part: 'both',
    sizes: isCaged(design)
      ? [size({ ...job, design }, 'plugDiameter', SIZES.plug)]
      : [
          size({ ...job, design }, 'gauge.goDiameter', SIZES.goPlug),
          size({ ...job, design }, 'gauge.noGoDiameter', SIZES.noGoPlug),
        ],
    cautions: ['turning', 'sawing', 'dust'],
    readings: [],
  }
}

export const care = (job: AnyJob<Design>): Operation => ({
  ...words.care(arrangementOf(job)),
  id: 'care',
  part: 'both',
  sizes: [],
  cautions: [],
  readings: [],
})
