import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { carryingWoods } from '#shared/questions/load/carrying-woods.ts'
import { LOAD_FIELDS } from '#shared/questions/load/fields.ts'
import { type AnyLoadCheckInput, loadNameOf } from '#shared/questions/load/load-check.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { fromRequest } from '#src/api/fields.ts'
import { toNewtons } from '#src/api/force.ts'
import { present } from '#src/api/optional.ts'
import type { Fault } from '#src/http/problem.ts'
import { loadMissing, NO_WOODEN_BALLS } from '#src/words/load-check.ts'
import type { LoadCheckRequest } from './schema.ts'
import { spokenOf } from './shared-answer.ts'

/** The caller's input in the core's words, or its faults: no load of the kind that its bearing carries, the wood of balls of something else. */
export function toLoadCheckInput(request: LoadCheckRequest): Result<AnyLoadCheckInput, readonly Fault[]> {
  const { design } = request
  const name = loadNameOf(design)
  const faults: readonly Fault[] = [
    ...(request[name] === undefined ? [{ path: `/${name}`, message: loadMissing(name) }] : []),
    ...(request.ballWood !== undefined && (design.balls.material ?? BALL_MATERIAL) !== 'wood'
      ? [{ path: '/ballWood', message: NO_WOODEN_BALLS }]
      : []),
  ]
  if (faults.length > 0) return fail(faults)
  const { units, forceUnits } = spokenOf(request)
  const input = fromRequest(LOAD_FIELDS, request, units)
  const newtons = (force: number | undefined) => (force === undefined ? undefined : toNewtons(force, forceUnits))
  return ok(
    present<AnyLoadCheckInput>({
      ...carryingWoods(design.making?.woods),
      ...input,
      design: toDesignInput(design, '/design'),
      radialLoad: newtons(input.radialLoad),
      axialLoad: newtons(input.axialLoad),
    }),
  )
}
