import { type Mm, mm } from '#shared/units/length.ts'
import { at, type Drawing, type Point, type Shape } from '#src/drawings/model.ts'

/*
 * How a figure is spread: a histogram with the limits of what is good, and marks. What is too little, good and too much is told
 * apart by hatching, by words and by where it is. A mark has a letter, and the letters a key, so that no words lie on one
 * another however near the marks are. All words and numbers come ready made.
 */

interface Mark {
  readonly at: number
  readonly role: 'hidden' | 'centre'
  readonly text: string
}

export interface Spread {
  readonly title: string
  readonly description: string
  /** Edges in the units of the axis, one more than counts. */
  readonly edges: readonly number[]
  readonly counts: readonly number[]
  readonly min: number
  readonly max: number
  readonly marks: readonly Mark[]
  /** What lies below, within and above the limits. */
  readonly regions: readonly [below: string, within: string, above: string]
  readonly axis: string
  readonly countAxis: string
  readonly foot: readonly string[]
}

const WIDTH = mm(180)
const PLOT = { left: 18, right: 174, height: 60 }
/** From the lower edge of the sheet to the axis, beside a row for each line of the key and of the foot. */
const BELOW_AXIS = 18
const TITLE = mm(3.2)
const LETTERS = mm(2.4)
const ROW = 5
/** What is too little, good and too much: told apart without colour, and as well in print. */
type Hatching = 'rising' | 'none' | 'falling'
const HATCHINGS: readonly Hatching[] = ['rising', 'none', 'falling']
/** Between two lines of a hatching, along the axis. */
const HATCH_APART = 1.6

/** A mark or a limit is on the picture if it is no farther off than so many widths of the histogram. */
const FARTHEST = 5
const MARGIN = 0.08

export function distributionSheet(spread: Spread): Drawing {
  const marks = spread.marks.map((mark, index) => ({ ...mark, letter: LETTER_OF[index] ?? '?' }))
  const below = [...marks.map(({ letter, text: words }) => `${letter}: ${words}`), ...spread.foot]
  const bottom = BELOW_AXIS + ROW * below.length
  const top = bottom + PLOT.height
  const height = top + ROW * (marks.length + 3.5)
  const view = viewOf(spread)
  const most = Math.max(...densities(spread))
  const scale: Scale = {
    view,
    most,
    bottom,
    across: (value) => PLOT.left + ((value - view.from) / (view.to - view.from)) * (PLOT.right - PLOT.left),
    up: (density) => bottom + (density / most) * PLOT.height * 0.95,
  }
  // Each line reaches higher than all to the left of it, and its letter stands on its left: no other line gets there.
  const ascending = marks.toSorted((one, other) => one.at - other.at)
  return {
    title: spread.title,
    description: spread.description,
    width: WIDTH,
    height: mm(height),
    scale: 1,
    shapes: [
      text(spread.title, at(PLOT.left, height - 5.5), 'start', TITLE),
      ...legend(spread, height - 12.5),
      ...bars(spread, scale),
      ...axes(spread, scale),
      ...ascending.flatMap((mark, index) => markShapes(mark, scale, top + ROW * (index + 0.5))),
      ...below.map((words, index) => text(words, at(PLOT.left, bottom - BELOW_AXIS - ROW * index), 'start')),
    ],
  }
}

const LETTER_OF = ['A', 'B', 'C', 'D', 'E', 'F']

/** How values come to lie on the sheet. */
interface Scale {
  readonly view: View
  /** Of the highest bar. */
  readonly most: number
  /** Where the axis lies. */
  readonly bottom: number
  readonly across: (value: number) => number
  readonly up: (density: number) => number
}

interface View {
  readonly from: number
  readonly to: number
}

/** From where to where is shown: the histogram, and whatever else is not so far off that it would become a needle. */
function viewOf({ edges, min, max, marks }: Spread): View {
  const [least = 0, most = 0] = [edges[0], edges.at(-1)]
  const wide = most > least ? most - least : Math.max(Math.abs(max - min) / 100, Math.abs(least) / 100, 1e-6)
  const near = [min, max, ...marks.map((mark) => mark.at)].filter(
    (value) => value > least - FARTHEST * wide && value < most + FARTHEST * wide,
  )
  const [from, to] = [Math.min(least, ...near), Math.max(most, ...near)]
  const margin = MARGIN * Math.max(to - from, wide)
  return { from: from - margin, to: to + margin }
}

const text = (
  words: string,
  place: Point,
  anchor: 'start' | 'middle' | 'end' = 'middle',
  height: Mm = LETTERS,
): Shape => ({ role: 'dimension', kind: 'text', text: words, at: place, anchor, height })

function legend({ regions }: Spread, y: number): readonly Shape[] {
  return regions.flatMap((words, index): readonly Shape[] => {
    const x = PLOT.left + index * 54
    return [...box(x, y - 0.6, x + 6, y + 3, HATCHINGS[index] ?? 'none'), text(words, at(x + 8, y), 'start')]
  })
}

function box(left: number, bottom: number, right: number, top: number, hatching: Hatching): readonly Shape[] {
  const points = [at(left, bottom), at(right, bottom), at(right, top), at(left, top)]
  const outline: Shape = { role: 'dimension', kind: 'polyline', closed: true, points }
  return hatching === 'none' ? [outline] : [outline, ...hatch(left, bottom, right, top, hatching)]
}

