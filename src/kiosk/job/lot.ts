import type { Design } from '#shared/bearing/arrangements.ts'
import type { Units } from '#shared/units/length.ts'
import { type Json, listOf, part } from '#src/kiosk/json.ts'
import { dimensionName } from '#src/words/dimension-names.ts'
import { exactFigure } from '#src/words/figure.ts'
import type { ChangedSize } from '#src/words/kiosk/balls.ts'
import type { Terms } from '#src/words/terms.ts'
import { designHere, readBearing } from './bearing.ts'
import { type Job, withBearing } from './job.ts'

/** The play for balls that nobody measured follows from how far such balls usually differ. */
const FOLLOWS_FROM_SCATTER = 'radialInternalClearance'

/**
 * The bearing for the balls that were chosen. What the year decided for balls that nobody had measured stays, stated: the
 * choice was made with it, and a ring may be cut to it.
 *
 * @param answer of the selection
 */
export function withLot(job: Job, answer: Json): Job {
  const diameters = listOf(answer['chosen']).map((ball) => String(part(ball)['diameter']))
  const kept = listOf(answer['assumed'])
    .map(part)
    .map(({ path, value, standing }) => ({ name: nameAt(String(path)), value: String(value), standing }))
    .filter(({ name, standing }) => standing === 'derived here' || name === FOLLOWS_FROM_SCATTER)
    .map(({ name, value }) => [name, value] as const)
  return withBearing(job, {
    ...Object.fromEntries(kept),
    'balls.diameters': diameters.join(','),
    'balls.standardDeviation': '',
  })
}

const nameAt = (path: string): string => path.replace(/^\/design\//, '').replaceAll('/', '.')

/** A bearing of the page, before the balls were measured. */
export interface BearingBefore {
  readonly design?: Design
  readonly units: Units
  readonly terms: Terms
}

/** What is cut with care, and cannot be put back. */
const CUT_ACROSS = /(?:grooveBottom|track|land|grooveCircle)Diameter$/

/** The sizes across that are other ones in the bearing for the chosen balls. */
export function sizesChanged({ design, units, terms }: BearingBefore, { bearing }: Job): readonly ChangedSize[] {
  const made = designHere(readBearing(bearing))
  if (design === undefined || !made?.ok) return []
  const sizesIn = ({ dimensions }: typeof design) =>
    dimensions
      .filter(({ key }) => CUT_ACROSS.test(key))
      .map(({ key, cutTo, value }) => ({ key, size: exactFigure(cutTo ?? value, units) }))
  const after = new Map<string, string>(sizesIn(made.value).map(({ key, size }) => [key, size]))
  return sizesIn(design).flatMap(({ key, size: from }) => {
    const to = after.get(key)
    return to === undefined || to === from ? [] : [{ name: dimensionName(key, terms), from, to }]
  })
}
