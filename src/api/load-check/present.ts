import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { type AnyLoadCheckInput, loadNameOf } from '#shared/questions/load/load-check.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { fromRequest } from '#src/api/fields.ts'
import { toNewtons } from '#src/api/force.ts'
import { present } from '#src/api/optional.ts'
import type { Fault } from '#src/http/problem.ts'
import { loadMissing } from '#src/words/load-check.ts'
import type { LoadCheckRequest } from './schema.ts'
import { spokenOf } from './shared-answer.ts'

/** The caller's input in the core's words, or that the load is missing which a bearing of this kind carries. */
export function toLoadCheckInput(request: LoadCheckRequest): Result<AnyLoadCheckInput, readonly Fault[]> {
  const { design } = request
  const name = loadNameOf(design)
  if (request[name] === undefined) return fail([{ path: `/${name}`, message: loadMissing(name) }])
  const { units, forceUnits } = spokenOf(request)
  const input = fromRequest(LOAD_FIELDS, request, units)
  const newtons = (force: number | undefined) => (force === undefined ? undefined : toNewtons(force, forceUnits))
  return ok(
    present<AnyLoadCheckInput>({
      ...input,
      design: toDesignInput(design, '/design'),
      radialLoad: newtons(input.radialLoad),
      axialLoad: newtons(input.axialLoad),
    }),
  )
}
