import { type Static, Type } from 'typebox'
import type { ShownLength } from '#src/api/length.ts'
import type { Source } from '#src/api/source.ts'
import type { Warning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'

const length = (description: string) =>
  Type.Unsafe<ShownLength>({ ...refTo<typeof ShownLength>('ShownLength'), description })

export const BoardOption = Type.Object(
  {
    kind: Type.Enum(['softwood-board', 'softwood-dimension', 'hardwood'], {
      type: 'string',
      description: 'The kind of lumber.',
    }),
    nominalThickness: Type.String({ description: 'What it is called.' }),
    dressedThickness: length('What it really is, planed and dry.'),
    layers: Type.Integer({ description: 'Boards glued face to face: more than 1 where none is thick enough.' }),
    planing: length('All that is planed off.'),
    nominalWidth: Type.Optional(Type.String({ description: 'Of softwood; hardwood comes in random widths.' })),
    dressedWidth: length('Of each board, at the least.'),
    across: Type.Integer({ description: 'Boards glued edge to edge: more than 1 where none is wide enough.' }),
    length: length('Along the grain, for all pieces of the ring.'),
    boards: Type.Optional(
      Type.Integer({ description: 'Of `boardLength`, for one ring. Absent where a board is shorter than the circle.' }),
    ),
  },
  { $id: 'BoardOption', description: 'A size of lumber that gives the blank.' },
)

export const SegmentCut = Type.Object(
  {
    count: Type.Integer({ description: 'Number of pieces in one layer.' }),
    miter: Type.Number({ description: 'Degrees between each cut and the square across the strip.' }),
    outerEdge: length('Long edge of a piece.'),
    innerEdge: length('Short edge of a piece.'),
    stripWidth: length('Of the strip that the pieces are cut from.'),
    stockLength: length('Of that strip for one layer, kerfs and end cuts with it.'),
  },
  { $id: 'SegmentCut', description: 'Pieces that, glued up, hold the whole rough ring.' },
)

export const RingTurning = Type.Object(
  {
    leastSpeed: Type.Number({ description: 'Turns a minute.' }),
    mostSpeed: Type.Number({
      description: 'Turns a minute: common practice, diameter in inches times speed 6000 to 9000.',
    }),
    rimSpeed: Type.Number({ description: 'Of the rim at the most, in m/s.' }),
    grip: Type.Optional(
      Type.Enum(['outside', 'hole', 'faceplate'], {
        type: 'string',
        description: 'How the chuck holds the blank. Absent where no chuck was named.',
      }),
    ),
    clearsBed: Type.Optional(Type.Boolean({ description: 'Absent where no swing was named.' })),
  },
  { $id: 'RingTurning', description: 'The blank on the lathe. Start at the lowest speed.' },
)

export const RingStock = Type.Object(
  {
    finishCircle: length('Finished outside: of the outer ring its outside, of the inner one its land.'),
    finishHole: length('Finished inside: of the outer ring its land, of the inner one its bore.'),
    roughCircle: length('To saw out.'),
    roughHole: Type.Optional(length('To saw out of the middle. Absent where it is bored or turned instead.')),
    thickness: length('Of each piece.'),
    pieces: Type.Integer({ description: 'Two where the ring comes apart in the middle, or where two are made alike.' }),
    boards: Type.Array(refTo<typeof BoardOption>('BoardOption'), { description: 'The least planing first.' }),
    bandSawBlades: Type.Array(Type.String(), { description: 'Widths in inches that turn the rough circle.' }),
    turning: refTo<typeof RingTurning>('RingTurning'),
    segments: Type.Optional(refTo<typeof SegmentCut>('SegmentCut')),
  },
  { $id: 'RingStock', description: 'A ring from the board to the lathe.' },
)

export const SplitScrews = Type.Object(
  {
    gauge: Type.Integer({ description: 'Gauge number of the screws.' }),
    count: Type.Integer({ description: 'Number of screws.' }),
    length: length('Head and all.'),
    shankDiameter: length('Of the shank.'),
    headDiameter: length('Of the flat head.'),
    besideThread: length('Wood each side of the thread, at the parting plane.'),
    besideHead: length('Wood beside the head, to the bore or the outside.'),
    besideHeadTowardsGroove: length('Wood beside the head, on the side of the groove.'),
    clearanceHole: Type.String({ description: 'Drill in inches, through the half with the heads.' }),
    pilotHole: Type.String({ description: 'Drill in inches, into the other half.' }),
    pilotDepth: length('Into the other half.'),
    countersinkDepth: length('For the head to lie flush.'),
    spacing: length('Straight from screw to screw.'),
  },
  { $id: 'SplitScrews', description: 'Wood screws that hold the halves together.' },
)

export const SplitDowels = Type.Object(
  {
    diameter: length('Of the dowel.'),
    length: length('Of the dowel.'),
    depthEachHalf: length('Of the hole in each half.'),
    besideDowel: length('Wood each side of it.'),
  },
  { $id: 'SplitDowels', description: 'Glued dowels, where the halves need not come apart again.' },
)

export const SplitRing = Type.Object(
  {
    ring: Type.Enum(['outerRing', 'innerRing'], { type: 'string', description: 'The ring that comes apart.' }),
    partingPlane: length('From a side of the ring: mid groove.'),
    screwCircle: length('Diameter of the circle on which screws or dowels stand.'),
    wall: length('Wood at the parting plane.'),
    screws: Type.Optional(refTo<typeof SplitScrews>('SplitScrews')),
    dowels: Type.Optional(refTo<typeof SplitDowels>('SplitDowels')),
  },
  {
    $id: 'SplitRing',
    description: 'The ring that comes apart. Without `screws` there is no wood for any: see the warnings.',
  },
)

const ringStock = (description: string) =>
  Type.Unsafe<Static<typeof RingStock>>({ ...refTo<typeof RingStock>('RingStock'), description })

const mandrel = Type.Optional(
  Type.Object(
    {
      bolt: Type.String({ description: 'The size of the bolt, by name.' }),
      diameter: length('Of the bolt.'),
      bush: length('What a bush fills all round: 0 where the bolt fits the bore.'),
    },
    {
      description: 'A bolt through the bore to turn the inner ring on. Absent where the bore is too small for one.',
    },
  ),
)

const finishes = Type.Array(
  Type.Object({
    name: Type.String({ description: 'The finish.' }),
    least: length('Thinnest film on one surface.'),
    most: length('Thickest film on one surface.'),
  }),
  { description: 'What comes on after turning, for `finishAllowance`: common practice, no source.' },
)

export const Stock = Type.Object(
  {
    outerRing: refTo<typeof RingStock>('RingStock'),
    innerRing: refTo<typeof RingStock>('RingStock'),
    cheeks: Type.Optional(ringStock('Of a `roller` arrangement.')),
    cage: Type.Optional(ringStock('Of a `caged` arrangement.')),
    nesting: Type.Object(
      {
        nests: Type.Boolean({ description: "Whether the inner ring comes out of the outer ring's core." }),
        coreDiameter: length('What is sawn out, less the kerf.'),
        shortBy: length('What the core lacks in diameter: below 0 so much is to spare.'),
        largestAllowance: Type.Optional(
          length('Turning allowance up to which the core is wide enough. Absent where not even none will do.'),
        ),
        landGapNeeded: length('Land gap at which it would be wide enough.'),
        thicknessNeeded: length("Of the outer ring's blank, for the core to give both halves."),
        message: Type.String({ description: 'The same in words.' }),
      },
      { description: 'One blank inside the other.' },
    ),
    entryHole: Type.Optional(
      Type.Object(
        {
          diameter: length('To bore.'),
          fromCentre: length('From the middle of the ring to that of the hole.'),
          cutsInnerBlank: Type.Boolean({ description: 'Where the inner ring nests: whether it would be cut into.' }),
        },
        { description: 'Where the saw enters to cut the hole of the outer ring.' },
      ),
    ),
    split: Type.Optional(refTo<typeof SplitRing>('SplitRing')),
    mandrel,
    finishes,
    warnings: Type.Array(refTo<typeof Warning>('Warning')),
    sources: Type.Array(refTo<typeof Source>('Source')),
  },
  { $id: 'Stock', description: 'Where the bearing comes from.' },
)
export type Stock = Static<typeof Stock>

export const PlateStock = Type.Object(
  {
    plates: ringStock('Of two, which are made alike.'),
    mandrel,
    finishes,
    sources: Type.Array(refTo<typeof Source>('Source')),
  },
  { $id: 'PlateStock', description: 'The same of two plates.' },
)
export type PlateStock = Static<typeof PlateStock>

export const STOCK_SCHEMAS = [
  BoardOption,
  SegmentCut,
  RingTurning,
  RingStock,
  SplitScrews,
  SplitDowels,
  SplitRing,
  Stock,
  PlateStock,
]
