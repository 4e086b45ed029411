import type { Split } from '#shared/bearing/fields.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import type { Mounting } from './mounting.ts'

/** What keeps a finished bearing shut for good: the glue between the halves of a ring, or the glue that holds its seats. */
export type Shut = 'by-its-halves' | 'by-its-seats'

/**
 * Whether glue keeps a finished bearing shut, and where; undefined where it can be opened again.
 *
 * A ring of two halves opens along its seam, unless its seat holds both halves. Of rings in one piece the inner one is pushed
 * aside between the open halves of the cage, unless both seats hold. Rollers come out past a cheek, and plates lie on one another.
 *
 * @param loose the ring whose halves nothing but glue will hold
 */
export function shutBy(
  { input: { arrangement }, split = 'none' }: Pick<ResolvedBalls, 'input'> & { readonly split?: Split },
  loose: RingName | undefined,
  mounting: Mounting | undefined,
): Shut | undefined {
  if (loose !== undefined) return 'by-its-halves'
  if (arrangement === 'roller' || arrangement === 'thrust' || mounting === undefined) return undefined
  const isGlued = { shaft: mounting.shaft.hold === 'glued', housing: mounting.housing?.hold === 'glued' }
  const holds =
    split === 'inner-ring' ? isGlued.shaft : split === 'outer-ring' ? isGlued.housing : isGlued.shaft && isGlued.housing
  return holds ? 'by-its-seats' : undefined
}
