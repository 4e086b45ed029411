import {
  type Design,
  isCaged,
  isOfPlates,
  isOfRollers,
  type RadialDesign,
  type RollerDesign,
} from '#shared/bearing/arrangements.ts'
import { resolveMaking } from '#shared/making/defaults.ts'
import { shutBy } from '#shared/making/opening.ts'
import { plateStockOf, stockOf } from '#shared/making/stock.ts'
import { mountingIn, plateMountingIn } from '#src/api/design/mounting.ts'
import { chooseBalls } from './ball-operations.ts'
import { type CagedJob, cageRing, fill, plugGroove, pockets } from './cage-operations.ts'
import { finish, grain, runIn, wax } from './finish-operations.ts'
import { innerGrooved } from './inner-operations.ts'
import { glueUp, joint, looseRing } from './joint-operations.ts'
import { isHoldChosen, mount, mountPlates } from './mount-operations.ts'
import { type AnyJob, isRollingWood, type Job, type Operation, type RingJob } from './operation.ts'
import {
  holeForCage,
  outerFit,
  outerGroove,
  outerInside,
  outerLayout,
  outerSand,
  outerShape,
} from './outer-operations.ts'
import { plates } from './plate-operations.ts'
import { cheeks, cutRollers, innerTracked, outerTrack } from './roller-operations.ts'
import { care, chooseWood, makeGauges, type PartStocks } from './workshop-operations.ts'

/**
 * The operations of a bearing in order, from choosing balls to running in, each with what to work to, where to stop
 * short, how to check, and what goes wrong. The order and the advice are common practice, no source; every figure is the
 * design's or its stock's. The words are in `src/words/job-sheet/`.
 */
export function operationsFor(design: Design): readonly Operation[] {
  const { units, making = {} } = design.bearing.resolved.input
  const { method } = resolveMaking(making, units)
  const mounting = isOfPlates(design) ? undefined : mountingIn(design.bearing)
  const all = { design, method, mounting, stock: undefined }
  const surfaces = [finish(all), grain(all), wax(all)]
  if (isOfPlates(design)) {
    const job = { design, method, stock: plateStockOf(design.bearing) }
    const seats = mountPlates(job, plateMountingIn(design.bearing))
    return [...first(all, job.stock), ...plates(job), ...surfaces, runIn(all), ...seats, care(all)]
  }
  const stock = stockOf(design.bearing)
  const loose = looseRing(stock)
  const shut = shutBy(design.bearing.resolved, loose, mounting)
  const closing = shut && { shut, isChosen: shut === 'by-its-halves' || isHoldChosen(design) }
  const last = [runIn(all, loose), ...mount(all, loose, shut), care(all, closing)]
  if (isCaged(design)) {
    const job = { design, method, mounting, stock }
    return [...first(all, stock), ...caged(job), ...surfaces, fill(job), ...last]
  }
  const rings = isOfRollers(design)
    ? [...first(all, stock, [cutRollers({ design, method, stock })]), ...tracked({ design, method, mounting, stock })]
    : [...first(all, stock), ...grooved({ design, method, mounting, stock })]
  return [...rings, ...surfaces, ...last]
}

/**
 * Balls before wood, for the wood is cut to the balls; but wood that rolls rests before anybody cuts or measures it, as all wood
 * does. The gauges come before the first of what they check.
 *
 * @param cut what makes rollers from rods
 */
function first(job: AnyJob<Design>, stock: PartStocks, cut: readonly Operation[] = []): readonly Operation[] {
  const wood = chooseWood(job, stock)
  const rolling = [...cut, chooseBalls(job)]
  return [...(isRollingWood(job) ? [wood, ...rolling] : [...rolling, wood]), makeGauges(job)]
}

/** From the board to an outer ring with a hole. */
const outerBlank = (job: RingJob): readonly Operation[] => [
  ...glueUp(job.stock.outerRing, 'outerRing'),
  outerLayout(job),
  ...joint(job, 'outerRing'),
  ...outerShape(job),
]

/** Rings that are cut to the gap of a full ring of balls. */
const grooved = (job: Job<RadialDesign>): readonly Operation[] => [
  ...outerBlank(job),
  outerInside(job),
  outerGroove(job),
  outerFit(job),
  outerSand(job),
  ...innerGrooved(job, 'radial'),
]

/** Rings with tracks, and the cheeks that keep the rollers in. */
const tracked = (job: Job<RollerDesign>): readonly Operation[] => [
  ...outerBlank(job),
  outerTrack(job),
  outerFit(job),
  outerSand(job),
  ...innerTracked(job),
  ...cheeks(job),
]

/** Rings that are cut to a plug and to the play, and the cage. */
const caged = (job: CagedJob): readonly Operation[] => [
  ...outerBlank(job),
  holeForCage(job),
  plugGroove(job),
  ...innerGrooved(job, 'caged'),
  ...cageRing(job),
  pockets(job),
]
