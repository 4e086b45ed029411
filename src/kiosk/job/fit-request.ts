import { inUnits, type Units } from '#shared/units/length.ts'
import { FAULTS } from '#src/words/kiosk/faults.ts'
import type { Job } from './job.ts'
import { ringNow } from './lathe.ts'
import { type GrooveState, READING_FIELDS, type Reading } from './reading.ts'
import { listIn, readCount, readLength, Unread } from './text.ts'

/** As many as the service takes. */
const MOST_STATES = 20
const COUNT = { min: 1, max: 200 }

/**
 * What the service is asked about the ring on the lathe.
 *
 * @param design the bearing as the service takes it
 * @param hasRings whether it has an outer and an inner one
 */
export function fitRequest(job: Job, design: object, units: Units, hasRings: boolean): object {
  const states = job[job.ring].slice(-MOST_STATES - 1)
  const now = ringNow(states)
  const first = states.length === 1
  const ofOther = job.ring === 'inner' ? ringNow(job.outer).readings.filter(isOfBalls) : []
  const requestsOf = (readings: readonly Reading[]) => readings.map((reading) => requestOf(reading, units))
  const earlier = states.slice(0, -1).flatMap(({ readings, cut }, index) =>
    cut === undefined
      ? []
      : {
          // What the outer ring says of the balls holds at every state of the inner one: it is told once, at the first.
          readings: requestsOf(index === 0 ? [...ofOther, ...readings] : readings),
          thenRemoved: { with: cut.with, radial: size(cut.radial, units) },
        },
  )
  return {
    design,
    ...(hasRings && { ring: job.ring }),
    readings: requestsOf(first ? [...ofOther, ...now.readings] : now.readings),
    ...(earlier.length > 0 && { earlier }),
    ...removals(states, job.ring, units),
    ...onHand(job, units),
  }
}

const isOfBalls = ({ kind }: Reading): boolean => READING_FIELDS[kind].ofBalls === true

/** Read once already, when it was entered: text that came by an address may still be anything, and is then 0. */
function size(text: string, units: Units): number {
  const read = readLength(text, units)
  return read instanceof Unread ? 0 : inUnits(read, units)
}

/** A reading as the service takes it. */
function requestOf({ kind, value, second, result }: Reading, units: Units): object {
  const fields = READING_FIELDS[kind]
  const figure = second ?? fields.second?.usual
  return {
    kind,
    ...(fields.value !== undefined && value !== undefined && { [fields.value]: size(value, units) }),
    ...(fields.second !== undefined &&
      figure !== undefined && {
        [fields.second.name]: fields.second.kind === 'count' ? countOf(figure) : size(figure, units),
      }),
    ...(result !== undefined && { result }),
  }
}

function countOf(text: string): number {
  const read = readCount(text, COUNT)
  return read instanceof Unread ? 1 : read
}

/** Other balls that the maker has, `16.5 x 12` each; what cannot be read is left out. */
function onHand({ choices }: Job, units: Units): object {
  const ballsOnHand = ballsIn(choices.onHand ?? '', units).flatMap((each) => (each instanceof Unread ? [] : [each]))
  return ballsOnHand.length > 0 ? { ballsOnHand } : {}
}

/** A list of sizes with a number of balls each. */
export const ballsIn = (text: string, units: Units) =>
  listIn(text).map((each) => {
    const [, diameter = '', quantity = ''] = /^(.+?)\s*[x×*]\s*(\d+)$/i.exec(each) ?? []
    const [length, count] = [readLength(diameter, units), readCount(quantity, QUANTITY)]
    return length instanceof Unread || count instanceof Unread
      ? new Unread(FAULTS.onHand(each))
      : { diameter: inUnits(length, units), quantity: count }
  })
const QUANTITY = { min: 1, max: 10_000 }

/** Counted strokes between two readings of the gap, or of the play: they show what a stroke takes off. */
function removals(states: readonly GrooveState[], ring: Job['ring'], units: Units): object {
  const [kind, name] = ring === 'outer' ? ['ball-gap', 'ballGap'] : ['radial-play', 'radialInternalClearance']
  const last = ({ readings }: GrooveState) => readings.findLast((reading) => reading.kind === kind)?.value
  const removalHistory = states.flatMap((state, index) => {
    const next = states[index + 1]
    const [before, after] = [last(state), next && last(next)]
    if (state.cut?.strokes === undefined || before === undefined || after === undefined) return []
    return { strokes: state.cut.strokes, [`${name}Before`]: size(before, units), [`${name}After`]: size(after, units) }
  })
  return removalHistory.length > 0 ? { removalHistory } : {}
}