/** Lines at 45 degrees, on one grid over the whole sheet, so that they go on from bar to bar. */
function hatch(left: number, bottom: number, right: number, top: number, hatching: Hatching): readonly Shape[] {
  const way = hatching === 'rising' ? 1 : -1
  // A line has x − way y = offset: it enters the box at the left or at an end, and leaves it at the right or the other end.
  const [least, most] = way === 1 ? [left - top, right - bottom] : [left + bottom, right + top]
  const lines: Shape[] = []
  for (let offset = Math.ceil(least / HATCH_APART) * HATCH_APART; offset < most; offset += HATCH_APART) {
    const [one, other] = [offset + way * bottom, offset + way * top]
    const [from, to] = [Math.max(left, Math.min(one, other)), Math.min(right, Math.max(one, other))]
    if (to > from)
      lines.push({
        role: 'hatch',
        kind: 'line',
        from: at(from, way * (from - offset)),
        to: at(to, way * (to - offset)),
      })
  }
  return lines
}

/** Counts per width of the usual bin: those at the ends may be wider. A histogram of one value has one bin of no width. */
function densities({ edges, counts }: Spread): readonly number[] {
  const usual = Math.min(...counts.map((_, bin) => widthOf(edges, bin)))
  return counts.map((count, bin) => (usual > 0 ? (count * usual) / widthOf(edges, bin) : count))
}

const widthOf = (edges: readonly number[], bin: number): number => (edges[bin + 1] ?? 0) - (edges[bin] ?? 0)

/** The bars, cut where a limit runs through one, each part in the hatching of its side. */
function bars(spread: Spread, { across, up, bottom }: Scale): readonly Shape[] {
  const { edges, counts, min, max } = spread
  const heights = densities(spread)
  return counts.flatMap((count, bin): readonly Shape[] => {
    const [from = 0, to = 0] = [edges[bin], edges[bin + 1]]
    if (count === 0) return []
    const cuts = [from, ...[min, max].filter((limit) => limit > from && limit < to), to]
    return cuts.slice(1).flatMap((end, index) => {
      const begin = cuts[index] ?? from
      const middle = (begin + end) / 2
      const side = middle < min ? 0 : middle > max ? 2 : 1
      // One value alone is a bar of a hair's width.
      const [left, right] = [across(begin), Math.max(across(end), across(begin) + 0.4)]
      return box(left, bottom, right, up(heights[bin] ?? 0), HATCHINGS[side] ?? 'none')
    })
  })
}

function axes(spread: Spread, { view, most, across, up, bottom }: Scale): readonly Shape[] {
  const { left, right, height } = PLOT
  const total = spread.counts.reduce((sum, count) => sum + count, 0)
  const mostPercent = (100 * most) / total
  const sideways = ticks(view.from, view.to, 8).flatMap(({ value, label }): readonly Shape[] => [
    line(at(across(value), bottom), at(across(value), bottom - 1.5)),
    text(label, at(across(value), bottom - 5)),
  ])
  const upwards = ticks(0, mostPercent, 5).flatMap(({ value, label }): readonly Shape[] => {
    const y = up((value * total) / 100)
    return [line(at(left, y), at(left - 1.5, y)), text(label, at(left - 2.5, y - 0.9), 'end')]
  })
  return [
    line(at(left, bottom), at(right, bottom)),
    line(at(left, bottom), at(left, bottom + height)),
    ...sideways,
    ...upwards,
    text(spread.axis, at((left + right) / 2, bottom - 10.5)),
    {
      role: 'dimension',
      kind: 'text',
      text: spread.countAxis,
      at: at(4.5, bottom + height / 2),
      anchor: 'middle',
      height: LETTERS,
      turned: 90,
    },
  ]
}

const line = (from: Point, to: Point): Shape => ({ role: 'dimension', kind: 'line', from, to })

/** Round numbers in a range: 1, 2 or 5 times a power of ten apart, so many at the most. */
function ticks(from: number, to: number, most: number): readonly { readonly value: number; readonly label: string }[] {
  const rough = (to - from) / most
  if (!(rough > 0)) return []
  const exponent = Math.floor(Math.log10(rough))
  const power = Number(`1e${exponent}`)
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const found: { value: number; label: string }[] = []
  for (let index = Math.ceil(from / step); index * step <= to; index++) {
    found.push({ value: index * step, label: index === 0 ? '0' : (index * step).toFixed(decimals) })
  }
  return found
}

/** A line through the picture with its letter at the upper end; or an arrow at the edge that it lies beyond. */
function markShapes(
  { at: value, role, letter }: Mark & { readonly letter: string },
  { view, across, bottom }: Scale,
  y: number,
): readonly Shape[] {
  if (value < view.from) return [text(`← ${letter}`, at(PLOT.left, y), 'start')]
  if (value > view.to) return [text(`${letter} →`, at(PLOT.right, y), 'end')]
  const x = across(value)
  return [{ role, kind: 'line', from: at(x, bottom), to: at(x, y + 3) }, text(letter, at(x - 1, y), 'end')]
}
