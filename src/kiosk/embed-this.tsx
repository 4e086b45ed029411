import { EMBED_NAMES, SHEETS } from '#src/words/kiosk/sheets.ts'
import { publicUrl } from './public-url.ts'
import { later } from './second-script.ts'

type Shown = { readonly request: object; readonly name: string }

/** Three ways to show this bearing on another page, to copy. */
export function EmbedThis({ request, name }: Shown) {
  const snippets = later()?.snippetsOf(publicUrl() ?? location.origin, request, name)
  if (snippets === undefined) return null
  return (
    <details class="embed">
      <summary>{SHEETS.embed}</summary>
      {(['element', 'image', 'frame'] as const).map((way) => (
        <label key={way}>
          {EMBED_NAMES[way]}
          <textarea readOnly rows={3} value={snippets[way]} onFocus={({ currentTarget }) => currentTarget.select()} />
        </label>
      ))}
    </details>
  )
}
