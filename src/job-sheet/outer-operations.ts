import { cylinderKeys, DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { entryHoleDiameter, grooveStopShort, sawAllowance } from '#shared/making/cutting-allowances.ts'
import { mm } from '#shared/units/length.ts'
import {
  bottomKeys,
  gapReadings,
  hasTracks,
  type Job,
  LAYOUT_CHECK,
  type Operation,
  type RingJob,
  roughCircle,
  sawLine,
  size,
} from './operation.ts'
import { leftOnTrack } from './roller-operations.ts'

/* What is done to an outer ring, from the board to a groove or a track that fits. Common practice, no source, as all of the sheet. */

/** From the board to a ring with a hole, by the machines at hand. */
export function outerShape(job: RingJob): readonly Operation[] {
  switch (job.method) {
    case 'saw-and-lathe':
      return [outerBore(job), outerSaw(job), outerOutside(job), outerCore(job)]
    case 'lathe-only':
      return [outerBore(job), outerOutside(job), outerCore(job)]
    default:
      return [outerRouted(job)]
  }
}

export function outerLayout(job: RingJob): Operation {
  const { say } = job
  const outside = size(job, 'outerRing.outsideDiameter', 'outside, the full line')
  return {
    id: 'outer-layout',
    part: 'outer-ring',
    title: 'Lay out the outer ring',
    tool: 'the printed template or a compass, a centre punch',
    how: 'Glue the template on, the arrow along the grain, or prick its lines through. Punch the centre deep.',
    sizes: [
      outside,
      size(job, cylinderKeys(job.design.bearing).outer, 'hole, the full line'),
      ...sawLine(job, outside),
      size(job, 'outerRing.width', 'thickness, both faces planed'),
    ],
    check: LAYOUT_CHECK,
    mistake: {
      looksLike: 'A template that was printed to fit the page: every circle is a few in a hundred too small.',
      costs: `The blank. At ${say(outside.value)} a page shrunk to 97 % is ${say(mm(0.03 * outside.value))} off.`,
    },
    cautions: [],
    readings: [],
  }
}

export const outerSplit = (): Operation => ({
  id: 'outer-split',
  part: 'outer-ring',
  title: 'Split the outer ring and screw it together',
  tool: 'saw, plane, drill, screws outside of the groove',
  how: 'Two discs of half the thickness, faces planed true. Drill and screw them together outside of the groove before anything is turned, and mark the pair across the edge.',
  sizes: [],
  check: 'No light between the halves; the marks meet.',
  mistake: {
    looksLike: 'Halves that were turned apart: a step in the groove where they meet.',
    costs: 'Every ball knocks on the step. Sand it away and the groove is too deep.',
  },
  cautions: ['sawing', 'drilling', 'dust'],
  readings: [],
})

function outerBore(job: RingJob): Operation {
  const { units } = job.design.bearing.settled.input
  return {
    id: 'outer-bore',
    part: 'outer-ring',
    title: 'Bore for mounting and for the blade',
    tool: 'drill press, a sharp bit',
    how:
      job.method === 'lathe-only'
        ? 'Bore the centre square to the face for the screw chuck.'
        : 'Bore the centre square to the face for the screw chuck, and the hole for the blade inside of the core, off its line.',
    sizes: job.method === 'lathe-only' ? [] : [{ name: 'hole for the blade', value: entryHoleDiameter(units) }],
    check: 'A try square at the bit, two ways.',
    mistake: {
      looksLike: 'A blank that wobbles on its chuck.',
      costs: 'Thickness: the faces must be turned true again.',
    },
    cautions: ['drilling'],
    readings: [],
  }
}

function outerSaw(job: RingJob): Operation {
  const outside = size(job, 'outerRing.outsideDiameter', '')
  return {
    id: 'outer-saw',
    part: 'outer-ring',
    title: 'Saw the disc out',
    tool: 'band saw or scroll saw',
    how: 'Saw along the dashed line, in the waste. The full line stays on the blank.',
    sizes: [{ name: 'saw by', value: roughCircle(job, outside) }],
    check: 'The full line is there all the way round.',
    mistake: {
      looksLike: 'The full line is gone somewhere.',
      costs: 'A smaller outside: less wood behind the groove.',
    },
    cautions: ['sawing', 'dust'],
    readings: [],
  }
}

function outerOutside(job: RingJob): Operation {
  const { method } = job
  return {
    id: 'outer-outside',
    part: 'outer-ring',
    title: 'Turn the outside',
    tool: 'lathe, gouge and scraper, outside caliper',
    how:
      method === 'lathe-only'
        ? 'Knock the corners off the square blank by hand first. True the face, then turn the outside down to the line.'
        : 'True the face, then turn the outside down to the line.',
    sizes: [size(job, 'outerRing.outsideDiameter', 'outside')],
    check: 'Caliper across two directions; the hollow edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: 'An outside that is not round.',
      costs: 'Looks only, while the wood behind the groove is as thick as the design says.',
    },
    cautions: ['turning', 'dust'],
    readings: [],
  }
}

