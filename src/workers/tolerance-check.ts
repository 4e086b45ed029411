import type { Refused } from '#shared/bearing/refusal.ts'
import type { CheckRefusal } from '#shared/questions/tolerance/check.ts'
import type { ToleranceCheckInput } from '#shared/questions/tolerance/input.ts'
import {
  BLOCKS_PER_LOOK,
  blocksNeeded,
  isRunStable,
  type ToleranceCheck,
} from '#shared/questions/tolerance/tolerance-check.ts'
import { ok, type Result } from '#shared/result.ts'
import { blockCount, joined, type Plan, type Tally } from '#shared/statistics/monte-carlo.ts'
import { unitsOfTrials } from './estimate.ts'
import type { RunPart } from './pool.ts'

/** Work in a part: some ten or twenty milliseconds. */
const UNITS_A_PART = 2_400_000

/**
 * A tolerance check, its trials spread over threads. How they are cut into parts plays no part in the answer: blocks have
 * random numbers of their own, and are added up in their order.
 */
export async function checkTolerance(
  input: ToleranceCheckInput,
  runPart: RunPart,
  atOnce: number,
): Promise<Result<ToleranceCheck, Refused<CheckRefusal>>> {
  const prepared = await runPart('prepareTrials', input)
  if (!prepared.ok) return prepared
  if (prepared.value.kind === 'answered') return ok(prepared.value.answer)
  const { plan, why } = prepared.value
  const size = Math.max(1, Math.floor(UNITS_A_PART / unitsOfTrials(input, plan.blockSize)))
  /** @param until how many blocks it takes in all, as far as is known */
  const run = (done: Tally, to: number, until: number): Promise<Tally> =>
    furtherBlocks({ plan, done, to, size, atOnce }, (first, count) =>
      runPart('runTrials', { input, plan, first, count }, unitsOfTrials(input, (until - first) * plan.blockSize)),
    )
  const all = blockCount(plan)
  const tally = input.trials === 'auto' ? await untilStill(input, plan, run) : await run(joined(plan, []), all, all)
  return ok(await runPart('concludeTrials', { input, plan, why, tallies: [tally] }, 0))
}

async function untilStill(
  input: ToleranceCheckInput,
  plan: Plan,
  run: (done: Tally, to: number, until: number) => Promise<Tally>,
): Promise<Tally> {
  const all = blockCount(plan)
  let done = joined(plan, [])
  let until = Math.min(BLOCKS_PER_LOOK, all)
  for (;;) {
    const to = Math.min(done.blocks.length + BLOCKS_PER_LOOK, all)
    done = await run(done, to, Math.max(to, until))
    const soFar = { input, plan, tallies: [done] }
    if (done.blocks.length >= all || isRunStable(soFar)) return done
    until = Math.min(all, Math.ceil(blocksNeeded(soFar)))
  }
}

interface Cut {
  readonly plan: Plan
  readonly done: Tally
  /** The block before which it ends. */
  readonly to: number
  /** Blocks in a part, and parts at the same time. */
  readonly size: number
  readonly atOnce: number
}

/**
 * Runs the blocks that follow, by parts, and adds each to what is done as soon as all before it are there: only those that
 * came too early are kept. When one fails, none is begun any more.
 */
async function furtherBlocks(
  { plan, done, to, size, atOnce }: Cut,
  run: (first: number, count: number) => Promise<Tally>,
): Promise<Tally> {
  const early = new Map<number, Tally>()
  let sum = done
  let next = done.blocks.length
  const add = (first: number, tally: Tally): void => {
    early.set(first, tally)
    for (let found = early.get(sum.blocks.length); found !== undefined; found = early.get(sum.blocks.length)) {
      early.delete(sum.blocks.length)
      sum = joined(plan, [sum, found])
    }
  }
  const lane = async (): Promise<void> => {
    while (next < to) {
      const first = next
      next += size
      try {
        add(first, await run(first, Math.min(size, to - first)))
      } catch (error) {
        next = to
        throw error
      }
    }
  }
  await Promise.all(Array.from({ length: atOnce }, lane))
  return sum
}
