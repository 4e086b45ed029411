import { itemAt } from '#shared/numbers/item-at.ts'
import { mm } from '#shared/units/length.ts'
import { at, type Drawing, type Role, type Shape } from '#src/drawings/model.ts'
import { box, line, text } from '#src/drawings/shapes.ts'
import { fittedHeight } from '#src/drawings/text-width.ts'
import { withMinus } from '#src/words/figure.ts'
import { hatched } from './hatching.ts'

/*
 * How a figure is spread: a histogram with the limits of what is good, and marks. What is too little, good and too much is told
 * apart by hatching, by words and by where it is. A mark has a letter, and the letters a key, so that no words lie on one
 * another however near the marks are. All words and numbers come ready made.
 */

const WIDTH = mm(180)
const PLOT = { left: 18, right: 174, height: 60 }
/** The highest bar leaves a little of the plot free. */
const HIGHEST_BAR = 0.95 * PLOT.height
/** One value alone, and a bar that is narrower, is as wide as a hair. */
const HAIR = 0.4
const TITLE_HEIGHT = 3.2
const TEXT_HEIGHT = 2.4
/** From one line of words to the next. */
const ROW = 5
/** From the axis down to the first line of words: there the axis has its figures and its name. */
const BELOW_AXIS = 18
/** From one box of the legend to the next. */
const LEGEND_APART = 54
/** Square to the lines of a hatching. */
const HATCH_APART = 1.1

/** Figures along the axis, and up the plot, at the most. */
const MOST_ALONG = 8
const MOST_UP = 5
/** Width for a figure along the axis, with a little room before the next. */
const ROOM_ALONG = (PLOT.right - PLOT.left) / MOST_ALONG - 1.5
/** A mark or a limit is on the picture if it is no farther off than so many widths of the histogram. */
const FARTHEST = 5
/** Free on either side, in widths of what is shown. */
const MARGIN = 0.08
/** A histogram so much narrower than its surroundings is one value: a double can hardly tell its ends apart. */
const NARROWEST = 1e-6

/** Hatching of too little, good and too much: told apart without colour, and in print. */
const SLOPES: readonly [below: 1, within: undefined, above: -1] = [1, undefined, -1]
type Slope = (typeof SLOPES)[number]

interface Mark {
  readonly at: number
  readonly role: Extract<Role, 'hidden' | 'centre'>
  readonly text: string
}

export interface Spread {
  readonly title: string
  readonly description: string
  /** Edges in the units of the axis, ascending, one more than counts. */
  readonly edges: readonly number[]
  readonly counts: readonly number[]
  readonly min: number
  readonly max: number
  readonly marks: readonly Mark[]
  /** Shares below, within and above the limits. */
  readonly regions: readonly [below: string, within: string, above: string]
  readonly axis: string
  readonly countAxis: string
  readonly foot: readonly string[]
}

/** The picture of a spread, as large as it is on paper. Numbers are finite, and at least one count is above 0. */
export function distributionSheet(spread: Spread): Drawing {
  const marks = spread.marks.map((mark, index) => ({ ...mark, letter: String.fromCharCode(LETTER_A + index) }))
  const below = [...marks.map(({ letter, text: words }) => `${letter}: ${words}`), ...spread.foot]
  const bottom = BELOW_AXIS + ROW * below.length
  const top = bottom + PLOT.height
  const height = top + ROW * (marks.length + 3.5)
  const plot = plotOf(spread, bottom)
  // Each line reaches higher than all to the left of it, and its letter stands on its left: no other line gets there.
  const ascending = marks.toSorted((one, other) => one.at - other.at)
  return {
    title: spread.title,
    description: spread.description,
    width: WIDTH,
    height: mm(height),
    scale: 1,
    shapes: [
      row(spread.title, height - 5.5, TITLE_HEIGHT),
      ...legend(spread, height - 12.5),
      ...bars(spread, plot),
      ...axes(spread, plot),
      ...ascending.flatMap((mark, index) => markShapes(mark, plot, top + ROW * (index + 0.5))),
      ...below.map((words, index) => row(words, bottom - BELOW_AXIS - ROW * index)),
    ],
  }
}

const LETTER_A = 'A'.charCodeAt(0)

/** How values come to lie on the sheet. */
interface Plot {
  readonly view: View
  /** Share of the highest bar. */
  readonly most: number
  /** Height of the axis on the page. */
  readonly bottom: number
  readonly across: (value: number) => number
  readonly up: (density: number) => number
}

interface View {
  readonly from: number
  readonly to: number
}

function plotOf(spread: Spread, bottom: number): Plot {
  const view = viewOf(spread)
  const most = Math.max(...densities(spread))
  return {
    view,
    most,
    bottom,
    across: (value) => PLOT.left + ((value - view.from) / (view.to - view.from)) * (PLOT.right - PLOT.left),
    up: (density) => bottom + (density / most) * HIGHEST_BAR,
  }
}

/** From where to where is shown: the histogram, and whatever else is not so far off that it would become a needle. */
function viewOf({ edges, min, max, marks }: Spread): View {
  const [least = 0, most = 0] = [edges[0], edges.at(-1)]
  const surroundings = Math.max(Math.abs(max - min) / 100, Math.abs(least) / 100, 1e-6)
  const wide = most - least > NARROWEST * surroundings ? most - least : surroundings
  const near = [min, max, ...marks.map((mark) => mark.at)].filter(
    (value) => value > least - FARTHEST * wide && value < most + FARTHEST * wide,
  )
  const [from, to] = [Math.min(least, ...near), Math.max(most, ...near)]
  const margin = MARGIN * Math.max(to - from, wide)
  return { from: from - margin, to: to + margin }
}