function outerCore(job: RingJob): Operation {
  const { design, method } = job
  const allowance = sawAllowance(design.bearing.settled.input.units)
  const core = mm(size(job, cylinderKeys(design.bearing).outer, '').value - 2 * allowance)
  const sawn = method === 'saw-and-lathe'
  return {
    id: 'outer-core',
    part: 'outer-ring',
    title: 'Take the core out',
    tool: sawn ? 'scroll saw or jigsaw, through the blade hole' : 'parting tool, ring held by its outside',
    how: sawn
      ? 'From the blade hole saw along the inner dashed line. The full line stays.'
      : 'Part from both faces, half way each, well inside of the line; leave a web and break it.',
    sizes: core > 0 ? [{ name: 'core at the most', value: core }] : [],
    check: 'The full line is there all the way round.',
    mistake: {
      looksLike: 'A cut over the full line.',
      costs: hasTracks(job)
        ? 'The ring: what is left of its hole is to be the track.'
        : 'The ring: the hole is the land from which the groove is measured.',
    },
    cautions: [sawn ? 'sawing' : 'turning', 'core-loose', 'dust'],
    readings: [],
  }
}

/** A land is routed to its line, a track only to where sawing would leave it: the lathe takes the rest. */
function outerRouted(job: RingJob): Operation {
  const { outer } = cylinderKeys(job.design.bearing)
  return {
    id: 'outer-rout',
    part: 'outer-ring',
    title: 'Rout the ring out',
    tool: 'router on a circle jig, straight bit',
    how: 'Outside first, then the hole, in passes no deeper than half the bit is wide. Keep a web under the last pass of each circle.',
    sizes: [
      size(job, 'outerRing.outsideDiameter', 'outside'),
      size(job, outer, 'hole, the full line stays', hasTracks(job) ? -2 * leftOnTrack(job) : 0),
    ],
    check: 'The full line of the hole is there all the way round.',
    mistake: {
      looksLike: 'A jig set to the wrong side of the bit: the circle is off by the width of the bit.',
      costs: 'The ring. Rout a shallow circle in the waste first, and measure it.',
    },
    cautions: ['routing', 'core-loose', 'dust'],
    readings: [],
  }
}

export function outerInside(job: RingJob): Operation {
  const { design, say } = job
  const hole = size(job, 'outerRing.landDiameter', 'hole (land)')
  const slope = design.dimensions.find(({ key }) => key === 'outerRing.landDiameter')?.gapPerUnit ?? 0
  const over = mm(design.bearing.settled.ballDiameter / 50)
  return {
    id: 'outer-inside',
    part: 'outer-ring',
    title: 'Turn the hole to the line',
    tool: 'lathe, ring held by its outside, scraper',
    how: 'Open the hole until the line just goes. Write down what it is: the groove is measured from here.',
    sizes: [hole],
    check: 'Inside caliper in two directions; the round edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: `A hole ${say(over)} too large, with the groove cut to its depth all the same, opens the gap by ${say(mm(slope * over))}.`,
      costs: 'Nothing yet: cut the groove to its bottom diameter, not to its depth.',
    },
    cautions: ['turning', 'dust'],
    readings: [],
  }
}

