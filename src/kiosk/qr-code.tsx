import { bearingAddress } from '#src/api/bearing-address.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { LABELS } from '#src/words/job-sheet/labels.ts'
import type { DerivedBearing } from './derived-bearing.ts'
import { publicUrl } from './public-url.ts'
import { later } from './second-script.ts'

/** A code that leads back to this very bearing; none where the service does not know its own address. */
export function QrCode({ bearing, derived }: { readonly bearing: BearingTexts; readonly derived: DerivedBearing }) {
  const address = derived.design && bearingAddress(publicUrl(), bearing, derived.design)
  const made = address && later()?.qrCode(address)
  if (!made) return null
  return (
    <figure class="code">
      <svg viewBox={`0 0 ${made.modules} ${made.modules}`} role="img" aria-label={`${LABELS.code}: ${derived.name}`}>
        <path d={made.path} />
      </svg>
      <figcaption>{LABELS.code}</figcaption>
    </figure>
  )
}
