import { COUNT } from '#shared/bearing/fields.ts'
import { inches, inUnits, type Mm, mm, type Units } from '#shared/units/length.ts'
import { readLength as readWritten } from '#shared/units/parse-length.ts'
import { figure } from '#src/words/figure.ts'
import { FIND } from '#src/words/kiosk/find.ts'
import type { ChoiceName, Job } from './job.ts'
import { listIn, readLength, Unread, withPoint } from './text.ts'

/** A size with the text that a field of the page takes for it. */
interface Size {
  readonly text: string
  readonly size: Mm
}

/** What a maker looks for: sizes, numbers, and the largest outside diameter in the units of the job. */
export interface FindQuery {
  readonly sizes: readonly Size[]
  readonly counts: readonly number[]
  readonly outside?: number
  readonly faults: Readonly<Partial<Record<ChoiceName, string>>>
}

/** As many as a search takes. */
const MOST_SIZES = 24
/** Between two sizes of a range: the steps in which balls are sold. Common practice, no source. */
const STEP: Readonly<Record<Units, Mm>> = { in: inches(1 / 16), mm: mm(1) }
/** Differences below it come from the conversion of units alone. */
const ROUNDING = 1e-6

/** What can be read of the three fields. With a fault in one, nothing of it is asked. */
export function readFindQuery(choices: Job['choices'], units: Units): FindQuery {
  const sizes = readSizes(choices.findSizes ?? '', units)
  const counts = readCounts(choices.findCounts ?? '')
  const outside = choices.findOutside === undefined ? undefined : readLength(choices.findOutside, units)
  const faultOf = (name: ChoiceName, read: unknown) => (read instanceof Unread ? { [name]: read.message } : {})
  return {
    sizes: sizes instanceof Unread ? [] : sizes,
    counts: counts instanceof Unread ? [] : counts,
    ...(outside !== undefined && !(outside instanceof Unread) && { outside: inUnits(outside, units) }),
    faults: { ...faultOf('findSizes', sizes), ...faultOf('findCounts', counts), ...faultOf('findOutside', outside) },
  }
}

/** `8 to 14`, `8-14`, `8..14`: the places where a text may be parted into two ends. */
const BETWEEN = /to|\.{2,}|[…‐‑‒–—−-]/gi

/**
 * The two ends of a range, as they were typed; undefined where the text is none. A hyphen may also join a whole number to its
 * fraction, so both ends must be what `isEnd` knows.
 */
function endsIn(text: string, isEnd: (text: string) => boolean): readonly [string, string] | undefined {
  if (isEnd(text)) return undefined
  for (const { 0: sign, index } of text.matchAll(BETWEEN)) {
    const ends = [text.slice(0, index).trim(), text.slice(index + sign.length).trim()] as const
    if (ends.every(isEnd)) return ends
  }
  return undefined
}

const isSize = (text: string): boolean => readWritten(withPoint(text)).ok

/** The ends of a range of sizes. */
export const sizeEndsIn = (text: string) => endsIn(text, isSize)

/** Sizes and ranges in one field. `16,5 to 18,5` has two commas and is one range. */
export const sizesIn = (text: string): readonly string[] =>
  text
    .split(/[;\n\t]|,(?!\d)|(?<!\d),/)
    .flatMap((each) => (sizeEndsIn(each.trim()) === undefined ? listIn(each) : [each.trim()]))

/** Sizes, and ranges of them. */
function readSizes(text: string, units: Units): readonly Size[] | Unread {
  const sizes: Size[] = []
  for (const each of sizesIn(text)) {
    const ends = sizeEndsIn(each)
    const read = ends === undefined ? oneSize(each, units) : sizesBetween(ends, units)
    if (read instanceof Unread) return read
    sizes.push(...read)
  }
  return sizes.length > MOST_SIZES ? new Unread(FIND.tooManySizes(sizes.length, MOST_SIZES)) : sizes
}

function oneSize(text: string, units: Units): readonly Size[] | Unread {
  const size = readLength(text, units)
  if (size instanceof Unread) return isSize(text) ? size : new Unread(FIND.sizesFault(units))
  return [{ text, size }]
}

/** A range in a maker's own units goes by the steps of these, with its last size even where no step meets it. */
function sizesBetween(ends: readonly [string, string], units: Units): readonly Size[] | Unread {
  const read = ends.map((end) => readLength(end, units))
  const fault = read.find((each) => each instanceof Unread)
  if (fault instanceof Unread) return fault
  const [least = mm(0), most = mm(0)] = (read as readonly Mm[]).toSorted((one, other) => one - other)
  const written = readWritten(withPoint(ends[0]))
  const steps = (written.ok && written.value.units) || units
  const count = Math.floor((most - least) / STEP[steps] + ROUNDING)
  if (count > MOST_SIZES) return new Unread(FIND.tooManySizes(count + 1, MOST_SIZES))
  const sizes = Array.from({ length: count + 1 }, (_, step) => mm(least + step * STEP[steps]))
  const all = most - (sizes.at(-1) ?? least) > ROUNDING ? [...sizes, most] : sizes
  return all.map((size) => ({ text: textOf(size, steps, units), size }))
}

const textOf = (size: Mm, written: Units, units: Units): string => {
  const text = figure(size, written)
  return written === units ? text.replace(` ${units}`, '') : text
}

const isCount = (text: string): boolean => /^\d{1,9}$/.test(text)

/** Numbers and ranges of them: they have no decimals, so a comma or a blank parts them too. */
function readCounts(text: string): readonly number[] | Unread {
  const counts = new Set<number>()
  const { min, max } = COUNT.bounds
  const between = text.replaceAll(new RegExp(`\\s*(${BETWEEN.source})\\s*`, 'gi'), '$1')
  for (const each of between.split(/[;,\s]+/).filter((part) => part !== '')) {
    const ends = isCount(each) ? [each, each] : endsIn(each, isCount)
    const [from = Number.NaN, to = Number.NaN] = (ends ?? []).map(Number).toSorted((one, other) => one - other)
    if (!(from >= min && to <= max)) return new Unread(FIND.countsFault(min, max))
    for (let count = from; count <= to; count += 1) counts.add(count)
  }
  return [...counts]
}
