import { grooveStopShort, sawAllowance } from '#shared/bearing/cutting-allowances.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { type Job, LAYOUT_CHECK, type Operation, size } from './operation.ts'

/* What is done otherwise where rollers run on plain tracks between cheeks. Common practice, no source, as all of the sheet. */

/** The last pass takes half of what sawing left on; so far before its end the tool stops. */
const stopShort = ({ design }: Job): Mm => grooveStopShort(mm(sawAllowance(design.bearing.settled.input.units) / 2))

export function cutRollers(job: Job): Operation {
  const { count, length } = job.design.bearing.settled.input.balls
  return {
    id: 'cut-rollers',
    part: 'balls',
    title: `Cut the ${count} rollers to length`,
    tool: 'fine saw, stop block, sanding block',
    how: 'Against a stop, all at one setting, the ends square; then break the edges of the ends with two strokes.',
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

export function outerTrack(job: Job): Operation {
  const { gapPerGrooveDepth } = job.design.bearing
  const short = stopShort(job)
  return {
    id: 'outer-track',
    part: 'outer-ring',
    title: 'Turn the track of the outer ring, short of its size',
    tool: 'lathe, ring held by its outside, scraper, inside caliper',
    how: 'Straight through, the tool moved along the axis: a track that is a cone makes the rollers run askew. Stop short: what is left is sanded to fit, with the rollers in.',
    sizes: [size(job, 'outerTrackDiameter', 'track', -2 * short)],
    check: 'Inside caliper at both ends, in two directions; the round edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: `Each ${job.say(mm(short / 5))} too deep opens the gap by ${job.say(mm((gapPerGrooveDepth * short) / 5))}.`,
      costs: 'Wood does not go back on. Thicker rollers, a spacer or a new ring: the fit correction works out which.',
    },
    cautions: ['turning', 'dust'],
    readings: [{ name: 'across the track', ring: 'outer', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

/** The same trial as with balls, on end. */
export const tryRollers = (fit: Operation): Operation => ({
  ...fit,
  title: 'Try the rollers',
  how: 'Ring flat on the bench. Stand the rollers in it on end, push them together, and read the gap between the last and the first; with one left out, the opening where it should go.',
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
      size(job, 'innerTrackDiameter', 'track', 2 * short),
      size(job, 'innerWidth', 'width, as long as the rollers'),
    ],
    check: 'Caliper at both ends, in two directions; the hollow edge of the gauge sheet shows no light.',
    mistake: {
      looksLike: 'A track that is thinner at one end.',
      costs: 'Play at that end, and rollers that turn askew.',
    },
    cautions: ['turning', 'dust'],
    readings: [{ name: 'across the track', ring: 'inner', kind: 'groove-bottom-diameter', field: '/value' }],
  }
}

export const closeOverRollers = (fit: Operation): Operation => ({
  ...fit,
  title: 'Try it in the outer ring, with the rollers',
  how: 'Outer ring flat on the bench, the rollers standing in it, the inner ring let down between them. Turn by hand and feel for play, side to side.',
})

export function cheeks(job: Job): Operation {
  const { say } = job
  const { axialPlay, settled } = job.design.bearing
  const outside = size(job, 'cheekOutsideDiameter', 'outside')
  return {
    id: 'cheeks',
    part: 'outer-ring',
    title: 'Make the two cheeks and screw them on',
    tool: 'saw, drill, lathe or router; wood screws into the outer ring',
    how: 'Two flat discs, their holes bored before they are sawn round. Screw one on; lay the ring on it, put in the inner ring and the rollers, and screw on the other. The screws go into the outer ring, clear of its track.',
    sizes: [
      outside,
      { name: 'saw by', value: mm(outside.value + 2 * sawAllowance(settled.input.units)) },
      size(job, 'cheekHoleDiameter', 'hole'),
      size(job, 'cheekThickness', 'thickness'),
    ],
    check: `${LAYOUT_CHECK} Screwed together, rollers and inner ring still have ${say(axialPlay)} along the axis.`,
    mistake: {
      looksLike: 'A cheek that is not flat: the inner ring drags at one place of every turn.',
      costs: 'Little: plane it, or put paper under it at the screws.',
    },
    cautions: ['sawing', 'drilling', 'dust'],
    readings: [],
  }
}
