import type { Units } from '#shared/units/length.ts'
import type { Terms } from '#src/words/terms.ts'
import { STAGE_NAMES } from './page.ts'
import { BY_THE_PLAY } from './year.ts'

/** Words of the step that asks whether a bearing will run. */
export const RUN = {
  cuts: ({ raceway }: Terms) => `How far your ${raceway.many} miss their size, on the radius`,
  lots: ({ element }: Terms) => `How far a whole lot of ${element.many} is off its size`,
  usual: (cut: string, { element, raceway }: Terms) =>
    `On the radius is half of what a caliper shows across. Two in three stay within these figures, over or under (standard deviations). Left empty: ${cut} for a ${raceway.one}, and 0.6 of the scatter of the ${element.many} for a lot. Common practice, no source.`,
  noGap: `The cage keeps the balls apart, so no gap has to fit. Cutting errors change the play, and no chance of that is worked out: the chances at “${STAGE_NAMES.place}” do not count it either. ${BY_THE_PLAY}`,
  noPlace: `No wood and place are stated, so the year is not counted here. State both at “${STAGE_NAMES.place}”.`,
  load: { rings: 'Load across the axle', plates: 'Load that lies on the turntable' },
  chances: 'How often it fits',
  loads: 'Load and speed',
  /** @param kilograms the mass that weighs as much, as a figure; undefined where no load is stated */
  weight: (units: Units, kilograms: string | undefined) => {
    if (units === 'in') return '1 lbf is the weight of 1 lb.'
    return kilograms === undefined
      ? '10 N is the weight of about 1 kg.'
      : `That is the weight of about ${kilograms} kg.`
  },
} as const
