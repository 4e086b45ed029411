import {
  type Design,
  isCaged,
  isOfPlates,
  isOfRollers,
  type RadialDesign,
  type RollerDesign,
} from '#shared/bearing/arrangements.ts'
import type { Method } from '#shared/making/method.ts'
import { chooseBalls } from './ball-operations.ts'
import { type CagedJob, cageRing, fill, plugGroove, pockets } from './cage-operations.ts'
import { finish, grain, runIn, wax } from './finish-operations.ts'
import { innerGrooved } from './inner-operations.ts'
import type { Job, Operation, RingJob } from './operation.ts'
import {
  holeForCage,
  outerFit,
  outerGroove,
  outerInside,
  outerLayout,
  outerSand,
  outerShape,
  outerSplit,
} from './outer-operations.ts'
import { plates } from './plate-operations.ts'
import { cheeks, cutRollers, innerTracked, outerTrack } from './roller-operations.ts'

/**
 * The operations of a bearing in order, from choosing balls to running in, each with what to work to, where to stop
 * short, how to check, and what goes wrong. The order and the advice are common practice, no source; every figure is the
 * design's, or an allowance stated in `cutting-allowances.ts`. The words are in `src/words/job-sheet/`.
 */
export function operationsFor(design: Design, method: Method): readonly Operation[] {
  const all = { design, method }
  const surfaces = [finish(all), grain(all), wax(all)]
  if (isOfPlates(design)) return [chooseBalls(all), ...plates({ design, method }), ...surfaces, runIn(all)]
  if (isCaged(design)) {
    const job = { design, method }
    return [chooseBalls(all), ...caged(job), ...surfaces, fill(job), runIn(all)]
  }
  const rings = isOfRollers(design)
    ? [cutRollers({ design, method }), chooseBalls(all), ...tracked({ design, method })]
    : [chooseBalls(all), ...grooved({ design, method })]
  return [...rings, ...surfaces, runIn(all)]
}

const halved = ({ design }: RingJob): readonly Operation[] =>
  design.bearing.resolved.split === 'outer-ring' ? [outerSplit()] : []

/** Rings that are cut to the gap of a full ring of balls. */
const grooved = (job: Job<RadialDesign>): readonly Operation[] => [
  outerLayout(job),
  ...halved(job),
  ...outerShape(job),
  outerInside(job),
  outerGroove(job),
  outerFit(job),
  outerSand(job),
  ...innerGrooved(job, 'radial'),
]

/** Rings with tracks, and the cheeks that keep the rollers in. */
const tracked = (job: Job<RollerDesign>): readonly Operation[] => [
  outerLayout(job),
  ...outerShape(job),
  outerTrack(job),
  outerFit(job),
  outerSand(job),
  ...innerTracked(job),
  cheeks(job),
]

/** Rings that are cut to a plug and to the play, and the cage. */
const caged = (job: CagedJob): readonly Operation[] => [
  outerLayout(job),
  ...halved(job),
  ...outerShape(job),
  holeForCage(job),
  plugGroove(job),
  ...innerGrooved(job, 'caged'),
  cageRing(job),
  pockets(job),
]
