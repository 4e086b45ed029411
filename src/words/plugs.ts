import type { BallRing } from '#shared/bearing/ball-ring.ts'
import { type PlugReading, plugReading } from '#shared/bearing/plug-reading.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure, giveOrTake } from './figure.ts'
import type { Terms } from './terms.ts'

/* The evidence of a plug and its limits, in the same words wherever a plug is named. */

/** A plug among the balls of a design. */
export interface PlugFacts extends Pick<PlugReading, 'whenGoEnters' | 'whenNoGoRefuses' | 'decides'> {
  /** Standard deviation of single balls. */
  readonly scatter: Mm
}

export const plugFacts = (bearing: BallRing): PlugFacts => ({
  ...plugReading(bearing),
  scatter: bearing.resolved.ballScatter,
})

export const MEASURE_INSTEAD = 'measure the gap with a rule'
/** Both plugs, where they tell nothing that the rule does not. */
export const LEAVE_OUT = 'you may leave both out'

/** Joined, not concatenated: V8 writes JSON of a flat string at twice the speed of one that is still in pieces. */
export function plugsTell(facts: PlugFacts, units: Units, { element, raceway }: Terms): string {
  const { scatter, whenGoEnters, whenNoGoRefuses, decides } = facts
  return [
    `With ${element.many} that differ by `,
    figure(scatter, units),
    ' (standard deviation), the go plug just enters at a gap of ',
    giveOrTake(whenGoEnters, units),
    ', and the no-go plug at ',
    giveOrTake(whenNoGoRefuses, units),
    decides
      ? `. The ${raceway.one} is finished when the go plug enters, the no-go plug does not, and the last ${element.one} goes in.`
      : `. So the plugs cannot tell when the ${raceway.one} is finished: once the last ${element.one} goes in, ${MEASURE_INSTEAD}. For that you need no plugs: ${LEAVE_OUT}.`,
  ].join('')
}
