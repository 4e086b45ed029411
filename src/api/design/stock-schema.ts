import { type Static, Type } from 'typebox'
import { shownLength as length } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'

export const BoardOption = Type.Object(
  {
    kind: Type.Enum(['softwood-board', 'softwood-dimension', 'hardwood'], {
      type: 'string',
      description: 'The kind of lumber.',
    }),
    nominalThickness: Type.String({ description: 'Nominal thickness, by name.' }),
    dressedThickness: length('Actual thickness, planed and dry.'),
    layers: Type.Integer({ description: 'Boards glued face to face: more than 1 where none is thick enough.' }),
    planing: length('Total thickness that you plane off.'),
    nominalWidth: Type.Optional(
      Type.String({ description: 'Nominal width of softwood. Hardwood comes in random widths.' }),
    ),
    dressedWidth: length('Smallest width of each board, or of each strip of a ring of segments.'),
    across: Type.Integer({ description: 'Boards glued edge to edge: more than 1 where none is wide enough.' }),
    length: length('Along the grain, for all that the ring needs: its pieces, layers and boards across.'),
    boards: Type.Optional(
      Type.Integer({
        description:
          'Number of boards of `boardLength` for one ring. Absent where a board is shorter than the circle, or than a segment.',
      }),
    ),
  },
  { $id: 'BoardOption', description: 'A size of lumber that gives the blank.' },
)

export const SegmentCut = Type.Object(
  {
    count: Type.Integer({ description: 'Number of pieces in one layer.' }),
    miter: shownNumber('Degrees between each cut and the square across the strip.'),
    outerEdge: length('Long edge of a piece.'),
    innerEdge: length('Short edge of a piece.'),
    pieces: Type.Integer({ description: 'Number of pieces in all, for the first of `boards`.' }),
    stripWidth: length('Width of the strip from which you cut the pieces.'),
    stockLength: length('Length of all strips of the ring, with kerfs and end cuts, for the first of `boards`.'),
  },
  { $id: 'SegmentCut', description: 'Pieces that, glued up, hold the whole rough ring.' },
)

export const RingTurning = Type.Object(
  {
    speed: Type.Object(
      { min: shownNumber('Speed to start at.'), max: shownNumber('Highest speed.') },
      { description: 'Turns a minute: common practice, diameter in inches times speed 6000 to 9000.' },
    ),
    rimSpeed: shownNumber('Rim speed at the highest speed, in m/s.'),
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
    roughCircle: length('Circle to saw out.'),
    roughHole: Type.Optional(length('Hole to saw out of the middle. Absent where you bore or turn it instead.')),
    thickness: length('Thickness of each piece.'),
    pieces: Type.Integer({ description: 'Two where the ring comes apart in the middle, or where two are made alike.' }),
    boards: Type.Array(refTo<typeof BoardOption>('BoardOption'), { description: 'The least planing first.' }),
    bandSawBlades: Type.Array(Type.String(), { description: 'Widths in inches that turn the rough circle.' }),
    turning: refTo<typeof RingTurning>('RingTurning'),
    segments: Type.Optional(refTo<typeof SegmentCut>('SegmentCut')),
  },
  { $id: 'RingStock', description: 'A ring from the board to the lathe.' },
)

const HOLES = {
  gauge: Type.Integer({ description: 'Gauge number of the screws.' }),
  count: Type.Integer({ description: 'Number of screws.' }),
  length: length('Head and all.'),
  shankDiameter: length('Diameter of the shank.'),
  headDiameter: length('Diameter of the flat head.'),
  clearanceHole: Type.String({ description: 'Drill in inches, through the piece with the heads.' }),
  pilotHole: Type.String({ description: 'Drill in inches, into the other piece.' }),
  pilotDepth: length('Into the other piece.'),
  countersinkDepth: length('Depth of the countersink for the head.'),
}

export const CheekScrews = Type.Object(
  { screwCircle: length('Diameter of the circle of the screws.'), ...HOLES },
  { $id: 'CheekScrews', description: 'Wood screws that hold each cheek to the outer ring.' },
)

