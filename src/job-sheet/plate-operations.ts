import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { mm } from '#shared/units/length.ts'
import { DISC_BY, gapReadings, type Job, LAYOUT_CHECK, type Operation, sawLine, size } from './operation.ts'

/* What is done for a turntable: two plates alike, each with a groove in its face. Common practice, no source, as all of the sheet. */

type PlateJob = Job<ThrustDesign>

export const plates = (job: PlateJob): readonly Operation[] => [
  layout(job),
  shape(job),
  trialGroove(job),
  tryBalls(job),
  groove(job),
  secondPlate(job),
]

function layout(job: PlateJob): Operation {
  const outside = size(job, 'plates.outsideDiameter', 'outside, the full line')
  return {
    id: 'plate-layout',
    part: 'both',
    title: 'Lay out both plates',
    tool: 'the printed template or a compass, a centre punch',
    how: 'Glue the template on, the arrow along the grain, or prick its lines through. Punch the centre deep: everything turns about it.',
    sizes: [outside, ...sawLine(job, outside), size(job, 'plates.thickness', 'thickness, both faces planed')],
    check: LAYOUT_CHECK,
    mistake: {
      looksLike: 'A face that is not flat: a straightedge rocks on it.',
      costs: 'A turntable that wobbles. Plane the faces before anything is cut into them.',
    },
    cautions: [],
    readings: [],
  }
}

const shape = (job: PlateJob): Operation => ({
  id: 'plate-shape',
  part: 'both',
  title: 'Bore the plates and bring them to round',
  tool: DISC_BY[job.method].tool,
  how: `Bore the centre square to the face while the blank can still be clamped; then ${DISC_BY[job.method].round} about the bore.`,
  sizes: [size(job, 'plates.boreDiameter', 'bore'), size(job, 'plates.outsideDiameter', 'outside')],
  check: 'The plate turned about a pin in its bore: neither its rim nor its face runs out.',
  mistake: {
    looksLike: 'A bore that is not square to the face.',
    costs: 'The plate tilts, and the balls on one side carry everything.',
  },
  cautions: DISC_BY[job.method].cautions,
  readings: [],
})

/** A groove so shallow is swallowed by the whole one, even where that is cut on a somewhat larger circle. */
const TRIAL_DEPTH = 1 / 3

function trialGroove(job: PlateJob): Operation {
  const { bearing } = job.design
  const depth = size(job, 'plates.grooveDepth', 'groove depth')
  const off = mm(bearing.settled.ballDiameter / 50)
  return {
    id: 'trial-groove',
    part: 'both',
    title: 'Cut the first groove shallow',
    tool:
      job.method === 'router-and-lathe'
        ? 'router on a circle jig, round-nose bit'
        : 'lathe, scraper ground to the groove radius',
    how: 'On its circle, a third of the depth. Balls lie over the lowest line of a groove however deep it is: a shallow one tells already whether the circle is right.',
    sizes: [
      size(job, 'pitchDiameter', 'circle of the groove'),
      { ...depth, stopAt: mm(TRIAL_DEPTH * depth.value) },
      size(job, 'plates.grooveRadius', 'groove radius'),
    ],
    check: 'Across the lowest line, in two directions.',
    mistake: {
      looksLike: `A circle ${job.say(off)} too large, radially, opens the gap by ${job.say(mm(bearing.gapPerPitchRadius * off))}.`,
      costs: 'Little, as long as it is shallow: cut the whole groove on the right circle. Deep, it costs the plate.',
    },
    cautions: [job.method === 'router-and-lathe' ? 'routing' : 'turning', 'dust'],
    readings: [],
  }
}

function tryBalls({ design, say }: PlateJob): Operation {
  const { settled, ballGap, gapPerPitchRadius } = design.bearing
  const step = mm(settled.ballDiameter / 20)
  return {
    id: 'try-balls',
    part: 'both',
    title: 'Try the balls',
    tool: 'the balls, a rule or feelers',
    how: `Plate flat on the bench. Lay in all ${settled.input.balls.count}, push them together along the groove, and read the gap between the last and the first. Set the circle larger, radially, by what the gap lacks over ${gapPerPitchRadius.toFixed(1)}, or smaller by what it has too much.`,
    sizes: [{ symbol: DIMENSION_SYMBOLS.ballGap, name: 'ball gap to end at', value: ballGap }],
    check: `The plugs between the balls as well. A gap that lacks ${say(step)} asks for ${say(mm(step / gapPerPitchRadius))} more radius.`,
    mistake: {
      looksLike: 'A ball that stands on the flank of its neighbour instead of in the groove: the gap reads too large.',
      costs: 'A circle set wrong. Press every ball down with a finger before you read.',
    },
    cautions: [],
    readings: gapReadings(design),
  }
}

const groove = (job: PlateJob): Operation => ({
  id: 'groove',
  part: 'both',
  title: 'Cut the groove to its depth',
  tool:
    job.method === 'router-and-lathe'
      ? 'router on a circle jig, round-nose bit'
      : 'lathe, scraper ground to the groove radius',
  how: 'On the circle that the balls have shown, in passes, the last a light one. Write the setting of the jig down.',
  sizes: [
    size(job, 'plates.grooveDepth', 'groove depth'),
    size(job, 'plates.grooveRadius', 'groove radius'),
    size(job, 'gauge.goDiameter', 'go plug'),
    size(job, 'gauge.noGoDiameter', 'no-go plug'),
  ],
  check:
    'The profile of the gauge sheet: its shoulders meet the face all the way round. Then the balls and the plugs once more.',
  mistake: {
    looksLike: 'A groove deeper on one side.',
    costs: 'A table that leans as it turns. Depth moves the plates, not the gap: deepen the other side to match.',
  },
  cautions: [job.method === 'router-and-lathe' ? 'routing' : 'turning', 'dust'],
  readings: gapReadings(job.design),
})

const secondPlate = (job: PlateJob): Operation => ({
  id: 'second-plate',
  part: 'both',
  title: 'Cut the groove of the other plate',
  tool: 'the same, at the same setting',
  how: 'Do not touch the setting: two circles that differ make the balls climb from one groove into the other. Then lay the plates together with the balls between them.',
  sizes: [
    size(job, 'pitchDiameter', 'circle of the groove'),
    size(job, 'plateGap', 'between the plates'),
    size(job, 'height', 'height of all'),
  ],
  check: 'The space between the plates with feelers, at four places; a turn by hand, without a bump.',
  mistake: {
    looksLike: 'It turns hard and light by turns: circles of two sizes, or one large ball.',
    costs: 'Find the ball first. Then ease the flank that shines, with two strokes.',
  },
  cautions: [job.method === 'router-and-lathe' ? 'routing' : 'turning', 'dust'],
  readings: [],
})
