import fc from 'fast-check'

/** Halves of a pair are no letter by themselves (Unicode 15, section 23.6). */
const isHalf = (point: number): boolean => point >= 0xd800 && point <= 0xdfff

/** Any letter there is, signs that control something among them. The library's own takes seconds to be prepared in each process. */
export const anyLetter: fc.Arbitrary<string> = fc
  .integer({ min: 0, max: 0x10ffff })
  .filter((point) => !isHalf(point))
  .map((point) => String.fromCodePoint(point))
