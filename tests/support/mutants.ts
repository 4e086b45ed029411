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
export function drawn(all: readonly Mutant[], count: number, seed: number): readonly Mutant[] {
  if (count === 0 || count >= all.length) return all
  const step = all.length / count
  return Array.from({ length: count }, (_, i) => Math.floor((i + (seed % 7) / 7) * step)).flatMap((at) => all[at] ?? [])
}

/** Changes each in turn, prints those that are not noticed, and gives how many are. */
export async function countCaught(
  mutants: readonly Mutant[],
  isNoticed: (mutant: Mutant) => Promise<boolean>,
): Promise<number> {
  let caught = 0
  for (const [index, mutant] of mutants.entries()) {
    if (await isNoticed(mutant)) caught += 1
    else process.stdout.write(`survives: ${mutant.file}:${mutant.line}: ${mutant.was} as ${mutant.is}\n`)
    if (process.stdout.isTTY) process.stdout.write(`${index + 1} of ${mutants.length}\r`)
  }
  return caught
}

/** Says how many were caught, and fails the process where that is too few. */
export function conclude(what: string, caught: number, tried: number, inAll: number, leastCaught: number): void {
  const share = caught / tried
  process.stdout.write(
    `${what}: ${caught} of ${tried} changes were caught: ${(100 * share).toFixed(1)} % (of ${inAll} in all)\n`,
  )
  process.exitCode = share >= leastCaught ? 0 : 1
}
