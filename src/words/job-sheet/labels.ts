/** Before the paragraphs of an operation, and below its code: few enough for the page to have them from the start. */
export const LABELS = {
  caution: 'Caution',
  counted: 'Not chosen',
  check: 'Check',
  mistake: 'Mistake',
  cost: 'Cost',
  remedy: 'What to do',
  code: 'This code leads back to this bearing.',
} as const
