import type { RingName } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { CheekScrews, Dowels, Screws, SplitRing } from '#shared/making/split-ring.ts'
import type { RingStock, Stock } from '#shared/making/stock.ts'
import type { Mm } from '#shared/units/length.ts'
import * as words from '#src/words/job-sheet/joints.ts'
import { circleOfDowels, circleOfScrews, SIZES } from '#src/words/job-sheet/sizes.ts'
import { type Operation, type RingJob, type Size, unitsOf } from './operation.ts'

/* Wood that is joined before it is turned: segments to a ring, halves to one. Common practice, no source, as all of the sheet. */

const PARTS = { outerRing: 'outer-ring', innerRing: 'inner-ring', cage: 'cage', plates: 'both' } as const
const GLUED = {
  outerRing: 'outer-glue',
  innerRing: 'inner-glue',
  cage: 'cage-glue',
  plates: 'plate-glue',
} as const satisfies Readonly<Record<WoodPart, string>>
const SPLIT = { outerRing: 'outer-split', innerRing: 'inner-split' } as const

/** A part of segments; nothing where it comes from the board whole. */
export function glueUp({ segments, blank, layers }: RingStock, part: WoodPart): readonly Operation[] {
  if (segments === undefined) return []
  const { count, pieces, miter, stripWidth, stockLength, outerEdge, innerEdge } = segments
  return [
    {
      ...words.glueUp({ part, count, pieces, layers, blanks: blank.pieces, miter, isRing: innerEdge > 0 }),
      id: GLUED[part],
      part: PARTS[part],
      sizes: [
        { name: SIZES.stripWidth, value: stripWidth },
        { name: SIZES.layer, value: segments.layer },
        { name: SIZES.stripLength, value: stockLength },
        { name: SIZES.longEdge, value: outerEdge },
        ...(innerEdge > 0 ? [{ name: SIZES.shortEdge, value: innerEdge }] : []),
      ],
      cautions: ['sawing', 'dust'],
      readings: [],
    },
  ]
}

/** The halves of a ring: screwed, on dowels where no screw fits, or held by nothing but the lathe. */
export function joint(job: RingJob, ring: RingName): readonly Operation[] {
  const { split } = job.stock
  if (split?.ring !== ring) return []
  return [
    {
      ...words.joint(ring, split, unitsOf(job)),
      id: SPLIT[ring],
      part: PARTS[ring],
      sizes: jointSizes(split),
      cautions: [...(split.dowels === undefined ? [] : (['sawing'] as const)), 'drilling', 'dust'],
      readings: [],
    },
  ]
}

function jointSizes({ screws, dowels, screwCircle }: SplitRing): readonly Size[] {
  if (screws !== undefined) return screwSizes(screws, screwCircle)
  return dowels === undefined ? [] : dowelSizes(dowels, screwCircle)
}

const dowelSizes = ({ count, diameter, length, depthEachHalf }: Dowels, circle: Mm): readonly Size[] => [
  { name: circleOfDowels(count), value: circle, source: 'trade' },
  { name: SIZES.dowel, value: diameter, source: 'trade' },
  { name: SIZES.dowelLength, value: length, source: 'trade' },
  { name: SIZES.dowelDepth, value: depthEachHalf, source: 'trade' },
]

/** Screws on their circle with their holes. */
export function screwSizes(screws: Screws | CheekScrews, circle: Mm): readonly Size[] {
  const deep = 'counterboreDepth' in screws ? screws.counterboreDepth : 0
  const head: Pick<Size, 'source'> = 'diameter' in screws.size ? { source: 'din-97' } : {}
  return [
    { name: circleOfScrews(screws.count), value: circle, source: 'trade' },
    { name: SIZES.screwLength, value: screws.length, source: 'trade' },
    { name: SIZES.clearanceHole, value: screws.clearance.diameter },
    { name: SIZES.pilotHole, value: screws.pilot.diameter },
    { name: SIZES.pilotDepth, value: screws.pilotDepth, source: 'trade' },
    ...('counterboreDepth' in screws && deep > 0
      ? [
          { name: SIZES.counterbore, value: screws.headDiameter, ...head },
          { name: SIZES.counterboreDepth, value: screws.counterboreDepth, source: 'trade' as const },
        ]
      : []),
    { name: SIZES.countersinkDepth, value: screws.countersinkDepth, ...head },
  ]
}

/** The ring whose halves no screw holds: with dowels alone, or with nothing, they come apart in use. */
export const looseRing = ({ split }: Pick<Stock, 'split'>): RingName | undefined =>
  split?.screws === undefined ? split?.ring : undefined
