import { CAPITAL_HEIGHT } from '#src/drawings/writers/looks.ts'
import { unbroken } from '#src/words/unbroken.ts'

/**
 * Advance widths of DejaVu Sans 2.37 and its bold, in thousandths of the font size (the `hmtx` table of the two files,
 * rounded up; A with the space that two of them keep): what has about one width stands together. Other fonts that a
 * browser may take instead are as wide or narrower.
 */
const WIDTHS: readonly (readonly [regular: number, bold: number, signs: string])[] = [
  [228, 265, '′'],
  [278, 344, 'ijl'],
  [276, 307, "'"],
  [319, 381, ' ,.·'],
  [338, 401, '/:;\\|'],
  [353, 436, 'f'],
  [361, 416, '-'],
  [375, 448, '″'],
  [393, 479, '()[]t'],
  [402, 457, '!'],
  [412, 494, 'r'],
  [296, 373, 'IJ'],
  [461, 522, '"'],
  [501, 524, '*_–°'],
  [526, 596, 'sz'],
  [551, 594, 'c'],
  [558, 638, 'L'],
  [593, 665, 'vxyk'],
  [576, 684, 'F'],
  [604, 734, 'P'],
  [612, 725, 'TYo'],
  [616, 679, 'ae'],
  [636, 717, 'hnuEdgpqb'],
  [637, 735, '0123456789S'],
  [700, 776, 'KVBRCXZ'],
  [753, 838, 'UNHA'],
  [788, 873, 'DGOQØ&'],
  [839, 925, '#+<=>^~×±≤≥−→w'],
  [864, 996, 'M'],
  [990, 1104, 'mW%½¼¾⅛'],
]

/** As wide as the widest sign that a sheet of ours could hold. */
const UNKNOWN = [1001, 1104] as const

const BY_SIGN: ReadonlyMap<string, readonly [number, number]> = new Map(
  WIDTHS.flatMap(([regular, bold, signs]) => Array.from(signs, (sign) => [sign, [regular, bold]] as const)),
)

const PER_CAPITAL = 1 / CAPITAL_HEIGHT / 1000

/** How wide a text is at the most, when its capitals are so high: an upper bound, in the unit of the height. */
export function textWidth(text: string, height: number, bold = false): number {
  return widthsOf(text, bold) * PER_CAPITAL * height
}

function widthsOf(text: string, bold: boolean): number {
  let widths = 0
  for (const sign of text) {
    const [regular, heavy] = BY_SIGN.get(sign) ?? UNKNOWN
    widths += bold ? heavy : regular
  }
  return widths
}

/** The height at which a text fits a room: the usual one, or less. */
export function fittedHeight(text: string, height: number, room: number, bold = false): number {
  const width = textWidth(text, height, bold)
  return width > room ? (height * room) / width : height
}

/** Lines no wider than a room, broken at line ends and at spaces; a single word that is wider has a line of its own. */
export function wrapped(words: string, height: number, room: number, bold = false): readonly string[] {
  return words.split('\n').flatMap((paragraph) => wrappedParagraph(paragraph, height, room, bold))
}

function wrappedParagraph(words: string, height: number, room: number, bold: boolean): readonly string[] {
  const lines: string[] = []
  const space = widthsOf(' ', bold)
  let current = ''
  let taken = 0
  for (const joined of unbroken(words).split(' ')) {
    const word = joined.replaceAll('\u00a0', ' ')
    const own = widthsOf(word, bold)
    if (current === '') {
      current = word
      taken = own
    } else if ((taken + space + own) * PER_CAPITAL * height > room) {
      lines.push(current)
      current = word
      taken = own
    } else {
      current += ` ${word}`
      taken += space + own
    }
  }
  return [...lines, current]
}
