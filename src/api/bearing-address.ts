import type { Design } from '#shared/bearing/arrangements.ts'
import { namesIn, valueAt } from '#shared/bearing/field.ts'
import type { Mm } from '#shared/units/length.ts'
import { roundedIn } from '#shared/units/rounded.ts'
import type { WayBack } from '#src/http/problem.ts'
import { fragmentText } from '#src/http/query-text.ts'
import { ON_THE_PAGE } from '#src/words/problem.ts'

/** Of the fragment of an address that holds a bearing or a whole job. */
export const JOB_VERSION = '1'

/** More than this, and a phone has trouble to read the code from a print. */
const MOST_BYTES = 300

/** What a path of sheets is told beside the bearing. */
const OF_SHEET = ['paper', 'engine', 'format', 'form', 'theme']
const MAKING = 'making'

/**
 * The address of the page with a bearing in it, short enough for a code on paper. Where wood and place make it too long, the
 * bearing goes without them, but with the sizes that they decided.
 *
 * @param publicUrl where people reach this service; null where nobody has said it
 * @param bearing a request, or its values by their names
 * @returns undefined where there is no address, or none that is short enough
 */
export function bearingAddress(publicUrl: string | null, bearing: object, design: Design): string | undefined {
  if (publicUrl === null) return undefined
  const { input } = design.bearing.resolved
  const whole = Object.entries(bearing).filter(([name]) => !OF_SHEET.includes(name))
  const sizes = whole.filter(([name]) => !name.startsWith(MAKING))
  const ofSeason = (input.seasoned?.paths ?? [])
    .filter((path) => !path.startsWith(`/${MAKING}`))
    .map((path) => [path.slice(1).replaceAll('/', '.'), roundedIn(valueAt(input, namesIn(path)) as Mm, input.units)])
  return [whole, [...ofSeason, ...sizes]]
    .map((values) => fragmentText({ v: JOB_VERSION, ...Object.fromEntries(values) }))
    .map((fragment) => fragment && `${publicUrl}/#${fragment}`)
    .find((address) => address !== undefined && address.length <= MOST_BYTES)
}

/** The page with the bearing of a query for a sheet, however wrong it is: there each field says what is wrong. */
export function wayToBearing(query: URLSearchParams): WayBack {
  const stated = [...query].filter(([name]) => !OF_SHEET.includes(name))
  return { address: `/#${fragmentText({ v: JOB_VERSION, ...Object.fromEntries(stated) }) ?? ''}`, words: ON_THE_PAGE }
}
