import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Units } from '#shared/units/length.ts'
import { roundedIn } from '#shared/units/rounded.ts'
import { figureOfRule } from '#shared/units/shop-figure.ts'

/** A suggestion as it is typed into its field: exactly the value that was tried, a fraction where the rule shows it. */
export function textOfSuggestion({ kind, value }: Suggestion, units: Units, denominator: number | undefined): string {
  if (kind !== 'length') return String(value)
  return figureOfRule(value, units, denominator) ?? `${roundedIn(value, units)} ${units}`
}
