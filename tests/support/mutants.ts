/** A changed file: what was changed, and the whole text with the change in it. */
export interface Mutant {
  readonly file: string
  readonly line: number
  readonly was: string
  readonly is: string
  readonly text: string
}

/**
 * A share of all, the same for the same seed: every so-manieth of a list turned by the seed.
 *
 * @param count how many; 0 for all
 */
export function drawn<M extends Mutant>(all: readonly M[], count: number, seed: number): readonly M[] {
  if (count === 0 || count >= all.length) return all
  const step = all.length / count
  return Array.from({ length: count }, (_, i) => Math.floor((i + (seed % 7) / 7) * step)).flatMap((at) => all[at] ?? [])
}

/** Changes each in turn, prints those that are not noticed, and gives how many are. */
export async function countCaught<M extends Mutant>(
  mutants: readonly M[],
  isNoticed: (mutant: M) => Promise<boolean>,
): Promise<number> {
  let caught = 0
  for (const [index, mutant] of mutants.entries()) {
    if (await isNoticed(mutant)) caught += 1
    else process.stdout.write(`survives: ${mutant.file}:${mutant.line}: ${mutant.was} as ${mutant.is}\n`)
    if (process.stdout.isTTY) process.stdout.write(`${index + 1} of ${mutants.length}\r`)
  }
  return caught
}

/** How many changes of a part were caught, of those tried of all that there are. */
export interface Counted {
  readonly what: string
  readonly caught: number
  readonly tried: number
  readonly inAll: number
}

/** Says of each part how many changes were caught and how many survived, and fails the process where that is too few anywhere. */
export function conclude(parts: readonly Counted[], leastCaught: number): void {
  for (const { what, caught, tried, inAll } of parts) {
    const share = (100 * caught) / tried
    process.stdout.write(
      `${what}: ${share.toFixed(1)} % caught: ${caught} killed, ${tried - caught} survived of ${tried} sampled (${inAll} in all)\n`,
    )
  }
  process.exitCode = parts.every(({ caught, tried }) => caught >= leastCaught * tried) ? 0 : 1
}
