import { type CagedDesign, isOfRollers, type RadialDesign } from '#shared/bearing/arrangements.ts'
import { gapBeforeFinish, plugBeforeFinish } from '#shared/bearing/before-finish.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { grooveStopShort } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { OperationWords } from '#src/words/job-sheet/operation.ts'
import * as words from '#src/words/job-sheet/outer-ring.ts'
import { beforeFinishName, gapToReach, openingReading, refusedReading, SIZES } from '#src/words/job-sheet/sizes.ts'
import { plugFacts } from '#src/words/plugs.ts'
import { outsideFor } from './mount-operations.ts'
import {
  acrossName,
  allowed,
  arrangementOf,
  dowelOf,
  type GroovedJob,
  gapReadings,
  grooveReadings,
  halfOf,
  hasTracks,
  inBareWood,
  type Job,
  leftToSand,
  type Operation,
  plugReadings,
  type RingJob,
  type Size,
  sandedLast,
  sandingSpeed,
  sawLine,
  size,
  termsOf,
  thicknesses,
  turnedFirst,
  unitsOf,
} from './operation.ts'
import { leftOnTrack } from './roller-operations.ts'
import { plugsToTry } from './workshop-operations.ts'

/* Operations of an outer ring, from the board to a groove or a track that fits. Common practice, no source, as all of the sheet. */

/** From the board to a ring with a hole, by the machines at hand. */
export function outerShape(job: RingJob): readonly Operation[] {
  switch (job.method) {
    case 'saw-and-lathe':
      return [...outerBore(job), outerSaw(job), outerOutside(job), ...outerCore(job)]
    case 'lathe-only':
      return [...outerBore(job), outerOutside(job), ...outerCore(job)]
    default:
      return [outerRouted(job)]
  }
}

/** A page that a printer shrank to fit is often so much too small: common practice, no source. */
const SHRUNK_BY = 0.03

export function outerLayout(job: RingJob): Operation {
  const outside = size(job, 'outerRing.outsideDiameter', SIZES.outsideLine)
  const lost = mm(SHRUNK_BY * outside.value)
  const ring = job.stock.outerRing
  const width = size(job, 'outerRing.width', SIZES.planedThickness)
  return {
    ...words.outerLayout({
      outside: outside.value,
      lost,
      units: unitsOf(job),
      isSegmented: ring.segments !== undefined,
      pieces: ring.blank.pieces,
      axialPlay: isOfRollers(job.design) ? job.design.bearing.axialPlay : undefined,
    }),
    id: 'outer-layout',
    part: 'outer-ring',
    sizes: [
      outside,
      size(job, turnedFirst(job).outer, SIZES.holeLine),
      ...sawLine(job, ring.blank),
      ...thicknesses(ring, ring.blank.pieces === 1 ? width : halfOf(width, SIZES.thicknessOfDisc)),
    ],
    cautions: [],
    readings: [],
  }
}

/** A ring of segments has its hole, and hangs on its waste disc: nothing is bored. */
function outerBore(job: RingJob): readonly Operation[] {
  const { outerRing, entryHole: entry } = job.stock
  if (outerRing.segments !== undefined) return []
  return [
    {
      ...words.outerBore(entry !== undefined),
      id: 'outer-bore',
      part: 'outer-ring',
      sizes: entry
        ? [
            { name: SIZES.bladeHole, value: entry.diameter, ...allowed(job, 'entryHole') },
            { name: SIZES.bladeHolePlace, value: entry.fromCentre },
          ]
        : [],
      cautions: ['drilling'],
      readings: [],
    },
  ]
}

const outerSaw = (job: RingJob): Operation => ({
  ...words.outerSaw(termsOf(job)),
  id: 'outer-saw',
  part: 'outer-ring',
  sizes: sawLine(job, job.stock.outerRing.blank),
  cautions: ['sawing', 'dust'],
  readings: [],
})

const outerOutside = (job: RingJob): Operation => ({
  ...words.outerOutside(
    job.method,
    { isOnDisc: job.stock.outerRing.segments !== undefined, leavesSides: job.stock.outerRing.sideAllowance > 0 },
    termsOf(job),
  ),
  id: 'outer-outside',
  part: 'outer-ring',
  sizes: outsideFor(job, size(job, 'outerRing.outsideDiameter', SIZES.outside)),
  cautions: ['turning', 'dust'],
  readings: [],
  speed: job.stock.outerRing.turning.speed,
})

/** The core of the outer ring. If the allowances leave none, the bored hole is opened out. */
function outerCore(job: RingJob): readonly Operation[] {
  const { outerRing, hasCore } = job.stock
  const { roughHole } = outerRing.blank
  if (roughHole === undefined) return []
  // As on the template, a core without room for a blade's hole is opened at the lathe.
  const way = hasCore ? (job.method === 'saw-and-lathe' ? 'sawn' : 'parted') : 'turned'
  return [
    {
      ...words.outerCore(way, hasTracks(job) ? 'track' : 'groove'),
      id: 'outer-core',
      part: 'outer-ring',
      sizes: [{ name: SIZES.core, value: roughHole, ...allowed(job) }],
      cautions: [
        'turning',
        ...(way === 'sawn' ? (['sawing'] as const) : []),
        ...(way === 'turned' ? [] : (['core-loose'] as const)),
        'dust',
      ],
      readings: [],
      speed: outerRing.turning.speed,
    },
  ]
}