/** Counts per width of the usual bin: those at the ends may be wider. A histogram of one value has one bin of no width. */
function densities({ edges, counts }: Spread): readonly number[] {
  const usual = Math.min(...counts.map((_, bin) => widthOf(edges, bin)))
  return counts.map((count, bin) => (usual > 0 ? (count * usual) / widthOf(edges, bin) : count))
}

const widthOf = (edges: readonly number[], bin: number): number => itemAt(edges, bin + 1) - itemAt(edges, bin)

/** A line of words across the sheet. */
const row = (words: string, y: number, height = TEXT_HEIGHT): Shape =>
  text(words, at(PLOT.left, y), fittedHeight(words, height, PLOT.right - PLOT.left), 'start')

function legend({ regions }: Spread, y: number): readonly Shape[] {
  return regions.flatMap((words, index): readonly Shape[] => {
    const [left, right] = [PLOT.left + index * LEGEND_APART, PLOT.left + index * LEGEND_APART + 6]
    const height = fittedHeight(words, TEXT_HEIGHT, LEGEND_APART - 10)
    return [...hatchedBox(left, y - 0.6, right, y + 3, SLOPES[index]), text(words, at(right + 2, y), height, 'start')]
  })
}

/** Hatching lies on one grid over the whole sheet, so that its lines go on from bar to bar. */
function hatchedBox(left: number, low: number, right: number, high: number, slope: Slope): readonly Shape[] {
  const outline = box('dimension', left, low, right, high)
  return slope === undefined ? [outline] : [outline, ...hatched({ left, right, low, high }, slope, HATCH_APART)]
}

/** The bars, cut where a limit runs through one, each part in the hatching of its side. */
function bars(spread: Spread, { across, up, bottom }: Plot): readonly Shape[] {
  const { edges, counts, min, max } = spread
  const heights = densities(spread)
  return counts.flatMap((count, bin): readonly Shape[] => {
    const [from = 0, to = 0] = [edges[bin], edges[bin + 1]]
    if (count === 0) return []
    const cuts = [from, ...[min, max].filter((limit) => limit > from && limit < to), to]
    return cuts.slice(1).flatMap((end, index) => {
      const begin = cuts[index] ?? from
      const middle = (begin + end) / 2
      const slope = SLOPES[middle < min ? 0 : middle > max ? 2 : 1]
      const [left, right] = [across(begin), Math.max(across(end), across(begin) + HAIR)]
      return hatchedBox(left, bottom, right, up(itemAt(heights, bin)), slope)
    })
  })
}

function axes(spread: Spread, { view, most, across, up, bottom }: Plot): readonly Shape[] {
  const { left, right, height } = PLOT
  const total = spread.counts.reduce((sum, count) => sum + count, 0)
  const along = ticks(view.from, view.to, MOST_ALONG).flatMap(({ value, label }): readonly Shape[] => [
    line('dimension', at(across(value), bottom), at(across(value), bottom - 1.5)),
    text(label, at(across(value), bottom - 5), fittedHeight(label, TEXT_HEIGHT, ROOM_ALONG), 'middle'),
  ])
  const upwards = ticks(0, (100 * most) / total, MOST_UP).flatMap(({ value, label }): readonly Shape[] => {
    const y = up((value * total) / 100)
    return [line('dimension', at(left, y), at(left - 1.5, y)), text(label, at(left - 2.5, y - 0.9), TEXT_HEIGHT, 'end')]
  })
  const name = fittedHeight(spread.axis, TEXT_HEIGHT, right - left)
  return [
    line('dimension', at(left, bottom), at(right, bottom)),
    line('dimension', at(left, bottom), at(left, bottom + height)),
    ...along,
    ...upwards,
    text(spread.axis, at((left + right) / 2, bottom - 10.5), name, 'middle'),
    text(spread.countAxis, at(4.5, bottom + height / 2), TEXT_HEIGHT, 'middle', { turned: 90 }),
  ]
}

/** Round numbers in a range: 1, 2 or 5 times a power of ten apart, so many and one at the most. */
export function ticks(
  from: number,
  to: number,
  most: number,
): readonly { readonly value: number; readonly label: string }[] {
  const rough = (to - from) / most
  if (!(rough > 0)) return []
  const exponent = Math.floor(Math.log10(rough))
  const power = Number(`1e${exponent}`)
  const step = ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
  const [first, last] = [Math.ceil(from / step), Math.floor(to / step)]
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const value = (first + index) * step
    return { value, label: value === 0 ? '0' : withMinus(value.toFixed(decimals)) }
  })
}

/** A line through the picture with its letter at the upper end; or an arrow at the edge that it lies beyond. */
function markShapes(
  { at: value, role, letter }: Mark & { readonly letter: string },
  { view, across, bottom }: Plot,
  y: number,
): readonly Shape[] {
  if (value < view.from) return [text(`← ${letter}`, at(PLOT.left, y), TEXT_HEIGHT, 'start')]
  if (value > view.to) return [text(`${letter} →`, at(PLOT.right, y), TEXT_HEIGHT, 'end')]
  const x = across(value)
  return [line(role, at(x, bottom), at(x, y + 3)), text(letter, at(x - 1, y), TEXT_HEIGHT, 'end')]
}
