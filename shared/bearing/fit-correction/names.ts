/* What an answer can say, by name. In a file of its own: whoever only names them has no need of what works them out. */

export const STATES = ['more-to-remove', 'in-band', 'too-deep'] as const
export type FitState = (typeof STATES)[number]

export const RESCUE_OPTIONS = [
  'accept',
  'better-balls',
  'larger-balls',
  'mixed-balls',
  'spacers',
  'lining',
  'one-ball-more',
  'new-blank',
] as const
export type RescueName = (typeof RESCUE_OPTIONS)[number]
