import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS, type Dimension, isByCaliper } from '#shared/bearing/dimensions.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { finerThanRule } from '#src/words/by-caliper.ts'
import { shortName, TABLE_HEADINGS, type TabledKey } from '#src/words/drawing.ts'
import { fittedText, SMALL_TEXT_HEIGHT } from './annotations.ts'
import { type SizeText, tradeSign } from './size-text.ts'

type Block = { readonly heading: string; readonly rows: readonly TabledKey[] }

const OUTER_GROOVED: readonly TabledKey[] = [
  'outerRing.outsideDiameter',
  'outerRing.landDiameter',
  'outerRing.grooveBottomDiameter',
  'outerRing.grooveDepth',
  'outerRing.grooveRadius',
]
const INNER_GROOVED: readonly TabledKey[] = [
  'innerRing.boreDiameter',
  'innerRing.landDiameter',
  'innerRing.grooveBottomDiameter',
  'innerRing.grooveDepth',
  'innerRing.grooveRadius',
]

/** The sizes that a maker works to. */
const BLOCKS: Readonly<Record<ArrangementName, readonly Block[]>> = {
  radial: [
    { heading: TABLE_HEADINGS.outer, rows: [...OUTER_GROOVED, 'outerRing.wall'] },
    { heading: TABLE_HEADINGS.inner, rows: [...INNER_GROOVED, 'innerRing.wall'] },
    {
      heading: TABLE_HEADINGS.ringsAndChecks,
      rows: [
        'innerRing.width',
        'gauge.goDiameter',
        'gauge.noGoDiameter',
        'ballGap',
        'radialInternalClearance',
        'axialPlay',
      ],
    },
  ],
  caged: [
    { heading: TABLE_HEADINGS.outer, rows: [...OUTER_GROOVED, 'innerRing.width'] },
    { heading: TABLE_HEADINGS.innerAndPlug, rows: [...INNER_GROOVED, 'plugDiameter'] },
    {
      heading: TABLE_HEADINGS.cageAndPlay,
      rows: [
        'cage.outsideDiameter',
        'cage.boreDiameter',
        'cage.width',
        'cage.pocketDiameter',
        'cage.web',
        'radialInternalClearance',
      ],
    },
  ],
  roller: [
    {
      heading: TABLE_HEADINGS.outer,
      rows: [
        'outerRing.outsideDiameter',
        'outerRing.trackDiameter',
        'outerRing.wall',
        'outerRing.width',
        'cheeks.holeDiameter',
        'cheeks.thickness',
      ],
    },
    {
      heading: TABLE_HEADINGS.innerAndRollers,
      rows: ['innerRing.boreDiameter', 'innerRing.trackDiameter', 'innerRing.wall', 'innerRing.width', 'rollerLength'],
    },
    {
      heading: TABLE_HEADINGS.checks,
      rows: ['gauge.goDiameter', 'gauge.noGoDiameter', 'ballGap', 'radialInternalClearance', 'axialPlay'],
    },
  ],
  thrust: [
    {
      heading: TABLE_HEADINGS.eachPlate,
      rows: [
        'plates.outsideDiameter',
        'plates.boreDiameter',
        'plates.thickness',
        'plates.floor',
        'plates.wall',
        'plates.innerWall',
      ],
    },
    {
      heading: TABLE_HEADINGS.plateGroove,
      rows: ['pitchDiameter', 'plates.grooveDepth', 'plates.grooveRadius', 'plates.grooveWidth'],
    },
    {
      heading: TABLE_HEADINGS.platesAndChecks,
      rows: ['gauge.goDiameter', 'gauge.noGoDiameter', 'ballGap', 'plateGap', 'height'],
    },
  ],
}
const ROWS_A_BLOCK = 6

/** All that the table asks of a design. */
type Tabled = {
  readonly arrangement: ArrangementName
  readonly dimensions: readonly Dimension[]
  readonly resolved: ResolvedBalls
}

type Frame = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** Symbol, name, exact size, and the nearest figure of the rule, in three blocks side by side. */
export function sizeTable(
  { arrangement, dimensions, resolved }: Tabled,
  say: SizeText,
  { left, bottom, right, top }: Frame,
): readonly Shape[] {
  const blocks = BLOCKS[arrangement]
  const width = (right - left) / blocks.length
  const row = (top - bottom) / (ROWS_A_BLOCK + 1)
  const rule = (index: number): number => top - index * row
  const base = (index: number): number => rule(index + 1) + (row - SMALL_TEXT_HEIGHT) / 2
  const cellsOf = (key: TabledKey, x: number, y: number): readonly Shape[] => {
    const found = dimensions.find((dimension) => dimension.key === key)
    if (found === undefined) throw new RangeError(`key must be that of a dimension, got ${key}`)
    const cell = (words: string, from: number, to: number, anchor: 'start' | 'end'): Shape =>
      fittedText(words, at(x + width * (anchor === 'start' ? from : to), y), width * (to - from), anchor, {
        height: SMALL_TEXT_HEIGHT,
      })
    return [
      cell(DIMENSION_SYMBOLS[key], 0.025, 0.125, 'start'),
      cell(shortName(key, arrangement), 0.145, 0.46, 'start'),
      cell(`${say(found.value)}${tradeSign(key, { resolved })}`, 0.47, 0.7, 'end'),
      cell(isByCaliper(key, resolved) ? finerThanRule(DIMENSION_SYMBOLS[key]) : found.shop.text, 0.72, 0.97, 'end'),
    ]
  }
  const cells = blocks.flatMap(({ rows }, index) =>
    rows.flatMap((key, place) => cellsOf(key, left + index * width, base(place + 1))),
  )
  const headings = blocks.map(({ heading }, index) =>
    fittedText(heading, at(left + (index + 0.03) * width, base(0)), width * 0.66, 'start', {
      height: SMALL_TEXT_HEIGHT,
      bold: true,
    }),
  )
  const shop = blocks.map((_, index) =>
    fittedText(TABLE_HEADINGS.onTheRule, at(left + (index + 0.97) * width, base(0)), width * 0.25, 'end', {
      height: SMALL_TEXT_HEIGHT,
    }),
  )
  return [
    ...Array.from({ length: ROWS_A_BLOCK }, (_, index) =>
      line('hatch', at(left, rule(index + 1)), at(right, rule(index + 1))),
    ),
    ...[1, 2].map((index) => line('frame', at(left + index * width, bottom), at(left + index * width, top))),
    ...headings,
    ...shop,
    ...cells,
  ]
}