export function outerGroove(job: Job): Operation {
  const { design, say } = job
  const { outerRing, gapPerGrooveDepth } = design.bearing
  const short = grooveStopShort(outerRing.grooveDepth)
  return {
    id: 'outer-groove',
    part: 'outer-ring',
    title: 'Cut the groove, short of its depth',
    tool: 'lathe, scraper ground to the groove radius, inside caliper',
    how: 'At mid width, straight in. Stop short: what is left is sanded to fit, with the balls in.',
    sizes: [
      size(job, 'outerRing.grooveRadius', 'groove radius'),
      size(job, 'outerRing.grooveDepth', 'groove depth', -short),
      size(job, 'outerRing.grooveBottomDiameter', 'across the bottoms', -2 * short),
    ],
    check: 'The profile of the gauge sheet: its shoulders stay off the land by what is left to sand.',
    mistake: {
      looksLike: `Each ${say(mm(short / 5))} too deep opens the gap by ${say(mm((gapPerGrooveDepth * short) / 5))}.`,
      costs: 'Wood does not go back on. Larger balls, a spacer or a new ring: the fit correction works out which.',
    },
    cautions: ['turning', 'dust'],
    readings: [
      { name: 'across the groove bottoms', at: 'outer', kind: 'groove-bottom-diameter', field: '/value' },
      { name: 'depth below the land', at: 'outer', kind: 'groove-depth', field: '/value' },
      { name: 'hole there', at: 'outer', kind: 'groove-depth', field: '/landDiameter' },
    ],
  }
}

export function outerFit({ design, say }: Job): Operation {
  const { settled, ballGap } = design.bearing
  const { count } = settled.input.balls
  return {
    id: 'outer-fit',
    part: 'outer-ring',
    title: 'Try the balls',
    tool: 'the balls, a rule or feelers',
    how: `Ring flat on the bench, packed up so that the balls lie at mid groove. Lay in all that go, push them together, and read the gap between the last and the first; with one left out, the opening where it should go.`,
    sizes: [{ symbol: DIMENSION_SYMBOLS.ballGap, name: 'ball gap to end at', value: ballGap }],
    check: `${count} balls in, and the gap read three times.`,
    mistake: {
      looksLike: 'A gap read with a ball standing high: it reads too small.',
      costs: `A cut too many. At ${say(ballGap)} the ring is done.`,
    },
    cautions: [],
    readings: [
      ...gapReadings(design),
      { name: 'opening, one ball out', at: 'outer', kind: 'last-ball-opening', field: '/value' },
      { name: 'last ball does not go in', at: 'outer', kind: 'last-ball-refused', field: '' },
    ],
  }
}

export function outerSand(job: Job): Operation {
  const { design, say } = job
  const { settled, gauge } = design.bearing
  return {
    id: 'outer-sand',
    part: 'outer-ring',
    title: 'Sand the groove to fit',
    tool: hasTracks(job)
      ? 'lathe, abrasive on a flat block as long as the ring is wide, the two plugs'
      : 'lathe, abrasive round a dowel of the groove radius, the two plugs',
    how: 'Send the readings to the fit correction; take off what it says, clean the dust out, and read again. Count the strokes: it learns what one takes off.',
    sizes: [
      size(job, 'gauge.goDiameter', 'go plug'),
      size(job, 'gauge.noGoDiameter', 'no-go plug'),
      size(job, bottomKeys(job).outer, 'across the bottoms'),
    ],
    check: `Go plug enters between the seated balls, no-go plug does not: the gap is between ${say(settled.minBallGap)} and ${say(settled.maxBallGap)}.`,
    mistake: {
      looksLike: `The plug of ${say(gauge.noGoDiameter)} enters.`,
      costs: 'The ring is too deep: ask the fit correction for the ways out.',
    },
    cautions: ['sanding-inside', 'dust'],
    readings: [
      ...gapReadings(design),
      { name: 'go plug: enters, snug, refuses', at: 'outer', kind: 'plug', field: '/result' },
      { name: 'no-go plug: enters, snug, refuses', at: 'outer', kind: 'plug', field: '/result' },
    ],
  }
}
