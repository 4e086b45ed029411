import type { ComponentChildren } from 'preact'
import { besidesOf, cutToPlug } from '#src/kiosk/first-cut.ts'
import { cuttingCaution } from '#src/words/caution.ts'
import { stageName } from '#src/words/kiosk/page.ts'

/** What is made besides the raceways: when, and the way to its sizes. */
export function Besides({
  derived,
  toSheets,
}: {
  readonly derived: Parameters<typeof besidesOf>[0]
  readonly toSheets: () => void
}) {
  const besides = besidesOf(derived)
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
export function ToPlug({
  derived,
  title,
  children,
}: {
  readonly derived: Parameters<typeof cutToPlug>[0]
  readonly title: string
  readonly children: ComponentChildren
}) {
  const words = cutToPlug(derived)
  return (
    <section class="advice" id="advice" role="status" aria-label={title}>
      <p class="advice-for">{title}</p>
      <p class="headline">{words?.headline}</p>
      <p class="summary">{words?.summary}</p>
      <p class="fault">{cuttingCaution('abrasive', 'outer', derived.terms)}</p>
      {children}
    </section>
  )
}
