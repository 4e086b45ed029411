import { useEffect, useState } from 'preact/hooks'
import { queryOf } from '#src/kiosk/service.ts'
import { BEARING } from '#src/words/kiosk/bearing.ts'

/** So long nobody touches anything before a drawing is fetched. */
const CALM_MS = 400

/** The whole assembly drawing, for screens that are wide enough to read it. While the bearing changes there is none. */
export function AssemblyPicture({ request, name }: { readonly request: object; readonly name: string }) {
  const address = `/v1/drawings/assembly.svg?${queryOf(request)}`
  const [calm, setCalm] = useState<string>()
  useEffect(() => {
    const waiting = setTimeout(() => setCalm(address), CALM_MS)
    return () => clearTimeout(waiting)
  }, [address])
  if (calm !== address) return <div class="drawing wide-only" />
  return <img class="drawing wide-only" id="drawing" key={address} src={address} alt={`${BEARING.drawing}: ${name}`} />
}