/** A land is routed to its line, a track only to where sawing would leave it: the lathe takes the rest. */
function outerRouted(job: RingJob): Operation {
  const { outer } = turnedFirst(job)
  return {
    ...words.OUTER_ROUTED,
    id: 'outer-rout',
    part: 'outer-ring',
    sizes: [
      ...outsideFor(job, size(job, 'outerRing.outsideDiameter', SIZES.outside)),
      size(job, outer, SIZES.holeLineStays, hasTracks(job) ? -2 * leftOnTrack(job) : 0),
    ],
    cautions: ['routing', 'core-loose', 'dust'],
    readings: [],
  }
}

/** With a full ring the gap depends on the hole. */
export function outerInside(job: Job<RadialDesign>): Operation {
  const { resolved, gapPerPitchRadius } = job.design.bearing
  const over = mm(resolved.ballDiameter / 50)
  const opens = mm((gapPerPitchRadius / 2) * over)
  return inside(job, words.OUTER_INSIDE.radial({ over, opens, units: unitsOf(job) }))
}

/** With a cage no gap depends on the hole, but the cage runs in it. */
export const holeForCage = (job: Job<CagedDesign>): Operation => inside(job, words.OUTER_INSIDE.caged())

const inside = (job: GroovedJob, turned: OperationWords): Operation => ({
  ...turned,
  ...(job.stock.outerRing.segments && words.ON_ITS_DISC),
  id: 'outer-inside',
  part: 'outer-ring',
  sizes: [size(job, 'outerRing.landDiameter', SIZES.holeLand)],
  cautions: ['turning', 'dust'],
  readings: [],
  speed: job.stock.outerRing.turning.speed,
})

export function outerGroove(job: Job<RadialDesign>): Operation {
  const { outerRing, gapPerGrooveDepth } = job.design.bearing
  const short = grooveStopShort(outerRing.grooveDepth)
  const over = mm(short / 5)
  return {
    ...words.OUTER_GROOVE.radial({ over, opens: mm(gapPerGrooveDepth * over), units: unitsOf(job) }),
    id: 'outer-groove',
    part: 'outer-ring',
    sizes: outerGrooveSizes(job),
    cautions: ['turning', 'dust'],
    speed: job.stock.outerRing.turning.speed,
    readings: grooveReadings('outer'),
  }
}

/** A groove to be sanded to fit, with where the sharp tool stops. */
export function outerGrooveSizes(job: GroovedJob): readonly Size[] {
  const short = grooveStopShort(job.design.bearing.outerRing.grooveDepth)
  return [
    size(job, 'outerRing.grooveRadius', SIZES.grooveRadius),
    size(job, 'outerRing.grooveDepth', SIZES.grooveDepth, -short),
    size(job, 'outerRing.grooveBottomDiameter', SIZES.acrossBottoms, -2 * short),
  ]
}

export function outerFit(job: Job): Operation {
  const { resolved, ballGap } = job.design.bearing
  const arrangement = arrangementOf(job)
  const inBare = gapBeforeFinish(ballGap, job.design.bearing)
  const name = gapToReach(arrangement)
  const finished = { symbol: DIMENSION_SYMBOLS.ballGap, name, value: ballGap }
  const facts = { count: resolved.input.balls.count, ballGap: inBare, units: unitsOf(job) }
  return {
    ...words.OUTER_FIT[hasTracks(job) ? 'roller' : 'radial'](facts),
    id: 'outer-fit',
    part: 'outer-ring',
    sizes: [inBareWood(finished, inBare, beforeFinishName(name))],
    cautions: [],
    readings: [
      ...gapReadings(job),
      { name: openingReading(arrangement), at: 'outer', kind: 'last-ball-opening', field: '/value' },
      { name: refusedReading(arrangement), at: 'outer', kind: 'last-ball-refused', field: '' },
    ],
  }
}

export function outerSand(job: Job): Operation {
  const { bearing } = job.design
  const { minBallGap, maxBallGap, finishAllowance } = bearing.resolved
  const inBare = (gap: Mm): Mm => gapBeforeFinish(gap, bearing)
  const plugs = plugFacts(bearing)
  const facts = {
    minBallGap: minBallGap === 0 ? minBallGap : inBare(minBallGap),
    maxBallGap: inBare(maxBallGap),
    isBare: finishAllowance > 0,
    noGo: plugBeforeFinish(bearing.gauge.noGoDiameter, bearing.resolved),
    plugs: { ...plugs, whenGoEnters: { ...plugs.whenGoEnters, mean: inBare(plugs.whenGoEnters.mean) } },
    units: unitsOf(job),
  }
  return {
    ...words.OUTER_SAND[hasTracks(job) ? 'roller' : 'radial'](termsOf(job), facts),
    id: 'outer-sand',
    part: 'outer-ring',
    sizes: [
      ...dowelOf(job, 'outerRing'),
      ...(plugs.decides ? plugsToTry(job) : []),
      size(job, sandedLast(job).outer, acrossName(job)),
      leftToSand(job, 'outerRing'),
    ],
    cautions: ['turning', 'sanding-inside', 'dust'],
    speed: sandingSpeed(job.stock.outerRing.turning),
    readings: [...gapReadings(job), ...(plugs.decides ? plugReadings('outer') : [])],
  }
}
