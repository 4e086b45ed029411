import { type Static, Type } from 'typebox'
import {
  DRIVES,
  HOLDS,
  type Hold,
  PIN_HOLDS,
  type PinHold,
  PLATE_HOLDS,
  type PlateHold,
  TURNING_RINGS,
} from '#shared/bearing/mounting-input.ts'
import { shownLength as length } from '#src/api/length.ts'
import { shownShare as chance, shownNumber } from '#src/api/number.ts'
import { choiceOf, described, flag, integer, named, object, ref, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'

const BoardOption = named('BoardOption', 'A size of lumber that gives the blank.', {
  kind: choiceOf('The kind of lumber.', ['softwood-board', 'softwood-dimension', 'hardwood', 'on-hand']),
  nominalThickness: text('Nominal thickness, by name.'),
  dressedThickness: length('Thickness, planed and dry. Of a board sawn in millimetres 5 mm less than as it is sold.'),
  layers: integer('Boards glued face to face: more than 1 where none is thick enough.'),
  planing: length('Total thickness that you plane off.'),
  nominalWidth: Type.Optional(text('Nominal width of softwood. Hardwood comes in random widths.')),
  dressedWidth: length('Smallest width of each board, or of each strip of a ring of segments.'),
  across: integer('Boards glued edge to edge: more than 1 where none is wide enough.'),
  length: length('Along the grain, for all that the ring needs: its pieces, layers and boards across.'),
  boards: Type.Optional(
    integer(
      'Number of boards of `boardLength` for one ring. Absent where a board is shorter than the circle, or than a segment.',
    ),
  ),
})

const SegmentCut = named('SegmentCut', 'Pieces that, glued up, hold the whole rough ring.', {
  count: integer('Number of pieces in one layer.'),
  miter: shownNumber('Degrees between each cut and the square across the strip.'),
  outerEdge: length('Long edge of a piece.'),
  innerEdge: length('Short edge of a piece.'),
  pieces: integer('Number of pieces in all, for the first of `boards`.'),
  stripWidth: length('Width of the strip from which you cut the pieces.'),
  stockLength: length('Length of all strips of the ring, with kerfs and end cuts, for the first of `boards`.'),
})

const RingTurning = named('RingTurning', 'The blank on the lathe. Start at the lowest speed.', {
  speed: object('Turns a minute: common practice, diameter in inches times speed 6000 to 9000.', {
    min: shownNumber('Speed to start at.'),
    max: shownNumber('Highest speed.'),
  }),
  rimSpeed: shownNumber('Rim speed at the highest speed, in m/s.'),
  grip: Type.Optional(
    choiceOf('How the chuck holds the blank. Absent where no chuck was named.', ['outside', 'hole', 'faceplate']),
  ),
  clearsBed: Type.Optional(flag('Absent where no swing was named.')),
})

export const RingStock = named('RingStock', 'A ring from the board to the lathe.', {
  finishCircle: length('Finished outside: of the outer ring its outside, of the inner one its land.'),
  finishHole: length('Finished inside: of the outer ring its land, of the inner one its bore.'),
  roughCircle: length('Circle to saw out.'),
  roughHole: Type.Optional(length('Hole to saw out of the middle. Absent where you bore or turn it instead.')),
  thickness: length('Thickness of each piece.'),
  pieces: integer('Two where the ring comes apart in the middle, or where two are made alike.'),
  boards: Type.Array(ref(BoardOption), { description: 'The least planing first.' }),
  bandSawBlades: Type.Array(Type.String(), { description: 'Widths in inches that turn the rough circle.' }),
  turning: ref(RingTurning),
  segments: Type.Optional(ref(SegmentCut)),
})

const HOLES = {
  size: text('The size of the screws as they are sold: `No. 8` or `4 mm`.'),
  gauge: Type.Optional(integer('Gauge number of screws in inches.')),
  metricDiameter: Type.Optional(shownNumber('Diameter of metric screws in millimetres.')),
  count: integer('Number of screws.'),
  length: length('Head and all.'),
  shankDiameter: length('Diameter of the shank.'),
  headDiameter: length('Diameter of the flat head.'),
  clearanceHole: text('Drill through the piece with the heads, by name.'),
  clearanceDiameter: length('Its diameter.'),
  pilotHole: text('Drill into the other piece, by name.'),
  pilotDiameter: length('Its diameter.'),
  pilotDepth: length('Into the other piece.'),
  countersinkDepth: length('Depth of the countersink for the head.'),
}

export const CheekScrews = named('CheekScrews', 'Wood screws that hold each cheek to the outer ring.', {
  screwCircle: length('Diameter of the circle of the screws.'),
  ...HOLES,
})

const SplitScrews = named('SplitScrews', 'Wood screws that hold the halves together.', {
  ...HOLES,
  besideThread: length('Wood each side of the thread, at the parting plane.'),
  besideHead: length('Wood beside the head, to the bore or the outside.'),
  besideHeadTowardsGroove: length('Wood beside the head, on the side of the groove.'),
  counterboreDepth: length(
    'Depth of a hole as wide as the head, bored before the countersink. 0 where the head lies flush.',
  ),
  spacing: length('Straight from screw to screw.'),
})

const SplitDowels = named('SplitDowels', 'Glued dowels, where the halves need not come apart again.', {
  count: integer('Number of dowels.'),
  diameter: length('Diameter of the dowel.'),
  length: length('Length of the dowel.'),
  depthEachHalf: length('Depth of the hole in each half.'),
  besideDowel: length('Wood each side of it.'),
})

export const SplitRing = named(
  'SplitRing',
  'The ring that comes apart. Without `screws` there is no wood for any: see the warnings.',
  {
    ring: choiceOf('The ring that comes apart.', ['outerRing', 'innerRing']),
    partingPlane: length('Distance of the parting plane from a side of the ring: the middle of the groove.'),
    screwCircle: length('Diameter of the circle of the screws or dowels.'),
    wall: length('Wood at the parting plane.'),
    screws: Type.Optional(ref(SplitScrews)),
    dowels: Type.Optional(ref(SplitDowels)),
  },
)

const ringStock = (description: string) => described<typeof RingStock>('RingStock', description)

export const MandrelBolt = object(
  'A bolt through the bore to turn the inner ring on. Absent where the bore is too small for one.',
  {
    bolt: text('The size of the bolt, by name.'),
    diameter: length('Diameter of the bolt.'),
    bush: length('Thickness of the bush all round. 0 where the bolt fits the bore.'),
  },
)
const mandrel = Type.Optional(MandrelBolt)

const finishes = Type.Array(
  Type.Object({
    name: text('The finish.'),
    thickness: object('Thickness of the film on one surface.', { min: length('Thinnest.'), max: length('Thickest.') }),
  }),
  { description: 'Films that a finish leaves after turning, for `finishAllowance`: common practice, no source.' },
)

export const Nesting = object(
  'One blank inside the other. Absent where the outer ring is of segments and has no core.',
  {
    nests: flag("Whether the inner ring comes out of the outer ring's core."),
    coreDiameter: length('Diameter of the core that you saw out, less the kerf.'),
    shortBy: length('How much the core is too small in diameter. Below 0 it has room to spare.'),
    largestAllowance: Type.Optional(
      length('Turning allowance up to which the core is wide enough. Absent where not even none will do.'),
    ),
    landGapNeeded: length('Land gap at which it would be wide enough.'),
    thicknessNeeded: length('Thickness of the outer blank at which the core gives both halves.'),
    message: text('Summary in words.'),
  },
)

export const EntryHole = object('Hole through which the saw enters to cut the hole of the outer ring.', {
  diameter: length('Diameter to bore.'),
  fromCentre: length('Distance from the middle of the ring to the middle of the hole.'),
  cutsInnerBlank: flag('Whether the hole cuts into a nested inner blank.'),
})

const season = Type.Optional(
  object('What the season of `making.climate` does to the bearing. Absent where no climate is stated.', {
    runsAllYear: flag('Whether it runs all year: 9 of 10 such bearings do.'),
    probability: object('Chances, as in /v1/seasonal-fit.', {
      goesTogether: chance('Chance that the last ball goes in on the day of making. 1 where a cage holds the balls.'),
      runsAllYear: chance('Chance that it goes together and runs today and in every state of the year.'),
      knocks: chance('Chance that the gap is above `maxBallGap` at some time. The bearing still runs.'),
    }),
    message: text('Summary in words.'),
  }),
)

const play = object('How loose the seat is, in diameter. Below 0 it is tight.', {
  made: length('Play as it is cut.'),
  min: length('Least play through the year; without a climate from 35 to 60 % relative humidity.'),
  max: length('Greatest play through the year.'),
})

const SeatHolder = named('SeatHolder', 'What holds a seat beside the fit itself.', {
  kind: choiceOf('What it is.', ['pin', 'key', 'screws', 'retaining-ring']),
  count: integer('How many of them.'),
  diameter: length('Diameter of a pin or a shank, width of a key, or hole of a retaining ring.'),
  circle: Type.Optional(length('Circle on which they stand. Absent of what goes through the shaft.')),
  length: length('Along the pin or the screw; along the axis of a key or a ring.'),
})

const SEAT = {
  hold: choiceOf<Hold>('How it is held.', HOLDS),
  seatDiameter: length('The hole to cut.'),
  play,
  holder: Type.Optional(ref(SeatHolder)),
  leastWood: length('The least wood round the seat that this hold wants.'),
  message: text('What to do, in words.'),
}

export const ShaftSeat = named('ShaftSeat', 'The bore on its shaft.', {
  shaftDiameter: length('Diameter of the shaft.'),
  boreNeeded: length('The bore that this shaft and this hold ask for.'),
  wood: length('Wood between the bore and the groove.'),
  ...SEAT,
})

export const HousingSeat = named('HousingSeat', 'The outside in the board of its housing.', {
  thickness: length('Thickness of the board.'),
  seatDepth: length('Depth of the seat.'),
  shoulderHole: length('The hole behind the seat, which leaves a shoulder for the wall of the ring.'),
  leastWidth: length('The smallest board across that leaves that wood.'),
  ...SEAT,
})

export const DriveSeat = named('DriveSeat', 'What turns the outer ring.', {
  kind: choiceOf('A handle in its wall, or a hub on its side.', DRIVES),
  circle: length('Circle of the hole or holes: the middle of the wall.'),
  count: integer('How many holes.'),
  holeDiameter: Type.Optional(length('Diameter of each hole. Absent where the wall is too thin for one.')),
  depth: length('Depth of each hole.'),
  message: text('What to do, in words.'),
})

const ring = choiceOf('The ring.', ['outerRing', 'innerRing'])

const plugs = Type.Array(
  object('A disc to turn, or a bar across its circle where that is wide.', {
    kind: choiceOf('Which plug. `snug`: the one plug of a cage, which just enters.', ['go', 'no-go', 'snug']),
    diameter: length('Diameter to turn to, or length of the bar. For bare wood, before any finish.'),
    tolerance: length(
      'How far off it may be either way: a twentieth of the way from go to no-go, or 0.05 mm for the one of a cage.',
    ),
    barWidth: Type.Optional(length('Least width of the bar, whose ends are parts of the circle. Absent for a disc.')),
    message: text('How to make and measure it.'),
  }),
  { description: 'Plugs for the circle inside the balls.' },
)

export const GaugeKit = named('GaugeKit', 'Gauges to make before they are first used.', {
  plugs,
  profiles: Type.Array(
    object('A card or scraper with the section of a groove.', {
      ring,
      radius: length('Radius of its tip.'),
      stopDepth: length('Depth at which the sharp tool stops.'),
      depth: length('Depth of the finished groove.'),
      message: text('How to make and use it.'),
    }),
    { description: 'One for each groove.' },
  ),
  setBlocks: Type.Array(
    object('A strip of wood to set the caliper to.', {
      ring,
      at: choiceOf('`stop`: where the sharp tool stops. `done`: the finished groove.', ['stop', 'done']),
      length: length('Length to cut it to: across the bottoms of the groove, or across the track.'),
      message: text('How to use it.'),
    }),
    { description: 'Two for each raceway.' },
  ),
  dowels: Type.Array(
    object('A dowel to wrap in abrasive paper.', {
      ring,
      diameter: length('Diameter of the dowel, the paper taken off.'),
      paper: length('Thickness of the paper: common practice, 80 grit.'),
      message: text('How to use it.'),
    }),
    { description: 'One for each groove that is large enough.' },
  ),
})

const mounting = object('How the bearing is held on its shaft and in its housing. Fits are common practice.', {
  turns: choiceOf('The ring that turns.', TURNING_RINGS),
  shaft: refTo<typeof ShaftSeat>('ShaftSeat'),
  housing: Type.Optional(refTo<typeof HousingSeat>('HousingSeat')),
  drive: Type.Optional(refTo<typeof DriveSeat>('DriveSeat')),
})
export type MountingAnswer = Static<typeof mounting>

export const Making = named('Making', 'Blanks, boards, screws and work holding for the bearing.', {
  outerRing: refTo<typeof RingStock>('RingStock'),
  innerRing: refTo<typeof RingStock>('RingStock'),
  cheeks: Type.Optional(ringStock('Cheeks of a `roller` bearing.')),
  cage: Type.Optional(ringStock('Cage of a `caged` bearing.')),
  nesting: Type.Optional(Nesting),
  entryHole: Type.Optional(EntryHole),
  split: Type.Optional(refTo<typeof SplitRing>('SplitRing')),
  cheekScrews: Type.Optional(refTo<typeof CheekScrews>('CheekScrews')),
  gauges: refTo<typeof GaugeKit>('GaugeKit'),
  mounting,
  mandrel,
  finishes,
  season,
})
export type Making = Static<typeof Making>

export const PinSeat = named(
  'PinSeat',
  'The pin in the middle of a turntable. The balls centre the upper plate, not the pin.',
  {
    hold: choiceOf<PinHold>('How it is held in the lower plate. `retained` is a bolt through everything.', PIN_HOLDS),
    shaftDiameter: length('Diameter of the pin.'),
    boreNeeded: length('The bore that this pin and this hold ask for.'),
    seatDiameter: length('The bore to cut in the lower plate.'),
    play,
    upperHole: length('The hole to open in the upper plate, clear of the pin all year.'),
    upperPlay: play,
    length: length('Length of the pin, which ends below the board on top, or of the bolt.'),
    wood: length('Wood from the hole of the upper plate to its groove.'),
    leastWood: length('The least of it.'),
    message: text('What to do, in words.'),
  },
)

export const PlateSeats = named('PlateSeats', 'How a turntable is held between its boards. Fits are common practice.', {
  shaft: refTo<typeof PinSeat>('PinSeat'),
  boards: object('The boards below and above.', {
    hold: choiceOf<PlateHold>('How each plate is held to its board.', PLATE_HOLDS),
    thickness: length('Thickness of each board, at the least.'),
    screws: Type.Optional(refTo<typeof CheekScrews>('CheekScrews')),
    message: text('What to do, in words.'),
  }),
})

export const PlateGaugeKit = named('PlateGaugeKit', 'Gauges of a turntable, to make before they are first used.', {
  plugs,
  profile: object('A card or scraper with the section of the groove.', {
    radius: length('Radius of its tip.'),
    depth: length('Depth of the finished groove.'),
  }),
  depthBlock: object('A block to set the depth rod of the caliper to.', {
    step: length('Height of its step: the depth of the groove.'),
  }),
  circle: object('A card that lies against the wall of the bore.', {
    fromBore: length('Distance from the edge of the bore to the lowest line of the groove.'),
  }),
})

export const PlateMaking = named('PlateMaking', 'Blanks, boards and work holding for two plates.', {
  plates: ringStock('Two plates, made alike.'),
  gauges: refTo<typeof PlateGaugeKit>('PlateGaugeKit'),
  mounting: refTo<typeof PlateSeats>('PlateSeats'),
  mandrel,
  finishes,
  season,
})
export type PlateMaking = Static<typeof PlateMaking>

export const MAKING_SCHEMAS = [
  BoardOption,
  SegmentCut,
  RingTurning,
  RingStock,
  CheekScrews,
  SplitScrews,
  SplitDowels,
  SplitRing,
  SeatHolder,
  ShaftSeat,
  HousingSeat,
  DriveSeat,
  GaugeKit,
  PinSeat,
  PlateSeats,
  PlateGaugeKit,
  Making,
  PlateMaking,
]
