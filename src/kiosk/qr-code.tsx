import { encode } from 'uqr'
import { bearingFragment } from '#src/kiosk/job/address.ts'
import type { BearingTexts } from '#src/kiosk/job/job.ts'
import { SHEETS } from '#src/words/kiosk/sheets.ts'

/** More than this, and a phone has trouble to read the code from a print. */
const MOST_BYTES = 300

/** A code that leads back to this very bearing; none where the service does not know its own address. */
export function QrCode({ bearing, name }: { readonly bearing: BearingTexts; readonly name: string }) {
  const address = addressOf(bearing)
  if (address === undefined) return null
  const { data } = encode(address, { ecc: 'M', border: 4 })
  const path = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')
  return (
    <figure class="code">
      <svg viewBox={`0 0 ${data.length} ${data.length}`} role="img" aria-label={`${SHEETS.code}: ${name}`}>
        <path d={path} />
      </svg>
      <figcaption>{SHEETS.code}</figcaption>
    </figure>
  )
}

/** The bearing alone; where that is too long, without its wood and place. */
function addressOf(bearing: BearingTexts): string | undefined {
  const url = document.querySelector('meta[name=public-url]')?.getAttribute('content') ?? ''
  if (url === '') return undefined
  const sizes = Object.fromEntries(Object.entries(bearing).filter(([name]) => !name.startsWith('making.')))
  return [bearing, sizes].map((texts) => `${url}/#${bearingFragment(texts)}`).find(({ length }) => length <= MOST_BYTES)
}
