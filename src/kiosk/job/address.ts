import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { type FittedRing, RINGS } from '#shared/questions/fit/fit-setup.ts'
import { JOB_VERSION } from '#src/api/bearing-address.ts'
import { fragmentText } from '#src/http/query-text.ts'
import type { Lost } from '#src/words/kiosk/link.ts'
import { CHOICES, FIRST_JOB, type Job, jobOf, STAGES } from './job.ts'
import {
  type Cut,
  type GrooveState,
  PLUG_FITS,
  READING_FIELDS,
  READING_KINDS,
  type Reading,
  readingsIn,
} from './reading.ts'
import { readLength, Unread } from './text.ts'

/*
 * A job as the fragment of an address: `v=1&units=mm&balls.count=12&…&outer=o9~s0.6;o12`. The bearing has the query names of
 * the service. Of a groove, states are parted by `;`, readings by `,`, the two figures of a reading by `*`, and the cut
 * follows `~`. A fragment is never sent to a service.
 */

/** More than the longest job, and no more than a browser is willing to keep. */
const LONGEST = 16_000
const LONGEST_TEXT = 80
/** A list of measured balls is one value. */
const LONGEST_VALUE = 4_000
const MOST_READINGS = 50
const MOST_BALLS = 500

/** What is not of the bearing. */
const OWN = ['v', 'stage', 'ring', 'outer', 'inner', 'lot', ...CHOICES] as const

const TOOL_LETTERS = { 'sharp-tool': 's', abrasive: 'a' } as const

export function fragmentOf({ bearing, stage, ring, outer, inner, lot, choices }: Job): string {
  const query = new URLSearchParams({ v: JOB_VERSION, ...bearing })
  if (stage !== FIRST_JOB.stage) query.set('stage', stage)
  if (ring !== FIRST_JOB.ring) query.set('ring', ring)
  for (const [name, states] of Object.entries({ outer, inner }))
    if (states.length > 1 || readingsIn(states) > 0) query.set(name, states.map(textOfState).join(';'))
  if (lot.length > 0) query.set('lot', lot.join(','))
  for (const [name, text] of Object.entries(choices)) query.set(name, text)
  return fragmentText(Object.fromEntries(query)) ?? ''
}

const textOfState = ({ readings, cut }: GrooveState): string => {
  const text = readings.map(textOfReading).join(',')
  if (cut === undefined) return text
  const strokes = cut.strokes === undefined ? '' : `*${cut.strokes}`
  return `${text}~${TOOL_LETTERS[cut.with]}${cut.radial}${strokes}`
}

const textOfReading = ({ kind, value = '', second, result }: Reading): string => {
  const more = second ?? result
  return `${READING_FIELDS[kind].letter}${value}${more === undefined ? '' : `*${more}`}`
}

/** What was read of an address, and what of it could not be. */
export interface ReadAddress {
  readonly job: Job
  readonly lost: readonly Lost[]
}

/**
 * The job of a fragment; undefined where the fragment is not of a job. What cannot be read is left out.
 *
 * @param fragment without its `#`
 */
export function readAddress(fragment: string): ReadAddress | undefined {
  const query = new URLSearchParams(fragment.slice(0, LONGEST))
  if (query.get('v') !== JOB_VERSION) return undefined
  const lost: Lost[] = fragment.length > LONGEST ? [{ text: fragment.slice(LONGEST) }] : []
  const states = (name: string) => readStates(query.get(name), lost)
  const bearing: Record<string, string> = {}
  for (const [name, text] of query)
    if (!OWN.some((own) => own === name)) {
      if (/^[a-z][\w.]{0,79}$/i.test(name) && text.length <= LONGEST_VALUE && isKnown(name, text)) bearing[name] = text
      else lost.push({ name, text })
    }
  const lot = (query.get('lot') ?? '').split(',').filter((text) => text !== '')
  const job: Job = {
    ...jobOf({ units: 'mm', ...bearing }),
    stage: STAGES.find((stage) => stage === query.get('stage')) ?? FIRST_JOB.stage,
    ring: RINGS.find((ring: FittedRing) => ring === query.get('ring')) ?? FIRST_JOB.ring,
    outer: states('outer'),
    inner: states('inner'),
    lot: lot.slice(0, MOST_BALLS).map((text) => text.slice(0, LONGEST_TEXT)),
    choices: Object.fromEntries(
      CHOICES.flatMap((name) => (query.has(name) ? [[name, (query.get(name) ?? '').slice(0, LONGEST_TEXT)]] : [])),
    ),
  }
  return { job, lost }
}

/** Another unit or kind of bearing, of a page to come, must not be taken for one of these. */
const isKnown = (name: string, text: string): boolean => KNOWN.get(name)?.includes(text) ?? true
/** A map, as an object would also know `constructor` for a name. */
const KNOWN = new Map<string, readonly string[]>([
  ['units', ['in', 'mm']],
  ['arrangement', ARRANGEMENT_NAMES],
])

function readStates(text: string | null, lost: Lost[]): readonly GrooveState[] {
  const states = (text ?? '').split(';').map((part) => readState(part, lost))
  const last = states.at(-1)
  // The present state has no cut yet.
  const whole = last?.cut === undefined ? states : [...states, { readings: [] }]
  if (readingsIn(whole) <= MOST_READINGS) return whole
  lost.push({ text: text ?? '' })
  return [{ readings: [] }]
}

function readState(text: string, lost: Lost[]): GrooveState {
  const [read = '', cut] = text.split('~', 2)
  const parts = read.split(',').filter((part) => part !== '')
  const readings = parts.flatMap((part) => {
    const reading = readReading(part)
    if (reading === undefined) lost.push({ text: part })
    return reading ?? []
  })
  if (cut === undefined) return { readings }
  const found = readCut(cut)
  if (found === undefined) lost.push({ text: cut })
  return found === undefined ? { readings } : { readings, cut: found }
}

function readReading(text: string): Reading | undefined {
  const kind = READING_KINDS.find((each) => READING_FIELDS[each].letter === text[0])
  if (kind === undefined || text.length > LONGEST_TEXT) return undefined
  const fields = READING_FIELDS[kind]
  const [value = '', more] = text.slice(1).split('*', 2)
  if (fields.value === undefined ? value !== '' : !isLength(value)) return undefined
  const result = PLUG_FITS.find((each) => each === more)
  if (fields.hasResult && result === undefined) return undefined
  return {
    kind,
    ...(value !== '' && { value }),
    ...(fields.hasResult && result !== undefined && { result }),
    ...(fields.second !== undefined && more !== undefined && { second: more }),
  }
}

const isLength = (text: string): boolean => !(readLength(text, 'mm') instanceof Unread)

function readCut(text: string): Cut | undefined {
  const [radial = '', strokes] = text.slice(1).split('*', 2)
  const tool = (['sharp-tool', 'abrasive'] as const).find((each) => TOOL_LETTERS[each] === text[0])
  const count = Number(strokes)
  if (tool === undefined || !isLength(radial) || text.length > LONGEST_TEXT) return undefined
  return { with: tool, radial, ...(tool === 'abrasive' && Number.isInteger(count) && count > 0 && { strokes: count }) }
}
