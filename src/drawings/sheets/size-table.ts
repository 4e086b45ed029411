import { DIMENSION_SYMBOLS, type Dimension, type DimensionKey } from '#shared/bearing/dimensions.ts'
import type { Traits } from '#shared/bearing/traits.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { fittedText, SMALL_TEXT_HEIGHT } from './annotations.ts'
import type { Placed } from './face.ts'
import type { SizeText } from './size-text.ts'

type Row = readonly [DimensionKey, string]
type Block = { readonly heading: string; readonly rows: readonly Row[] }

const OUTER_GROOVED: readonly Row[] = [
  ['outsideDiameter', 'outside'],
  ['outerLandDiameter', 'hole'],
  ['outerGrooveBottomDiameter', 'groove bottom'],
  ['outerGrooveDepth', 'groove depth'],
  ['outerGrooveRadius', 'groove radius'],
]
const INNER_GROOVED: readonly Row[] = [
  ['boreDiameter', 'bore'],
  ['innerLandDiameter', 'outside'],
  ['innerGrooveBottomDiameter', 'groove bottom'],
  ['innerGrooveDepth', 'groove depth'],
  ['innerGrooveRadius', 'groove radius'],
]

/** What a maker works to, in short words: the table has no room for long ones. */
const BLOCKS: Readonly<Record<'groove' | 'caged' | 'track' | 'plates', readonly Block[]>> = {
  groove: [
    {
      heading: 'outer ring',
      rows: [...OUTER_GROOVED, ['outerWall', 'wood behind it']],
    },
    {
      heading: 'inner ring',
      rows: [...INNER_GROOVED, ['innerWall', 'wood behind it']],
    },
    {
      heading: 'both, and checks',
      rows: [
        ['innerWidth', 'width of both'],
        ['gaugeGoDiameter', 'go plug'],
        ['gaugeNoGoDiameter', 'no-go plug'],
        ['ballGap', 'ball gap'],
        ['radialInternalClearance', 'play'],
        ['axialPlay', 'play along axis'],
      ],
    },
  ],
  caged: [
    {
      heading: 'outer ring',
      rows: [...OUTER_GROOVED, ['outerWidth', 'width of both']],
    },
    {
      heading: 'inner ring, plug',
      rows: [...INNER_GROOVED, ['gaugeNominalDiameter', 'plug']],
    },
    {
      heading: 'cage, and play',
      rows: [
        ['cageOutsideDiameter', 'outside'],
        ['cageBoreDiameter', 'bore'],
        ['cageWidth', 'width'],
        ['pocketDiameter', 'pockets'],
        ['cageWeb', 'least web'],
        ['radialInternalClearance', 'play'],
      ],
    },
  ],
  track: [
    {
      heading: 'outer ring',
      rows: [
        ['outsideDiameter', 'outside'],
        ['outerTrackDiameter', 'track'],
        ['outerWall', 'wood behind it'],
        ['outerWidth', 'width'],
        ['cheekHoleDiameter', 'hole of the cheeks'],
        ['cheekThickness', 'their thickness'],
      ],
    },
    {
      heading: 'inner ring, rollers',
      rows: [
        ['boreDiameter', 'bore'],
        ['innerTrackDiameter', 'track'],
        ['innerWall', 'wood behind it'],
        ['innerWidth', 'width'],
        ['rollerLength', 'roller, length'],
      ],
    },
    {
      heading: 'checks',
      rows: [
        ['gaugeGoDiameter', 'go plug'],
        ['gaugeNoGoDiameter', 'no-go plug'],
        ['ballGap', 'roller gap'],
        ['radialInternalClearance', 'play'],
        ['axialPlay', 'play along axis'],
      ],
    },
  ],
  plates: [
    {
      heading: 'each of two plates',
      rows: [
        ['plateOutsideDiameter', 'outside'],
        ['plateBoreDiameter', 'bore'],
        ['plateThickness', 'thickness'],
        ['plateFloor', 'wood under it'],
        ['plateWall', 'wood outside'],
        ['plateInnerWall', 'wood inside'],
      ],
    },
    {
      heading: 'its groove',
      rows: [
        ['pitchDiameter', 'circle'],
        ['plateGrooveDepth', 'depth'],
        ['plateGrooveRadius', 'radius'],
        ['plateGrooveWidth', 'width'],
      ],
    },
    {
      heading: 'both, and checks',
      rows: [
        ['gaugeGoDiameter', 'go plug'],
        ['gaugeNoGoDiameter', 'no-go plug'],
        ['ballGap', 'ball gap'],
        ['plateGap', 'between plates'],
        ['height', 'height of all'],
      ],
    },
  ],
}

const blocksFor = ({ members, raceway, ballSet }: Traits): readonly Block[] =>
  BLOCKS[members === 'plates' ? 'plates' : ballSet === 'caged' ? 'caged' : raceway]
const ROWS_A_BLOCK = 6

/** All that the table asks of a design. */
type Tabled = { readonly ring: Pick<Placed, 'settled'>; readonly dimensions: readonly Dimension[] }

type Frame = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }

/** Symbol, name, exact size, and the nearest figure of the rule, in three blocks side by side. */
export function sizeTable(
  { ring, dimensions }: Tabled,
  say: SizeText,
  { left, bottom, right, top }: Frame,
): readonly Shape[] {
  const blocks = blocksFor(ring.settled.traits)
  const width = (right - left) / blocks.length
  const row = (top - bottom) / (ROWS_A_BLOCK + 1)
  const rule = (index: number): number => top - index * row
  const base = (index: number): number => rule(index + 1) + (row - SMALL_TEXT_HEIGHT) / 2
  const cellsOf = (key: DimensionKey, name: string, x: number, y: number): readonly Shape[] => {
    const found = dimensions.find((dimension) => dimension.key === key)
    if (found === undefined) return []
    const cell = (words: string, from: number, to: number, anchor: 'start' | 'end'): Shape =>
      fittedText(words, at(x + width * (anchor === 'start' ? from : to), y), width * (to - from), anchor, {
        height: SMALL_TEXT_HEIGHT,
      })
    return [
      cell(DIMENSION_SYMBOLS[key], 0.03, 0.12, 'start'),
      cell(name, 0.13, 0.46, 'start'),
      cell(say(found.value), 0.47, 0.7, 'end'),
      cell(found.shop.text, 0.72, 0.97, 'end'),
    ]
  }
  const cells = blocks.flatMap(({ rows }, index) =>
    rows.flatMap(([key, name], place) => cellsOf(key, name, left + index * width, base(place + 1))),
  )
  const headings = blocks.map(({ heading }, index) =>
    fittedText(heading, at(left + (index + 0.03) * width, base(0)), width * 0.66, 'start', {
      height: SMALL_TEXT_HEIGHT,
      bold: true,
    }),
  )
  const shop = blocks.map((_, index) =>
    fittedText('rule', at(left + (index + 0.97) * width, base(0)), width * 0.25, 'end', { height: SMALL_TEXT_HEIGHT }),
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
