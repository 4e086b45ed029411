import { type AnyDesign, isCaged, isOfPlates } from '#shared/bearing/any-design.ts'
import { entryHoleDiameter, grooveStopShort, sawAllowance, splitScrewsOf } from '#shared/bearing/cutting-allowances.ts'
import { cylinderKeys, DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { RingPair } from '#shared/bearing/ring-pair.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { CautionCode } from '#src/wire/caution.ts'
import { figure } from '#src/wire/figure.ts'
import {
  type CagedJob,
  cageRing,
  evenBalls,
  fill,
  holeForCage,
  plugGroove,
  pockets,
  threeBalls,
} from './cage-operations.ts'
import {
  gapReadings,
  type Job,
  LAYOUT_CHECK,
  madeAt,
  type Operation,
  type Reading,
  type RingJob,
  type Size,
  size,
} from './operation.ts'
import { plates } from './plate-operations.ts'
import {
  cheeks,
  chooseRollers,
  closeOverRollers,
  cutRollers,
  innerTrack,
  leftOnTrack,
  outerTrack,
  tryRollers,
} from './roller-operations.ts'
import type { Method } from './schema.ts'

/**
 * The operations of a bearing in order, from choosing balls to running in, each with what to work to, where to stop
 * short, how to check, and what goes wrong. The order and the advice are common practice, no source; every figure is the
 * design's, or an allowance stated in `cutting-allowances.ts`.
 */
export function operationsFor(design: AnyDesign, method: Method): readonly Operation[] {
  const say = (length: Mm): string => figure(length, design.bearing.settled.input.units)
  const all = { design, method, say }
  const surfaces = [finish(all), grain(), wax()]
  const toFinish = [...surfaces, runIn(all)]
  if (isOfPlates(design)) return [chooseBalls(all), ...plates({ design, method, say }), ...toFinish]
  if (isCaged(design)) {
    const job: CagedJob = { design, method, say }
    return [...caged(job), ...surfaces, fill(job), runIn(all)]
  }
  const job: Job = { design, method, say }
  return hasTracks(job)
    ? [cutRollers(job), chooseRollers(chooseBalls(job)), ...outerRing(job), ...innerRing(job), cheeks(job), ...toFinish]
    : [chooseBalls(job), ...outerRing(job), ...innerRing(job), ...toFinish]
}

/** Rings as for a full one, cut to a plug and to the play, and the cage. */
function caged(job: CagedJob): readonly Operation[] {
  const { split } = job.design.bearing.settled
  return [
    evenBalls(job, chooseBalls(job)),
    outerLayout(job),
    ...(split === 'outer-ring' ? [outerSplit()] : []),
    ...outerShape(job),
    holeForCage(outerInside(job)),
    plugGroove(job),
    ...innerGrooved(job).map((operation) => (operation.id === 'inner-fit' ? threeBalls(job, operation) : operation)),
    cageRing(job),
    pockets(job),
  ]
}

const hasTracks = ({ design }: RingJob): boolean => design.bearing.settled.traits.raceway === 'track'

/** What is sanded to fit: the bottoms of grooves, or tracks. */
const bottomKeys = (job: RingJob): ReturnType<typeof cylinderKeys> =>
  hasTracks(job)
    ? cylinderKeys(job.design.bearing)
    : { outer: 'outerGrooveBottomDiameter', inner: 'innerGrooveBottomDiameter' }

function chooseBalls({ design, say }: Job<AnyDesign>): Operation {
  const { settled } = design.bearing
  const { count, material = 'wood' } = settled.input.balls
  const over = mm(settled.ballDiameter / 100)
  return {
    id: 'choose-balls',
    part: 'balls',
    title: `Choose ${count} balls`,
    tool: 'a straight channel of two battens, a rule, a caliper',
    how: `Lay ${count} balls in the channel, touching, and read the whole row; it gives their mean finer than a caliper does. Roll each ball on glass and leave out the ones that wobble.`,
    sizes: [
      { symbol: 'Dw', name: 'mean ball diameter', value: settled.ballDiameter },
      { name: `the row of ${count}`, value: mm(count * settled.ballDiameter) },
    ],
    check: 'The row against its size; each ball with the caliper in three directions.',
    mistake: {
      looksLike: `Balls that run ${say(over)} large take ${say(takenBy(over, design))} off the ${isCaged(design) ? 'play' : 'gap'}.`,
      costs: 'A groove cut for the wrong balls. Measure before any wood is cut, and design again with what you have.',
    },
    cautions: material === 'glass' ? ['glass-balls'] : [],
    readings: [{ name: `length of the row of ${count}`, at: madeAt(design), kind: 'ball-row', field: '/value' }],
  }
}

/** What balls that run so much larger take off the figure that is made: the gap, or, in a cage, the play. */
const takenBy = (over: Mm, design: AnyDesign): Mm =>
  mm(over * (isCaged(design) ? PLAY_PER_BALL : Math.abs(design.bearing.gapPerBallDiameter)))

/** A ball that grows pushes both grooves apart, on either side of the ring. */
const PLAY_PER_BALL = 2

function outerRing(job: Job): readonly Operation[] {
  if (hasTracks(job))
    return [outerLayout(job), ...outerShape(job), outerTrack(job), tryRollers(outerFit(job)), outerSand(job)]
  const split = job.design.bearing.settled.split === 'outer-ring' ? [outerSplit()] : []
  return [
    outerLayout(job),
    ...split,
    ...outerShape(job),
    outerInside(job),
    outerGroove(job),
    outerFit(job),
    outerSand(job),
  ]
}

/** From the board to a ring with a hole, by the machines at hand. */
function outerShape(job: RingJob): readonly Operation[] {
  switch (job.method) {
    case 'saw-and-lathe':
      return [outerBore(job), outerSaw(job), outerOutside(job), outerCore(job)]
    case 'lathe-only':
      return [outerBore(job), outerOutside(job), outerCore(job)]
    default:
      return [outerRouted(job)]
  }
}

function outerLayout(job: RingJob): Operation {
  const { design, method, say } = job
  const allowance = sawAllowance(design.bearing.settled.input.units)
  const outside = size(job, 'outsideDiameter', 'outside, the full line')
  return {
    id: 'outer-layout',
    part: 'outer-ring',
    title: 'Lay out the outer ring',
    tool: 'the printed template or a compass, a centre punch',
    how: 'Glue the template on, the arrow along the grain, or prick its lines through. Punch the centre deep.',
    sizes: [
      outside,
      size(job, cylinderKeys(job.design.bearing).outer, 'hole, the full line'),
      ...(method === 'saw-and-lathe'
        ? [{ name: 'saw by, the dashed line', value: mm(outside.value + 2 * allowance) }]
        : []),
      size(job, 'outerWidth', 'thickness, both faces planed'),
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

const outerSplit = (): Operation => ({
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
  const allowance = sawAllowance(job.design.bearing.settled.input.units)
  const outside = size(job, 'outsideDiameter', '')
  return {
    id: 'outer-saw',
    part: 'outer-ring',
    title: 'Saw the disc out',
    tool: 'band saw or scroll saw',
    how: 'Saw along the dashed line, in the waste. The full line stays on the blank.',
    sizes: [{ name: 'saw by', value: mm(outside.value + 2 * allowance) }],
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
    sizes: [size(job, 'outsideDiameter', 'outside')],
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
      size(job, 'outsideDiameter', 'outside'),
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

function outerInside(job: RingJob): Operation {
  const { design, say } = job
  const hole = size(job, 'outerLandDiameter', 'hole (land)')
  const slope = design.dimensions.find(({ key }) => key === 'outerLandDiameter')?.gapPerUnit ?? 0
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

function outerGroove(job: Job): Operation {
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
      size(job, 'outerGrooveRadius', 'groove radius'),
      size(job, 'outerGrooveDepth', 'groove depth', -short),
      size(job, 'outerGrooveBottomDiameter', 'across the bottoms', -2 * short),
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

function outerFit({ design, say }: Job): Operation {
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

function outerSand(job: Job): Operation {
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
      size(job, 'gaugeGoDiameter', 'go plug'),
      size(job, 'gaugeNoGoDiameter', 'no-go plug'),
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

const innerRing = (job: Job): readonly Operation[] =>
  hasTracks(job)
    ? [innerBlank(job), innerTrack(job), closeOverRollers(innerFit(job)), innerSand(job)]
    : innerGrooved(job)

function innerGrooved(job: RingJob): readonly Operation[] {
  const split = job.design.bearing.settled.split === 'inner-ring' ? [innerSplit(job)] : []
  return [innerBlank(job), ...split, innerOutside(job), innerGroove(job), innerFit(job), innerSand(job)]
}

function innerBlank(job: RingJob): Operation {
  const { design, method } = job
  const isSplit = design.bearing.settled.split === 'inner-ring'
  const allowance = sawAllowance(design.bearing.settled.input.units)
  const outside = size(job, cylinderKeys(design.bearing).inner, 'outside, the full line')
  const width = size(job, 'innerWidth', 'thickness')
  return {
    id: 'inner-blank',
    part: 'inner-ring',
    title: isSplit ? 'Cut the two discs of the inner ring' : 'Cut the disc of the inner ring',
    tool: method === 'router-and-lathe' ? 'router on a circle jig, drill press' : 'saw, plane, drill press',
    how: `Lay out from the template, the arrow along the grain. Cut outside of the full line. Bore the centre${isSplit ? ' of both, one on the other' : ''}.`,
    sizes: [
      outside,
      { name: 'cut by, the dashed line', value: mm(outside.value + 2 * allowance) },
      isSplit ? { ...width, name: 'thickness of each disc', value: mm(width.value / 2) } : width,
      size(job, 'boreDiameter', 'bore'),
    ],
    check: LAYOUT_CHECK,
    mistake: {
      looksLike: 'A bore that is not square to the face: the ring runs out.',
      costs: 'The disc. Bore before it is sawn round, while it can be clamped.',
    },
    cautions: [method === 'router-and-lathe' ? 'routing' : 'sawing', 'drilling', 'dust'],
    readings: [],
  }
}

function innerSplit(job: RingJob): Operation {
  const screws = splitScrewsOf(job.design.bearing)
  return {
    id: 'inner-split',
    part: 'inner-ring',
    title: screws === undefined ? 'Pin the halves together' : 'Screw the halves together',
    tool:
      screws === undefined
        ? 'dowels, or a bolt through the bore with washers'
        : `drill, countersink, ${screws.count} wood screws No. 4`,
    how: 'Before anything is turned, so that both halves are turned as one. The faces meet at mid groove. Mark the pair across the edge, and take it apart only to put the balls in.',
    sizes:
      screws === undefined ? [] : [{ name: `${screws.count} screws on a circle of`, value: screws.circleDiameter }],
    check: 'No light between the halves; the marks meet.',
    mistake: {
      looksLike: 'A screw that comes out in the groove or the bore.',
      costs: 'The tool strikes steel. Countersink deep, and keep to the circle.',
    },
    cautions: ['drilling'],
    readings: [],
  }
}

const innerOutside = (job: RingJob): Operation => ({
  id: 'inner-outside',
  part: 'inner-ring',
  title: 'Turn the outside of the inner ring',
  tool: 'lathe, on a mandrel through the bore, gouge and scraper',
  how: 'Down to the line. Write down what it is: the groove is measured from here.',
  sizes: [size(job, 'innerLandDiameter', 'outside (land)')],
  check: 'Caliper in two directions; the hollow edge of the gauge sheet shows no light.',
  mistake: {
    looksLike: 'An outside that is too small, with the groove cut to its depth all the same.',
    costs: 'Play. Cut the groove to its bottom diameter, not to its depth.',
  },
  cautions: ['turning', 'dust'],
  readings: [],
})

function innerGroove(job: RingJob): Operation {
  const { innerRing: inner } = job.design.bearing
  const short = grooveStopShort(inner.grooveDepth)
  return {
    id: 'inner-groove',
    part: 'inner-ring',
    title: 'Cut the groove of the inner ring, short of its depth',
    tool: 'lathe, scraper ground to the groove radius, outside caliper',
    how: 'At mid width, on the line between the halves if there is one. Stop short.',
    sizes: [
      size(job, 'innerGrooveRadius', 'groove radius'),
      size(job, 'innerGrooveDepth', 'groove depth', -short),
      size(job, 'innerGrooveBottomDiameter', 'across the bottoms', 2 * short),
    ],
    check: 'The profile of the gauge sheet: its shoulders stay off the land by what is left to sand.',
    mistake: {
      looksLike: 'A groove off the middle: one half closes, the other does not.',
      costs: 'The pair. Score the middle with a pencil while it turns, before the tool goes in.',
    },
    cautions: ['turning', 'dust'],
    readings: [{ name: 'across the groove bottoms', at: 'inner', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

function innerFit(job: RingJob): Operation {
  const { settled } = job.design.bearing
  return {
    id: 'inner-fit',
    part: 'inner-ring',
    title: 'Try it in the outer ring, with the balls',
    tool: 'hands; a dial indicator if there is one',
    how:
      settled.split === 'outer-ring'
        ? 'Lay the balls round the inner ring and close the halves of the outer ring over them. Turn by hand and feel for play, side to side.'
        : 'Balls in the outer ring; close the inner ring in from both sides. Turn by hand and feel for play, side to side.',
    sizes: [size(job, 'radialInternalClearance', 'play to end at')],
    check: 'The whole travel from side to side, in two directions.',
    mistake: {
      looksLike: 'It binds at one place in every turn: a groove that is not round, or one large ball.',
      costs: 'Do not force it: find the ball first, then sand.',
    },
    cautions: [],
    readings: [
      { name: 'play, side to side', at: 'inner', kind: 'radial-play', field: '/value' },
      { name: 'it binds', at: 'inner', kind: 'binds', field: '' },
    ],
  }
}

const innerSand = (job: RingJob): Operation => ({
  id: 'inner-sand',
  part: 'inner-ring',
  title: 'Sand the inner groove to fit',
  tool: hasTracks(job) ? 'lathe, abrasive on a flat block' : 'lathe, abrasive round a dowel of the groove radius',
  how: 'Send the readings to the fit correction, take off what it says, clean, close it up again, and read.',
  sizes: [
    size(job, bottomKeys(job).inner, 'across the bottoms'),
    size(job, 'radialInternalClearance', 'play to end at'),
  ],
  check: 'It runs free all the way round, and the play is there and no more.',
  mistake: {
    looksLike: 'Play that is seen, not felt.',
    costs: 'A bearing that rattles; a new inner ring is the smaller one to make.',
  },
  cautions: ['turning', 'dust'],
  readings: [{ name: 'play, side to side', at: 'inner', kind: 'radial-play', field: '/value' }],
})

function finish({ design, say }: Job<AnyDesign>): Operation {
  const { finishAllowance } = design.bearing.settled
  const isBare = finishAllowance === 0
  return {
    id: 'finish',
    part: 'both',
    title: isBare ? 'Leave it bare, or finish outside the grooves only' : 'Put the finish on',
    tool: 'cloth, thin finish',
    how: isBare
      ? 'The sizes are for bare wood. Finish the outsides and faces alone, and keep it out of the grooves.'
      : `Thin, even coats on every turned surface: the sizes leave ${say(finishAllowance)} for it on each.`,
    sizes: isBare ? [] : [{ name: 'film on each surface', value: finishAllowance }],
    check: 'The plugs and the play again, when it is dry.',
    mistake: {
      looksLike: 'A run of finish in a groove.',
      costs: 'A bump that every ball climbs: scrape it out before it hardens.',
    },
    cautions: ['finish'],
    readings: gapReadings(design),
  }
}

const grain = (): Operation => ({
  id: 'grain',
  part: 'both',
  title: 'Knock the raised grain back',
  tool: 'fine abrasive, used',
  how: 'A first coat, or damp air, lifts the fibres. When dry, rub them off with two or three light strokes in each groove.',
  sizes: [],
  check: 'A cloth drags nowhere; the balls run without a hiss.',
  mistake: { looksLike: 'Sanding on until it is smooth to the eye.', costs: 'Depth: the gap opens again.' },
  cautions: ['dust'],
  readings: [],
})

const wax = (): Operation => ({
  id: 'wax',
  part: 'both',
  title: 'Wax the grooves',
  tool: 'hard paste wax, soft cloth',
  how: 'A thin coat in both grooves, left to dry and buffed off.',
  sizes: [],
  check: 'Nothing comes off on a finger.',
  mistake: { looksLike: 'Wax left thick.', costs: 'It gathers dust into crumbs that feel like a rough groove.' },
  cautions: ['finish'],
  readings: [],
})

const PLAY_READING = { name: 'play, side to side', at: 'inner', kind: 'radial-play', field: '/value' } as const

/** What is read once more at the end, and what it should be by then. */
type Kept = {
  readonly read: string
  readonly sizes: readonly Size[]
  readonly still: string
  readonly readings: readonly Reading[]
}

function keptBy(design: AnyDesign, say: (length: Mm) => string): Kept {
  if (isCaged(design)) {
    return {
      read: 'the play',
      sizes: [playOf(design.bearing)],
      still: 'the cage drags nowhere',
      readings: [PLAY_READING],
    }
  }
  const { bearing } = design
  const gap = { symbol: DIMENSION_SYMBOLS.ballGap, name: 'ball gap', value: bearing.ballGap }
  const still = `the gap is still ${say(bearing.settled.minBallGap)} or more`
  if (isOfPlates(design)) {
    const between = { symbol: DIMENSION_SYMBOLS.plateGap, name: 'between the plates', value: design.bearing.plateGap }
    return { read: 'the gap', sizes: [gap, between], still, readings: gapReadings(design) }
  }
  return {
    read: 'the gap and the play',
    sizes: [gap, playOf(design.bearing)],
    still,
    readings: [...gapReadings(design), PLAY_READING],
  }
}

const playOf = ({ radialInternalClearance: value }: RingPair): Size => ({
  symbol: DIMENSION_SYMBOLS.radialInternalClearance,
  name: 'play',
  value,
})

function runIn({ design, say }: Job<AnyDesign>): Operation {
  const { settled } = design.bearing
  const { read, sizes, still, readings } = keptBy(design, say)
  return {
    id: 'run-in',
    part: 'both',
    title: 'Assemble and run in by hand',
    tool: 'hands',
    how: `A few hundred turns by hand, light load, both ways. Take it apart, wipe out the dust, look for shiny spots, and read ${read} once more.`,
    sizes,
    check: `It coasts, and is as quiet at the end of a turn as at its start; ${still}.`,
    mistake: {
      looksLike: 'A shiny spot at one place of a groove: high wood or a large ball.',
      costs: 'Wear that grows. Ease the spot with two strokes, no more.',
    },
    cautions: [
      'light-use-only',
      ...((settled.traits.rolls === 'rollers' ? ['roller-skew'] : []) as CautionCode[]),
      ...((settled.input.balls.material === 'glass' ? ['glass-balls'] : []) as CautionCode[]),
    ],
    readings,
  }
}
