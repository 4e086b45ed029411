import type { Refused } from '#shared/bearing/refusal.ts'
import type { Result } from '#shared/result.ts'

interface Reason {
  readonly code: string
  readonly path: string
}

/** Every reason why a question has no answer, as `code path`, those of its design at `/design`; none where it has one. */
export function reasonsIn(result: Result<unknown, Refused<Reason>>): readonly string[] {
  if (result.ok) return []
  const { ofDesign, ofQuestion } = result.error
  return [
    ...ofDesign.map(({ code, path }) => `${code} /design${path}`),
    ...ofQuestion.map(({ code, path }) => `${code} ${path}`),
  ]
}
