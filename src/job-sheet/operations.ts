import { type Design, isCaged, isOfPlates } from '#shared/bearing/arrangements.ts'
import type { Mm } from '#shared/units/length.ts'
import type { Method } from '#src/api/job-sheet/schema.ts'
import { figure } from '#src/words/figure.ts'
import { chooseBalls } from './ball-operations.ts'
import {
  type CagedJob,
  cageRing,
  evenBalls,
  fill,
  holeForCage,
  plugGroove,
  pockets,
  threeBalls,
} from './cage-operations.ts'
import { finish, grain, runIn, wax } from './finish-operations.ts'
import { innerBlank, innerFit, innerGrooved, innerSand } from './inner-operations.ts'
import { hasTracks, type Job, type Operation } from './operation.ts'
import {
  outerFit,
  outerGroove,
  outerInside,
  outerLayout,
  outerSand,
  outerShape,
  outerSplit,
} from './outer-operations.ts'
import { plates } from './plate-operations.ts'
import {
  cheeks,
  chooseRollers,
  closeOverRollers,
  cutRollers,
  innerTrack,
  outerTrack,
  tryRollers,
} from './roller-operations.ts'

/**
 * The operations of a bearing in order, from choosing balls to running in, each with what to work to, where to stop
 * short, how to check, and what goes wrong. The order and the advice are common practice, no source; every figure is the
 * design's, or an allowance stated in `cutting-allowances.ts`.
 */
export function operationsFor(design: Design, method: Method): readonly Operation[] {
  const say = (length: Mm): string => figure(length, design.bearing.settled.input.units)
  const all = { design, method, say }
  const surfaces = [finish(all), grain(), wax()]
  const toFinish = [...surfaces, runIn(all)]
  if (isOfPlates(design)) return [chooseBalls(all), ...plates({ design, method, say }), ...toFinish]
  if (isCaged(design)) {
    const job: CagedJob = { design, method, say }
    return [...caged(job), ...surfaces, fill(job), runIn(all)]
  }
  const job: Job = { design, method, say }
  return hasTracks(job)
    ? [cutRollers(job), chooseRollers(chooseBalls(job)), ...outerRing(job), ...innerRing(job), cheeks(job), ...toFinish]
    : [chooseBalls(job), ...outerRing(job), ...innerRing(job), ...toFinish]
}

/** Rings as for a full one, cut to a plug and to the play, and the cage. */
function caged(job: CagedJob): readonly Operation[] {
  const { split } = job.design.bearing.settled
  return [
    evenBalls(job, chooseBalls(job)),
    outerLayout(job),
    ...(split === 'outer-ring' ? [outerSplit()] : []),
    ...outerShape(job),
    holeForCage(outerInside(job)),
    plugGroove(job),
    ...innerGrooved(job, threeBalls(job, innerFit(job))),
    cageRing(job),
    pockets(job),
  ]
}

function outerRing(job: Job): readonly Operation[] {
  if (hasTracks(job))
    return [outerLayout(job), ...outerShape(job), outerTrack(job), tryRollers(outerFit(job)), outerSand(job)]
  const split = job.design.bearing.settled.split === 'outer-ring' ? [outerSplit()] : []
  return [
    outerLayout(job),
    ...split,
    ...outerShape(job),
    outerInside(job),
    outerGroove(job),
    outerFit(job),
    outerSand(job),
  ]
}

const innerRing = (job: Job): readonly Operation[] =>
  hasTracks(job)
    ? [innerBlank(job), innerTrack(job), closeOverRollers(innerFit(job)), innerSand(job)]
    : innerGrooved(job, innerFit(job))
