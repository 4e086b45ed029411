import { cheekScrewsOf, grooveStopShort, sawAllowance } from '#shared/making/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { DISC_BY, type Job, LAYOUT_CHECK, type Operation, type RingJob, sawLine, size } from './operation.ts'

/* What is done otherwise where rollers run on plain tracks between cheeks. Common practice, no source, as all of the sheet. */

/** What saw or router leave on a track, radially, for the lathe: of the smallest rings no more than there is. */
export const leftOnTrack = ({ design }: RingJob): Mm =>
  mm(Math.min(sawAllowance(design.bearing.settled.input.units), design.bearing.settled.ballDiameter / 2))

/** The last pass takes half of that; so far before its end the tool stops. */
const stopShort = (job: Job): Mm => grooveStopShort(mm(leftOnTrack(job) / 2))

export function cutRollers(job: Job): Operation {
  const { input, rollerLength: length } = job.design.bearing.settled
  const { count } = input.balls
  return {
    id: 'cut-rollers',
    part: 'balls',
    title: `Cut the ${count} rollers to length`,
    tool: 'fine saw, stop block, sanding block',
    how: 'A few more than that, against a stop, all at one setting, the ends square; then break the edges of the ends with two strokes.',
    sizes: length === undefined ? [] : [size(job, 'rollerLength', 'length')],
    check: 'Stand them on end on a flat plate: none leans, and a straightedge over them rocks on none.',
    mistake: {
      looksLike: 'A roller that is longer than the others.',
      costs: 'It is pinched between the cheeks, and the whole ring drags. Rub it down on a flat sheet.',
    },
    cautions: ['sawing', 'dust'],
    readings: [],
  }
}

/** The same choice as of balls, of what has two ends. */
export const chooseRollers = (choice: Operation): Operation => ({
  ...choice,
  check: 'The row against its size; each roller with the caliper at both ends and in the middle, two ways.',
  mistake: {
    ...choice.mistake,
    costs: 'A track cut for the wrong rollers. Measure before any ring is cut, and design again with what you have.',
  },
})

export function outerTrack(job: Job): Operation {
  const { gapPerGrooveDepth } = job.design.bearing
  const short = stopShort(job)
  return {
    id: 'outer-track',
    part: 'outer-ring',
    title: 'Turn the track of the outer ring, short of its size',
    tool: 'lathe, ring held by its outside, scraper, inside caliper',
    how: 'Straight through, the tool moved along the axis: a track that is a cone makes the rollers run askew. Stop short: what is left is sanded to fit, with the rollers in.',
    sizes: [size(job, 'outerRing.trackDiameter', 'track', -2 * short)],
    check: 'Inside caliper at both ends, in two directions; the round edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: `Each ${job.say(mm(short / 5))} too deep opens the gap by ${job.say(mm((gapPerGrooveDepth * short) / 5))}.`,
      costs: 'Wood does not go back on. Thicker rollers, a spacer or a new ring: the fit correction works out which.',
    },
    cautions: ['turning', 'dust'],
    readings: [{ name: 'across the track', at: 'outer', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

/** The same trial as with balls, on end. */
export const tryRollers = (fit: Operation): Operation => ({
  ...fit,
  title: 'Try the rollers',
  how: 'Ring flat on the bench. Stand the rollers in it on end, push them together, and read the gap between the last and the first; with one left out, the opening where it should go.',
  mistake: { ...fit.mistake, looksLike: 'A gap read with a roller that leans: it reads too small.' },
})

export function innerTrack(job: Job): Operation {
  const short = stopShort(job)
  return {
    id: 'inner-track',
    part: 'inner-ring',
    title: 'Turn the track of the inner ring, short of its size',
    tool: 'lathe, on a mandrel through the bore, gouge and scraper, outside caliper',
    how: 'Straight along the axis. Stop short: what is left is sanded to fit.',
    sizes: [
      size(job, 'innerRing.trackDiameter', 'track', 2 * short),
      size(job, 'innerRing.width', 'width, as long as the rollers'),
    ],
    check: 'Caliper at both ends, in two directions; the hollow edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: 'A track that is thinner at one end.',
      costs: 'Play at that end, and rollers that turn askew.',
    },
    cautions: ['turning', 'dust'],
    readings: [{ name: 'across the track', at: 'inner', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

export const closeOverRollers = (fit: Operation): Operation => ({
  ...fit,
  title: 'Try it in the outer ring, with the rollers',
  how: 'Outer ring flat on the bench, the rollers standing in it, the inner ring let down between them. Turn by hand and feel for play, side to side.',
  cautions: ['roller-skew'],
})

export function cheeks(job: Job): Operation {
  const { design, method, say } = job
  const { axialPlay } = design.bearing
  const outside = size(job, 'cheeks.outsideDiameter', 'outside')
  const screws = cheekScrewsOf(design.bearing)
  const { tool, round, cautions } = DISC_BY[method]
  const fastened =
    screws === undefined
      ? 'The wood behind the track is too thin for a No. 4 screw: take thinner ones, or pins, and drill for them.'
      : 'The screws go into the outer ring, clear of its track: drill the holes in both cheeks, and the ring through them.'
  return {
    id: 'cheeks',
    part: 'outer-ring',
    title: 'Make the two cheeks and screw them on',
    tool: `${tool}, screwdriver`,
    how: `Bore each while its blank can still be clamped, then ${round} about the hole. Screw one on; lay the ring on it, put in the inner ring and the rollers, and screw on the other. ${fastened}`,
    sizes: [
      outside,
      ...sawLine(job, outside),
      size(job, 'cheeks.holeDiameter', 'hole'),
      size(job, 'cheeks.thickness', 'thickness'),
      ...(screws === undefined
        ? []
        : [{ name: `${screws.count} wood screws No. 4 on a circle of`, value: screws.circleDiameter }]),
    ],
    check: `${LAYOUT_CHECK} Screwed together, rollers and inner ring still have ${say(axialPlay)} along the axis.`,
    mistake: {
      looksLike: 'A cheek that is not flat: the inner ring drags at one place of every turn.',
      costs: 'Little: plane it, or put paper under it at the screws.',
    },
    cautions,
    readings: [],
  }
}
