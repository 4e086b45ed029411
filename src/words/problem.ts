/*
 * Faults of a request as a whole, and of names in it. Sentences about the form of a request are in
 * `http/sentences.ts`.
 */

/** No bearing satisfies the input: the `detail` of a 422. */
export const CANNOT_BE_MADE = 'This bearing cannot be made: see `errors`.'

/** The bearing may be made, but the question about it has no answer: the `detail` of a 422. */
export const NO_ANSWER = 'This request has no answer: see `errors`.'

/** A link to the page with a bearing whose sheet cannot be shown. */
export const ON_THE_PAGE = 'Correct this bearing on its page'

/**
 * @param quoted the name as the caller wrote it, quoted
 * @param nearest known names that are like it, the nearest first
 */
export const unknownSpecies = (quoted: string, nearest: readonly string[]): string =>
  nearest.length === 0
    ? `Unknown species ${quoted}. \`/v1/materials\` lists them all.`
    : `Unknown species ${quoted}. The nearest are ${nearest.map((id) => `"${id}"`).join(', ')}.`
