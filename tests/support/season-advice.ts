import { type Advice, GOOD_ENOUGH, isFelt, withChanges } from '#shared/questions/season/advice.ts'
import type { SeasonalFitInput } from '#shared/questions/season/input.ts'
import { seasonalFit } from '#shared/questions/season/seasonal-fit.ts'
import { inUnits } from '#shared/units/length.ts'
import { describeAdvice } from '#src/words/seasonal-fit.ts'
import { termsOf } from '#src/words/terms.ts'

/** What is wrong with the advice for a year, if anything; with the kind of the advice. None for a year without an answer. */
export function faultsOfAdvice(
  input: SeasonalFitInput,
): { readonly kind: Advice['kind']; readonly faults: string[] } | undefined {
  const result = seasonalFit(input)
  if (!result.ok) return undefined
  const { advice, bearing, chances } = result.value
  const whole = bearing.resolved.input
  const faults: string[] = []
  const must = (holds: boolean, fault: string): void => {
    if (!holds) faults.push(fault)
  }
  const sentence = describeAdvice(result.value, termsOf(whole))
  must(!/\de[-+]?\d|NaN|undefined|-\d|\d\.\d{5}/.test(sentence), `a figure that nobody can use: ${sentence}`)
  for (const change of advice.changes) {
    if (change.kind !== 'length') continue
    // A rule shows half a tenth of a millimetre, or two thousandths of an inch, and no less.
    const steps = inUnits(change.to, whole.units) / (whole.units === 'mm' ? 0.05 : 0.002)
    must(change.to > 0 && change.to !== change.from, `${change.path} to ${change.to}`)
    const isLargest = change.path.endsWith('maxBallGap')
    must(isLargest || Math.abs(steps - Math.round(steps)) < 1e-6, `${change.path} is no step: ${change.to}`)
  }
  const play = 'radialInternalClearance' in whole ? (whole.radialInternalClearance ?? 0) : 0
  if (advice.kind === 'leave')
    must(/ rattle/.test(sentence) === isFelt(play, bearing.resolved.ballDiameter), `silent on a play of ${play}`)
  if (advice.kind === 'leave') must(chances.runsAllYear >= GOOD_ENOUGH, 'left as it is, but not good')
  else if (advice.kind === 'no-remedy') must(advice.changes.length === 0, 'no remedy, but changes')
  else if (chances.runsAllYear < GOOD_ENOUGH)
    must(advice.chances.runsAllYear > chances.runsAllYear, 'advice that gains nothing')
  else must(!advice.isLoose && advice.chances.runsAllYear >= GOOD_ENOUGH, 'changed what runs, but not for its rattle')
  const again = seasonalFit(withChanges({ ...input, design: whole }, advice.changes))
  if (!again.ok) return { kind: advice.kind, faults: [...faults, `refused: ${JSON.stringify(again.error)}`] }
  must(JSON.stringify(again.value.chances) === JSON.stringify(advice.chances), 'other chances than were promised')
  const { resolved } = again.value.bearing
  if ('maxBallGap' in resolved) must(resolved.ballGap <= resolved.maxBallGap, 'a gap above the largest')
  if (advice.chances.runsAllYear >= GOOD_ENOUGH)
    must(again.value.advice.kind === 'leave', 'not content with its own advice')
  return { kind: advice.kind, faults }
}
