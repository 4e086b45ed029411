/** Why a candidate is no answer. */
export const DROP_REASONS = [
  'too-few-balls',
  'no-such-groove',
  'lands-touch',
  'outside-diameter',
  'no-board',
  'bore-too-large',
  'cannot-be-made',
  'not-on-rule',
  'dents-deeper',
  'not-all-year',
] as const
export type DropReason = (typeof DROP_REASONS)[number]
