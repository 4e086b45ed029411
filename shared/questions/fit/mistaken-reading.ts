import type { AskedReading, Reading } from './reading.ts'

/** A ball that was left out leaves at least so much of a ball open. Derived here: of three balls it is none, of five three fifths. */
const LEAST_OPENING = 0.5

/**
 * What a reading that does not fit was more likely than not: of an opening wider than it can be for a ball that stays out, the gap is asked for; a gap
 * as wide as a place for a ball may be the opening. Undefined where nothing else is likelier.
 *
 * @param expected what all else leads to expect of it
 */
export function mistakenFor(reading: Reading, expected: number, ballDiameter: number): AskedReading | undefined {
  switch (reading.kind) {
    case 'last-ball-opening':
      return reading.ballsLeftOut === 1 && reading.value > expected ? { kind: 'ball-gap' } : undefined
    case 'ball-gap':
      return reading.value > expected && reading.value > LEAST_OPENING * ballDiameter
        ? { kind: 'last-ball-opening', ballsLeftOut: 1 }
        : undefined
    default:
      return undefined
  }
}
