import { itemAt } from '#shared/numbers/item-at.ts'
import type { Cut, GrooveState, Reading } from './reading.ts'

/** The state that the groove is in now: the last. */
export const ringNow = (states: readonly GrooveState[]): GrooveState => itemAt(states, states.length - 1)

const replacedLast = (states: readonly GrooveState[], now: GrooveState): readonly GrooveState[] => [
  ...states.slice(0, -1),
  now,
]

export const withReading =
  (reading: Reading) =>
  (states: readonly GrooveState[]): readonly GrooveState[] =>
    replacedLast(states, { readings: [...ringNow(states).readings, reading] })

/** Without one reading of the present state. */
export const withoutReading =
  (index: number) =>
  (states: readonly GrooveState[]): readonly GrooveState[] =>
    replacedLast(states, { readings: ringNow(states).readings.filter((_, at) => at !== index) })

/** A cut ends the present state, and the next one has no readings yet. */
export const withCut =
  (cut: Cut) =>
  (states: readonly GrooveState[]): readonly GrooveState[] => [
    ...replacedLast(states, { ...ringNow(states), cut }),
    { readings: [] },
  ]

/** Nothing read and nothing cut. */
export const untouched = (): readonly GrooveState[] => [{ readings: [] }]
