/** Before the paragraphs of an operation, and below its code: few enough for the page to have them from the start. */
export const LABELS = {
  caution: 'Caution',
  counted: 'Not chosen',
  code: 'This code leads back to this bearing.',
} as const

/** Before what an operation is checked by, and what may go wrong in it. */
export const CHECK_LABELS = {
  check: 'Check',
  mistake: 'Mistake',
  cost: 'Cost',
  remedy: 'What to do',
} as const
