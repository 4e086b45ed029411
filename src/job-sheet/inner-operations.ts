import { cylinderKeys } from '#shared/bearing/dimensions.ts'
import { grooveStopShort, splitScrewsOf } from '#shared/making/cutting-allowances.ts'
import { mm } from '#shared/units/length.ts'
import { bottomKeys, hasTracks, LAYOUT_CHECK, type Operation, type RingJob, roughCircle, size } from './operation.ts'

/* What is done to an inner ring, from the board to the play. Common practice, no source, as all of the sheet. */

/** @param fit how it is tried in the outer ring */
export function innerGrooved(job: RingJob, fit: Operation): readonly Operation[] {
  const split = job.design.bearing.settled.split === 'inner-ring' ? [innerSplit(job)] : []
  return [innerBlank(job), ...split, innerOutside(job), innerGroove(job), fit, innerSand(job)]
}

export function innerBlank(job: RingJob): Operation {
  const { design, method } = job
  const isSplit = design.bearing.settled.split === 'inner-ring'
  const outside = size(job, cylinderKeys(design.bearing).inner, 'outside, the full line')
  const width = size(job, 'innerRing.width', 'thickness')
  return {
    id: 'inner-blank',
    part: 'inner-ring',
    title: isSplit ? 'Cut the two discs of the inner ring' : 'Cut the disc of the inner ring',
    tool: method === 'router-and-lathe' ? 'router on a circle jig, drill press' : 'saw, plane, drill press',
    how: `Lay out from the template, the arrow along the grain. Cut outside of the full line. Bore the centre${isSplit ? ' of both, one on the other' : ''}.`,
    sizes: [
      outside,
      { name: 'cut by, the dashed line', value: roughCircle(job, outside) },
      isSplit ? { ...width, name: 'thickness of each disc', value: mm(width.value / 2) } : width,
      size(job, 'innerRing.boreDiameter', 'bore'),
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
  sizes: [size(job, 'innerRing.landDiameter', 'outside (land)')],
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
      size(job, 'innerRing.grooveRadius', 'groove radius'),
      size(job, 'innerRing.grooveDepth', 'groove depth', -short),
      size(job, 'innerRing.grooveBottomDiameter', 'across the bottoms', 2 * short),
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

export function innerFit(job: RingJob): Operation {
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

export const innerSand = (job: RingJob): Operation => ({
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
