import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Units } from '#shared/units/length.ts'
import { figureOfRule } from '#shared/units/shop-figure.ts'
import { decimalFigure } from '#src/words/figure.ts'
import { choiceName } from './bearing.ts'

/** The value of a suggestion: a fraction where the rule shows it. */
export function suggestionWords({ path, kind, value }: Suggestion, units: Units, denominator?: number): string {
  if (kind === 'length') return figureOfRule(value, units, denominator) ?? decimalFigure(value, units)
  return kind === 'choice' || path === '/shopDenominator' ? choiceName(String(value)) : String(value)
}
