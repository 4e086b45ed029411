import { publicUrl } from './public-url.ts'
import { later } from './second-script.ts'

type Shown = { readonly request: object; readonly name: string }

/** Three ways to show this bearing on another page, to copy. */
export function EmbedThis({ request, name }: Shown) {
  const { sheets: words, snippetsOf } = later() ?? {}
  if (words === undefined || snippetsOf === undefined) return null
  const snippets = snippetsOf(publicUrl() ?? location.origin, request, name)
  return (
    <details class="embed">
      <summary>{words.embed}</summary>
      {(['element', 'image', 'frame'] as const).map((way) => (
        <label key={way}>
          {words.embeds[way]}
          <textarea readOnly rows={3} value={snippets[way]} onFocus={({ currentTarget }) => currentTarget.select()} />
        </label>
      ))}
    </details>
  )
}
