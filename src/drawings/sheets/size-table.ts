import type { Traits } from '#shared/bearing/arrangement.ts'
import { DIMENSION_SYMBOLS, type Dimension, type DimensionKey } from '#shared/bearing/dimensions.ts'
import { at, type Shape } from '#src/drawings/model.ts'
import { line } from '#src/drawings/shapes.ts'
import { fittedText, SMALL_TEXT_HEIGHT } from './annotations.ts'
import type { Placed } from './face.ts'
import type { SizeText } from './size-text.ts'

type Row = readonly [DimensionKey, string]
type Block = { readonly heading: string; readonly rows: readonly Row[] }

const OUTER_GROOVED: readonly Row[] = [
  ['outerRing.outsideDiameter', 'outside'],
  ['outerRing.landDiameter', 'hole'],
  ['outerRing.grooveBottomDiameter', 'groove bottom'],
  ['outerRing.grooveDepth', 'groove depth'],
  ['outerRing.grooveRadius', 'groove radius'],
]
const INNER_GROOVED: readonly Row[] = [
  ['innerRing.boreDiameter', 'bore'],
  ['innerRing.landDiameter', 'outside'],
  ['innerRing.grooveBottomDiameter', 'groove bottom'],
  ['innerRing.grooveDepth', 'groove depth'],
  ['innerRing.grooveRadius', 'groove radius'],
]

/** What a maker works to, in short words: the table has no room for long ones. */
const BLOCKS: Readonly<Record<'groove' | 'caged' | 'track' | 'plates', readonly Block[]>> = {
  groove: [
    {
      heading: 'outer ring',
      rows: [...OUTER_GROOVED, ['outerRing.wall', 'wood behind it']],
    },
    {
      heading: 'inner ring',
      rows: [...INNER_GROOVED, ['innerRing.wall', 'wood behind it']],
    },
    {
      heading: 'both, and checks',
      rows: [
        ['innerRing.width', 'width of both'],
        ['gauge.goDiameter', 'go plug'],
        ['gauge.noGoDiameter', 'no-go plug'],
        ['ballGap', 'ball gap'],
        ['radialInternalClearance', 'play'],
        ['axialPlay', 'play along axis'],
      ],
    },
  ],
  caged: [
    {
      heading: 'outer ring',
      rows: [...OUTER_GROOVED, ['outerRing.width', 'width of both']],
    },
    {
      heading: 'inner ring, plug',
      rows: [...INNER_GROOVED, ['plugDiameter', 'plug']],
    },
    {
      heading: 'cage, and play',
      rows: [
        ['cage.outsideDiameter', 'outside'],
        ['cage.boreDiameter', 'bore'],
        ['cage.width', 'width'],
        ['cage.pocketDiameter', 'pockets'],
        ['cage.web', 'least web'],
        ['radialInternalClearance', 'play'],
      ],
    },
  ],
  track: [
    {
      heading: 'outer ring',
      rows: [
        ['outerRing.outsideDiameter', 'outside'],
        ['outerRing.trackDiameter', 'track'],
        ['outerRing.wall', 'wood behind it'],
        ['outerRing.width', 'width'],
        ['cheeks.holeDiameter', 'hole of the cheeks'],
        ['cheeks.thickness', 'their thickness'],
      ],
    },
    {
      heading: 'inner ring, rollers',
      rows: [
        ['innerRing.boreDiameter', 'bore'],
        ['innerRing.trackDiameter', 'track'],
        ['innerRing.wall', 'wood behind it'],
        ['innerRing.width', 'width'],
        ['rollerLength', 'roller, length'],
      ],
    },
    {
      heading: 'checks',
      rows: [
        ['gauge.goDiameter', 'go plug'],
        ['gauge.noGoDiameter', 'no-go plug'],
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
        ['plates.outsideDiameter', 'outside'],
        ['plates.boreDiameter', 'bore'],
        ['plates.thickness', 'thickness'],
        ['plates.floor', 'wood under it'],
        ['plates.wall', 'wood outside'],
        ['plates.innerWall', 'wood inside'],
      ],
    },
    {
      heading: 'its groove',
      rows: [
        ['pitchDiameter', 'circle'],
        ['plates.grooveDepth', 'depth'],
        ['plates.grooveRadius', 'radius'],
        ['plates.grooveWidth', 'width'],
      ],
    },
    {
      heading: 'both, and checks',
      rows: [
        ['gauge.goDiameter', 'go plug'],
        ['gauge.noGoDiameter', 'no-go plug'],
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
