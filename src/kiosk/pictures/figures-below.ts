/** No character of a figure in its unit is wider than this on average, in the usual sans-serif letters of 16 px. */
const WIDEST_CHARACTER = 10.3
/** What the two letters of a short unit are wider than that. */
const WIDE_UNIT = 8
/** Between two figures on one line. */
const APART = 12

/** As wide as a figure may come out, on the safe side. */
export const widthOf = (figure: string): number => WIDEST_CHARACTER * figure.length + WIDE_UNIT

/**
 * The middles of one or two figures below their lines, on one line: within the picture, and never one over the other. Where
 * the lines are too near, the lower figure moves to the left and the higher one to the right.
 *
 * @param lines where the figures belong, in order
 * @param figures one for each line
 * @param width of the picture; both figures have room in it
 */
export function middlesBelow(lines: readonly number[], figures: readonly string[], width: number): readonly number[] {
  const halves = figures.map((figure) => widthOf(figure) / 2)
  const [low = 0, high = low] = lines.map((line, at) => within(line, halves[at] ?? 0, width - (halves[at] ?? 0)))
  const [ofLow = 0, ofHigh] = halves
  if (ofHigh === undefined) return [low]
  const least = ofLow + APART + ofHigh
  if (high - low >= least) return [low, high]
  const first = within((low + high - least) / 2, ofLow, width - ofHigh - least)
  return [first, first + least]
}

const within = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most)
