import { inForceUnits } from '#shared/units/force.ts'
import type { Units } from '#shared/units/length.ts'
import { readLength } from '#shared/units/parse-length.ts'
import type { Scope } from './bearing.ts'
import { sizeEndsIn, sizesIn } from './find-query.ts'
import type { BearingTexts, Job } from './job.ts'
import { type GrooveState, READING_FIELDS, type Reading } from './reading.ts'
import { listIn, readNumber, Unread, withPoint } from './text.ts'

/** Of one newton, pounds. */
const POUNDS = inForceUnits(1, 'lbf')
const LOAD_DIGITS = 3

/** A job in the other units: every length that somebody stated or measured stays what it was, and says its own unit. */
export function inOtherUnits(job: Job, to: Units, sizes: BearingTexts, { leaves }: Scope): Job {
  const stated = (text: string): string => withItsUnit(text, to)
  const reading = (each: Reading): Reading => ({
    ...each,
    ...(each.value !== undefined && { value: stated(each.value) }),
    ...(each.second !== undefined &&
      READING_FIELDS[each.kind].second?.kind === 'length' && { second: stated(each.second) }),
  })
  const state = ({ readings, cut }: GrooveState): GrooveState => ({
    readings: readings.map(reading),
    ...(cut && { cut: { ...cut, radial: stated(cut.radial) } }),
  })
  const { findSizes, findOutside, grooveScatter, lotScatter, load, onHand, ...choices } = job.choices
  const kinds = new Map(leaves.map(({ names, field }) => [names.join('.'), field.kind]))
  const bearing = Object.entries(job.bearing).flatMap(([name, text]) => {
    const kind = kinds.get(name)
    if (kind === 'lengths') return [[name, listIn(text).map(stated).join(',')]]
    if (kind?.startsWith('length')) return [[name, stated(text)]]
    return isFigureOfTheLink(name, text) ? [] : [[name, text]]
  })
  return {
    ...job,
    bearing: { ...Object.fromEntries(bearing), units: to, ...sizes },
    outer: job.outer.map(state),
    inner: job.inner.map(state),
    lot: job.lot.map(stated),
    choices: {
      ...choices,
      ...(findOutside !== undefined && { findOutside: stated(findOutside) }),
      ...(grooveScatter !== undefined && { grooveScatter: stated(grooveScatter) }),
      ...(lotScatter !== undefined && { lotScatter: stated(lotScatter) }),
      ...(findSizes !== undefined && {
        findSizes: sizesIn(findSizes)
          .map((each) => (sizeEndsIn(each) ?? [each]).map(stated).join(' to '))
          .join('; '),
      }),
      ...(onHand !== undefined && { onHand: onHand.replaceAll(/[^\s;][^;\n]*(?=\s[x×*])/g, stated) }),
      ...(load !== undefined && { load: loadIn(load, to) }),
    },
  }
}

/** `16` in a job of millimetres is `16 mm` in one of inches, and there `5/8 in` is `5/8`. */
function withItsUnit(text: string, to: Units): string {
  const read = readLength(withPoint(text))
  if (!read.ok) return text
  if (read.value.units === undefined) return `${withPoint(text)} ${to === 'in' ? 'mm' : 'in'}`
  return read.value.units === to ? text.replace(/\s*[^\d⅛-⅞¼-¾]+$/, '') : text
}

/** The page does not know which figures of a link are lengths: in other units they would be others. */
const isFigureOfTheLink = (name: string, text: string): boolean =>
  name.startsWith('making.') && !name.startsWith('making.climate.') && name !== 'making.name' && /^[\d./ ]+$/.test(text)

function loadIn(text: string, to: Units): string {
  const load = readNumber(text, { min: 0, max: Number.MAX_VALUE })
  if (load instanceof Unread) return text
  return String(Number((to === 'in' ? load * POUNDS : load / POUNDS).toPrecision(LOAD_DIGITS)))
}
