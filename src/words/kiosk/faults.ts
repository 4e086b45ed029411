import type { Units } from '#shared/units/length.ts'

/** Faults of a field of the page. */
export const FAULTS = {
  onHand: (text: string) => `“${text}” is no size with a number of balls, such as 16.5 x 12.`,
  missing: 'Fill this in.',
  wood: 'Choose a wood, or clear the humidities.',
  driest: 'This is above that of the dampest time. Exchange the two.',
  length: 'Enter a length such as 5/8, 1 3/16, 16.5 or 16 mm.',
  lengthBounds: (least: number, most: number, units: Units) => `Enter a length from ${least} to ${most} ${units}.`,
  numberBounds: (least: number, most: number) => `Enter a number from ${least} to ${most}.`,
  countBounds: (least: number, most: number) => `Enter a whole number from ${least} to ${most}.`,
  /** @param choices by their names for people */
  choice: (choices: readonly string[]) => `Choose one of: ${choices.join(', ')}.`,
} as const
