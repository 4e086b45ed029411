import type { DerivedBearing } from '#src/kiosk/derived-bearing.ts'
import { later } from '#src/kiosk/second-script.ts'
import { stageName } from '#src/words/kiosk/page.ts'

/** What is made besides the raceways: when, and the way to its sizes. */
export function Besides({ derived, toSheets }: { readonly derived: DerivedBearing; readonly toSheets: () => void }) {
  const besides = later()?.besidesOf(derived)
  if (besides === undefined) return null
  return (
    <p id="besides">
      {besides}{' '}
      <button type="button" onClick={toSheets}>
        {stageName('sheets', derived.terms)}
      </button>
    </p>
  )
}

/** A groove whose balls leave no gap: a size to stop at, and a plug from there on. */
export function ToPlug({ derived, title }: { readonly derived: DerivedBearing; readonly title: string }) {
  const words = later()?.cutToPlug(derived)
  return (
    <section class="advice" id="advice" role="status" aria-label={title}>
      <p class="advice-for">{title}</p>
      <p class="headline">{words?.headline}</p>
      <p class="summary">{words?.summary}</p>
      <p class="fault">{later()?.cuttingCaution('abrasive', 'outer', derived.terms)}</p>
    </section>
  )
}
