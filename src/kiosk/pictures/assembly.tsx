import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { queryOf } from '#src/kiosk/bearing-query.ts'
import { calmly } from '#src/kiosk/calmly.ts'
import { later } from '#src/kiosk/second-script.ts'

/** So long nobody touches anything before a drawing is fetched. */
const CALM_MS = 400
/** Screens from this width on have room for it beside the rest; on others it is folded. */
const HAS_ROOM = '(min-width: 60rem)'

interface Fetched {
  readonly address: string
  /** None where the drawing could not be had. */
  readonly drawing?: Element | undefined
}

/**
 * The views of the assembly drawing with its notes, fetched while they are unfolded. It stands in the page as a part of it, so its lines
 * have the page's ink, light or dark. While the bearing changes there is none.
 */
export function AssemblyPicture({ request }: { readonly request: object }) {
  const address = `/v1/drawings/assembly.html?${queryOf(request)}`
  const fetchDrawing = later()?.fetchDrawing
  const [isOpen, setOpen] = useState(() => matchMedia(HAS_ROOM).matches)
  const [fetched, setFetched] = useState<Fetched>()
  const place = useRef<HTMLDivElement>(null)
  const isCurrent = fetched?.address === address
  const drawing = isCurrent ? fetched.drawing : undefined
  useEffect(
    () =>
      isOpen && fetchDrawing
        ? calmly(
            CALM_MS,
            (signal) => fetchDrawing(address, signal),
            (found) => setFetched({ address, drawing: found }),
          )
        : undefined,
    [address, isOpen, fetchDrawing],
  )
  // With the drawing's place, never after it: nobody may find it empty.
  useLayoutEffect(() => {
    if (drawing !== undefined) place.current?.replaceChildren(drawing)
  }, [drawing])
  if (isCurrent && drawing === undefined) return null
  return (
    <details open={isOpen} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{later()?.sheets.drawing}</summary>
      {isCurrent ? (
        <div class="drawing" id="drawing" key={address} ref={place} />
      ) : (
        isOpen && <div class="drawing" aria-busy="true" />
      )}
    </details>
  )
}
