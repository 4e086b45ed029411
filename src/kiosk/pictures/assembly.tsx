import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { queryOf } from '#src/kiosk/bearing-query.ts'
import { calmly } from '#src/kiosk/calmly.ts'
import { later } from '#src/kiosk/second-script.ts'

/** So long nobody touches anything before a drawing is fetched. */
const CALM_MS = 400

interface Fetched {
  readonly address: string
  /** None where the drawing could not be had. */
  readonly drawing?: Element | undefined
}

/**
 * The views of the assembly drawing, for screens that have room for it beside the rest. It stands in the page as a part of it, so its lines
 * have the page's ink, light or dark. While the bearing changes there is none.
 */
export function AssemblyPicture({ request }: { readonly request: object }) {
  const address = `/v1/drawings/assembly.html?${queryOf(request)}`
  const fetchDrawing = later()?.fetchDrawing
  const [fetched, setFetched] = useState<Fetched>()
  const place = useRef<HTMLDivElement>(null)
  const drawing = fetched?.address === address ? fetched.drawing : undefined
  useEffect(
    () =>
      fetchDrawing &&
      calmly(
        CALM_MS,
        (signal) => fetchDrawing(address, signal),
        (found) => setFetched({ address, drawing: found }),
      ),
    [address, fetchDrawing],
  )
  // With the drawing's place, never after it: nobody may find it empty.
  useLayoutEffect(() => {
    if (drawing !== undefined) place.current?.replaceChildren(drawing)
  }, [drawing])
  if (fetched?.address !== address) return <div class="drawing wide-only" aria-busy="true" />
  return drawing === undefined ? null : <div class="drawing wide-only" id="drawing" key={address} ref={place} />
}