export const SplitScrews = Type.Object(
  {
    ...HOLES,
    besideThread: length('Wood each side of the thread, at the parting plane.'),
    besideHead: length('Wood beside the head, to the bore or the outside.'),
    besideHeadTowardsGroove: length('Wood beside the head, on the side of the groove.'),
    counterboreDepth: length(
      'Depth of a hole as wide as the head, bored before the countersink. 0 where the head lies flush.',
    ),
    spacing: length('Straight from screw to screw.'),
  },
  { $id: 'SplitScrews', description: 'Wood screws that hold the halves together.' },
)

export const SplitDowels = Type.Object(
  {
    count: Type.Integer({ description: 'Number of dowels.' }),
    diameter: length('Diameter of the dowel.'),
    length: length('Length of the dowel.'),
    depthEachHalf: length('Depth of the hole in each half.'),
    besideDowel: length('Wood each side of it.'),
  },
  { $id: 'SplitDowels', description: 'Glued dowels, where the halves need not come apart again.' },
)

export const SplitRing = Type.Object(
  {
    ring: Type.Enum(['outerRing', 'innerRing'], { type: 'string', description: 'The ring that comes apart.' }),
    partingPlane: length('Distance of the parting plane from a side of the ring: the middle of the groove.'),
    screwCircle: length('Diameter of the circle of the screws or dowels.'),
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
      diameter: length('Diameter of the bolt.'),
      bush: length('Thickness of the bush all round. 0 where the bolt fits the bore.'),
    },
    {
      description: 'A bolt through the bore to turn the inner ring on. Absent where the bore is too small for one.',
    },
  ),
)

const finishes = Type.Array(
  Type.Object({
    name: Type.String({ description: 'The finish.' }),
    thickness: Type.Object(
      { min: length('Thinnest.'), max: length('Thickest.') },
      { description: 'Thickness of the film on one surface.' },
    ),
  }),
  { description: 'Films that a finish leaves after turning, for `finishAllowance`: common practice, no source.' },
)

export const Stock = Type.Object(
  {
    outerRing: refTo<typeof RingStock>('RingStock'),
    innerRing: refTo<typeof RingStock>('RingStock'),
    cheeks: Type.Optional(ringStock('Cheeks of a `roller` bearing.')),
    cage: Type.Optional(ringStock('Cage of a `caged` bearing.')),
    nesting: Type.Object(
      {
        nests: Type.Boolean({ description: "Whether the inner ring comes out of the outer ring's core." }),
        coreDiameter: length('Diameter of the core that you saw out, less the kerf.'),
        shortBy: length('How much the core is too small in diameter. Below 0 it has room to spare.'),
        largestAllowance: Type.Optional(
          length('Turning allowance up to which the core is wide enough. Absent where not even none will do.'),
        ),
        landGapNeeded: length('Land gap at which it would be wide enough.'),
        thicknessNeeded: length('Thickness of the outer blank at which the core gives both halves.'),
        message: Type.String({ description: 'Summary in words.' }),
      },
      { description: 'One blank inside the other.' },
    ),
    entryHole: Type.Optional(
      Type.Object(
        {
          diameter: length('Diameter to bore.'),
          fromCentre: length('Distance from the middle of the ring to the middle of the hole.'),
          cutsInnerBlank: Type.Boolean({ description: 'Whether the hole cuts into a nested inner blank.' }),
        },
        { description: 'Hole through which the saw enters to cut the hole of the outer ring.' },
      ),
    ),
    split: Type.Optional(refTo<typeof SplitRing>('SplitRing')),
    cheekScrews: Type.Optional(refTo<typeof CheekScrews>('CheekScrews')),
    mandrel,
    finishes,
  },
  { $id: 'Stock', description: 'Blanks, boards, screws and work holding for the bearing.' },
)
export type Stock = Static<typeof Stock>

export const PlateStock = Type.Object(
  {
    plates: ringStock('Two plates, made alike.'),
    mandrel,
    finishes,
  },
  { $id: 'PlateStock', description: 'Blanks, boards and work holding for two plates.' },
)
export type PlateStock = Static<typeof PlateStock>

export const STOCK_SCHEMAS = [
  BoardOption,
  SegmentCut,
  RingTurning,
  RingStock,
  CheekScrews,
  SplitScrews,
  SplitDowels,
  SplitRing,
  Stock,
  PlateStock,
]
