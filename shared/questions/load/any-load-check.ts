import { nameOf, traitsOf } from '#shared/bearing/arrangements.ts'
import { type Refused, refusedDesign, refusedQuestion } from '#shared/bearing/refusal.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { LoadCheckInput, PlateLoadCheckInput } from './input.ts'
import { type LoadCheck, loadCheck } from './load-check.ts'
import { type PlateLoadCheck, plateLoadCheck } from './plate-load-check.ts'
import type { LoadRefusal } from './refusal.ts'

/** A load on a bearing of any arrangement: its own load must be there. */
export type AnyLoadCheckInput = Omit<LoadCheckInput, 'radialLoad'> &
  Omit<PlateLoadCheckInput, 'axialLoad'> &
  Partial<Pick<LoadCheckInput, 'radialLoad'> & Pick<PlateLoadCheckInput, 'axialLoad'>>

/** A load check of any arrangement. */
export type AnyLoadCheck = LoadCheck | PlateLoadCheck

/** How the load of each is named. */
export const LOAD_NAMES = { rings: 'radialLoad', plates: 'axialLoad' } as const

const LACKS = {
  rings: ['axialLoad', 'offset'],
  plates: ['radialLoad', 'turning'],
} as const

/** What `loadCheck` and `plateLoadCheck` say, by the arrangement of the design; what only the other has is refused by name. */
export function anyLoadCheck(input: AnyLoadCheckInput): Result<AnyLoadCheck, Refused<LoadRefusal>> {
  const { members } = traitsOf(input.design)
  const foreign = LACKS[members].filter((name) => input[name] !== undefined)
  if (foreign.length > 0) {
    const arrangement = nameOf(input.design)
    return fail(refusedQuestion(foreign.map((name) => ({ code: 'not-of-arrangement', path: `/${name}`, arrangement }))))
  }
  if (members === 'plates') return plateLoadCheck({ ...input, axialLoad: input.axialLoad ?? Number.NaN })
  const checked = loadCheck({ ...input, radialLoad: input.radialLoad ?? Number.NaN })
  return checked.ok ? ok(checked.value) : fail(refusedDesign(checked.error))
}
