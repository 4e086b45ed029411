import { escaped } from '#src/http/html.ts'
import { unbroken } from '#src/words/unbroken.ts'

/** A text to read, as it may stand between tags: no line ends between a figure and its unit. */
export const prose = (text: string): string => escaped(unbroken(text))
