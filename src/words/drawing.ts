import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { ClearanceName, ClearanceToFit } from '#shared/bearing/clearances-to-fit.ts'
import { DIMENSION_SYMBOLS, type DimensionKey } from '#shared/bearing/dimensions.ts'
import type { Lumber } from '#shared/bearing/making-input.ts'
import type { Hold } from '#shared/bearing/mounting-input.ts'
import type { GapSpread } from '#shared/bearing/plug-reading.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import { GENERAL_TOLERANCES } from '#shared/data/general-tolerances.ts'
import { ALL_SOURCES } from '#shared/data/sources.ts'
import type { GluedUp } from '#shared/making/boards.ts'
import type { DriveSeat, Mounting } from '#shared/making/mounting.ts'
import type { PlateMounting } from '#shared/making/plate-mounting.ts'
import type { CheekScrews, Dowels, Screws } from '#shared/making/split-ring.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import type { Construction } from '#shared/wood/construction.ts'
import type { BearingFacts } from './bearing-facts.ts'
import { dimensionName } from './dimension-names.ts'
import { angleFigure, capitalised, figure, giveOrTake } from './figure.ts'
import { belowFree, type GoodGap } from './good-gap.ts'
import { CONSTRUCTION_NAMES, MADE_OF } from './materials.ts'
import { HELD } from './mounting.ts'
import { LEAVE_OUT, MEASURE_INSTEAD } from './plugs.ts'
import { signOf, TRADE_SIGN } from './standing.ts'
import { TERMS, type Terms, WOODEN_PARTS } from './terms.ts'
import { nameInSentence } from './wood-name.ts'

/*
 * What stands on the drawings, and what is said of them to those who cannot see them. The sizes on a sheet all have the
 * same digits, which the sheet chooses: it passes how it says a length.
 */

type Size = (length: Mm) => string
type View = 'assembly' | 'templates' | 'gauges'

/** What rolls, on a sheet. */
type RollingFacts = Pick<BearingFacts, 'count' | 'material' | 'ballDiameter'>

const rolling = ({ count, material }: RollingFacts, { element }: Terms): string =>
  `${count} ${MADE_OF[material]} ${element.many}`

/* Each drawing as a whole. */

export const TITLES: Readonly<Record<View, string>> = {
  assembly: 'Assembly',
  templates: 'Templates',
  gauges: 'Gauges',
}

/** What the views of an assembly show. */
const SHOWN: Readonly<Record<ArrangementName, string>> = {
  radial: 'half section, face view and enlarged groove',
  caged: 'half section, face view and enlarged groove',
  roller: 'half section, face view and enlarged end of a roller',
  thrust: 'half section, face view and enlarged grooves',
}

export function assemblyDescription(arrangement: ArrangementName, facts: BearingFacts, say: Size): string {
  const size = (length: Mm): string => `${say(length)} ${facts.units}`
  const terms = TERMS[arrangement]
  return `Wooden ${terms.bearing} with ${rolling(facts, terms)} of ${size(facts.ballDiameter)}, ${size(facts.outside)} outside, with a bore of ${size(facts.bore)}: ${SHOWN[arrangement]}.`
}

/** What is cut to a template. */
const BLANKS: Readonly<Record<ArrangementName, string>> = {
  radial: 'The blanks of both rings',
  caged: 'The blanks of both rings and the cage',
  roller: 'The blanks of both rings and of the cheeks',
  thrust: 'The blank of each plate',
}

/** What is checked with a gauge. */
const CHECKS: Readonly<Record<ArrangementName, string>> = {
  radial: 'go and no-go plugs, a profile and set-blocks for each groove, and an edge for each cylinder',
  caged: 'the plug, a profile and set-blocks for each groove, and an edge for each cylinder',
  roller: 'go and no-go plugs, set-blocks for each track, and an edge for each cylinder',
  thrust: 'go and no-go plugs, a profile, a depth block and a circle for the groove, and an edge for the outside',
}

/** Of a sheet that is cut out of paper. */
export const CUT_OUT_DESCRIPTIONS: Readonly<
  Record<Exclude<View, 'assembly'>, (arrangement: ArrangementName) => string>
> = {
  templates: (arrangement) =>
    `${BLANKS[arrangement]} at full size: lines to turn to, lines to cut along, the centre, the grain or the joints, and the holes.`,
  gauges: (arrangement) => `Gauges at full size: ${CHECKS[arrangement]}.`,
}

/* The assembly. */

const DRAWING_NAMES: Readonly<Record<ArrangementName, string>> = {
  radial: 'Radial bearing of wood, full complement',
  caged: 'Radial bearing of wood, with a cage',
  roller: 'Roller bearing of wood, full complement',
  thrust: 'Turntable of wood, full complement',
}

interface Named {
  readonly units: Units
  /** The maker's own name for the bearing. */
  readonly name: string | undefined
}

/** The two lines of a title block: the maker's own name stands first where there is one. */
export function titles(arrangement: ArrangementName, facts: RollingFacts, { units, name }: Named, say: Size) {
  const kind = DRAWING_NAMES[arrangement]
  const balls = `${rolling(facts, TERMS[arrangement])}, Ø${say(facts.ballDiameter)} ${units}`
  return name === undefined ? { title: kind, subtitle: balls } : { title: name, subtitle: `${kind}: ${balls}` }
}

/** Beside the arrow to one of them in the face view. */
export const rollingLabel = (arrangement: ArrangementName, facts: RollingFacts, say: Size): string =>
  `${rolling(facts, TERMS[arrangement])}, Dw Ø${say(facts.ballDiameter)}`

export const FACTS = {
  scale: 'scale',
  units: 'sizes in',
  paper: 'paper',
  code: 'code',
  sheet: 'sheet',
  finish: 'finished sizes',
} as const

/** Which sheet of how many. */
export const sheetOf = (sheet: number, sheets: number): string => `${sheet} of ${sheets}`

export const finishFact = (film: Mm, units: Units, say: Size): string =>
  film === 0 ? 'bare wood' : `with ${say(film)} ${units} film`

export const LIGHT_USE_NOTE =
  'For models and light work turned by hand. Never use it to carry people or overhead loads.'

/** People and dates of a title block, for a pen. */
export const PEOPLE = { creator: 'drawn by', approved: 'checked', date: 'date', owner: 'owner' } as const
export const CREATOR = (version: string): string => `Racewright ${version}`

/** The wood of a bearing, as far as it is known. */
interface WoodFacts {
  /** Every part of wood, with its construction where its wood is stated: plywood has no species. */
  readonly parts: readonly {
    readonly part: WoodPart
    readonly species?: string
    readonly construction?: Construction
  }[]
  readonly lumber: Lumber
  readonly isLumberAssumed: boolean
  readonly segmented: readonly WoodPart[]
  /** Whether any part has one grain. */
  readonly hasArrow: boolean
}

export interface NoteFacts {
  /** Left out where balls in a cage leave no gap. */
  readonly gap?: GoodGap & { readonly symbol: string; readonly terms: Terms }
  /** Sizes that together make a clearance, and so are cut to one another. */
  readonly fits: readonly ClearanceToFit[]
  /** Left out between plates. */
  readonly play?: { readonly size: Mm; readonly most: Mm }
  readonly split?: { readonly ring: RingName; readonly half: Mm }
  /** With the part of which there are two, each with so many screws. */
  readonly screws?: { readonly holes: CheekScrews | Screws; readonly circle: Mm; readonly each?: PairedPart }
  readonly dowels?: { readonly holes: Dowels; readonly circle: Mm }
  /** No screw fits. */
  readonly hasPinnedCheeks?: boolean
  /** Whether the two rings of a cage are glued together, grain across grain. */
  readonly isCageCrossed?: boolean
  /** Left out where nothing is planned. */
  readonly mounting?: Mounting
  readonly plateMounting?: PlateMounting
  readonly wood: WoodFacts
  readonly general: readonly { readonly upTo: Mm; readonly plusMinus: Mm }[]
  readonly units: Units
}

/** A unit behind a word, where its sign would read as that word. */
const UNIT_NAMES: Readonly<Record<Units, string>> = { in: 'inches', mm: 'mm' }

/** What stands beside the views, one thought a line. Sizes in brackets follow from others. */
export function assemblyNotes(facts: NoteFacts, say: Size): readonly string[] {
  const { gap, fits, play, split, screws: fastened, dowels, hasPinnedCheeks, mounting, plateMounting } = facts
  const { isCageCrossed, wood, general, units } = facts
  const size = (length: Mm): string => `${say(length)} ${units}`
  return [
    `Wood: ${woodName(wood)}.`,
    ...(wood.hasArrow
      ? [
          `Grain along the arrow${split && !wood.segmented.includes(split.ring) ? ', both halves of a ring alike' : ''}.`,
          ...(isCageCrossed === true ? ['Cage: the grain of the second ring across that of the first.'] : []),
        ]
      : []),
    ...wood.segmented.map((part) => `${capitalised(WOODEN_PARTS[part])}: grain along each segment.`),
    ...(gap
      ? [
          `${gap.symbol} within its limits leaves a ${gap.terms.gap} of ${say(gap.free)} to ${say(gap.most)} ${units}.`,
          ...(gap.free > gap.min ? [belowFree(gap, size, gap.terms)].filter((each) => each !== undefined) : []),
        ]
      : []),
    ...(play
      ? [
          `Cut the inner ring to the outer ring as made: Gr ${size(play.size)}, above 0 and at most ${size(play.most)} ${TRADE_SIGN}.`,
        ]
      : []),
    ...fits.map(({ name, size: wide }) => FITS[name](size(wide))),
    ...(split ? [`${capitalised(WOODEN_PARTS[split.ring])} in two halves, each ${size(split.half)} thick.`] : []),
    ...(fastened ? [`${screws(fastened.holes, fastened.circle, size, fastened.each).join(': ')}.`] : []),
    ...(dowels ? [`${dowelWords(dowels.holes, dowels.circle, size).join(', ')}.`] : []),
    ...(hasPinnedCheeks ? [`Cheeks on thin pins, glued into the outer ring alone ${TRADE_SIGN}.`] : []),
    ...(mounting ? seatNotes(mounting, size) : []),
    ...(plateMounting ? pinNotes(plateMounting, size) : []),
    `Other sizes but those of plugs${mounting || plateMounting ? ' and seats' : ''}, in ${UNIT_NAMES[units]}: ${general.map(({ upTo, plusMinus }) => `±${say(plusMinus)} up to ${say(upTo)}`).join(', ')} (ISO 2768-1, class c)${signOf(ALL_SOURCES[GENERAL_TOLERANCES.source].standing)}. Sizes in brackets follow from others.`,
  ]
}

const SYMBOL = DIMENSION_SYMBOLS

/** How sizes that make a clearance are cut to one another: the general tolerance of each could close it. */
const FITS: Readonly<Record<ClearanceName, (size: string) => string>> = {
  rollersBetweenCheeks: (size) =>
    `Cut the rollers first. Plane both rings to them as made: ${SYMBOL['innerRing.width']} as ${SYMBOL.rollerLength}, and ${SYMBOL['outerRing.width']} wider than ${SYMBOL.rollerLength} by ${SYMBOL.axialPlay} ${size}, both ends together.`,
  cheekHole: () =>
    `Open the cheeks to the inner ring as made: ${SYMBOL['cheeks.holeDiameter']} halfway between ${SYMBOL['innerRing.boreDiameter']} and ${SYMBOL['innerRing.trackDiameter']}.`,
  cageToLands: (size) =>
    `Cut the cage to the lands as made: ${SYMBOL['cage.outsideDiameter']} smaller than ${SYMBOL['outerRing.landDiameter']}, and ${SYMBOL['cage.boreDiameter']} larger than ${SYMBOL['innerRing.landDiameter']}, by ${size}.`,
  pockets: (size) =>
    `Drill the pockets to the balls that you have: ${SYMBOL['cage.pocketDiameter']} larger than Dw by ${size}. Every ball must fall through.`,
  lands: (size) =>
    `Cut the land of the inner ring to the outer ring as made: ${SYMBOL['innerRing.landDiameter']} smaller than ${SYMBOL['outerRing.landDiameter']} by ${size}.`,
  plates: (size) =>
    `Cut no groove deeper than ${SYMBOL['plates.grooveDepth']}: the plates must stay ${SYMBOL.plateGap} ${size} apart.`,
}

/** One name where all parts are of one wood, cut alike. A part whose wood is not stated comes from the lumber of the plan. */
function woodName({ parts, lumber, isLumberAssumed }: WoodFacts): string {
  const bought = `${lumber}${isLumberAssumed ? ` ${TRADE_SIGN}` : ''}`
  const named = parts.map(({ part, species, construction }) => {
    if (construction === undefined) return { part, name: bought }
    return {
      part,
      name: `${species === undefined ? '' : `${nameInSentence(species)}, `}${CONSTRUCTION_NAMES[construction]}`,
    }
  })
  const first = itemAt(named, 0)
  if (named.every(({ name }) => name === first.name)) return first.name
  return named.map(({ part, name }) => `${WOODEN_PARTS[part]} ${name}`).join('; ')
}

/** A finish stays off what is glued. */
const held = (hold: Hold): string => (hold === 'glued' ? 'glued on bare wood' : HELD[hold])

/** The seats on the shaft and in the housing, and what turns the outer ring. */
function seatNotes({ shaft, housing, drive }: Mounting, size: Size): readonly string[] {
  const deep = housing && housing.seatDepth < housing.thickness ? `, ${size(housing.seatDepth)} deep` : ''
  return [
    `Shaft: ${shaft.material}, Ø${size(shaft.shaftDiameter)}, in a bore cut to Ø${size(shaft.seatDiameter)} by caliper, ${held(shaft.hold)} ${TRADE_SIGN}.`,
    ...(housing ? [`Housing: seat Ø${size(housing.seatDiameter)}${deep}, ${held(housing.hold)} ${TRADE_SIGN}.`] : []),
    ...(drive?.holeDiameter === undefined
      ? []
      : [
          `${drive.kind === 'crank' ? 'Crank' : 'Hub'}: ${drive.count} × Ø${size(drive.holeDiameter)}, ${size(drive.depth)} deep, on Ø${size(drive.circle)} ${TRADE_SIGN}, clear of any screws or dowels.`,
        ]),
  ]
}

/** The pin in the middle of a turntable, and its boards. */
const pinNotes = ({ pin, boards }: PlateMounting, size: Size): readonly string[] => [
  `Pin: ${pin.material}, Ø${size(pin.shaftDiameter)}, in a bore cut to Ø${size(pin.seatDiameter)} by caliper, ${pin.hold === 'retained' ? 'a bolt through both plates' : held(pin.hold)} ${TRADE_SIGN}. Bore of the upper plate opened to Ø${size(pin.upperHole)} ${TRADE_SIGN}.`,
  `Boards: at least ${size(boards.thickness)}, plates ${held(boards.hold)} ${TRADE_SIGN}.`,
]

/** A part of which there are two, each screwed on by itself. */
export type PairedPart = 'cheek' | 'plate'

const inEach = (part: PairedPart | undefined): string => (part === undefined ? '' : `, in each ${part}`)

/** Beside the bar that tells whether a sheet has its scale. */
export const scaleBar = (long: number, units: Units): string => `${long} ${units}, or not to scale`

/** Beside the arrow to a screw of the face view. Its drills stand in the notes: no one hole is as wide as it. */
export const screwsLabel = (
  {
    count,
    name,
    circleDiameter,
    each,
  }: {
    readonly count: number
    readonly name: string
    readonly circleDiameter: Mm
    readonly each: PairedPart | undefined
  },
  say: Size,
): string => `${count} screws ${name} on Ø${say(circleDiameter)}${inEach(each)}`

/** The same to a dowel between the halves of a ring. */
export const dowelsLabel = (
  { count, diameter, circleDiameter }: { readonly count: number; readonly diameter: Mm; readonly circleDiameter: Mm },
  say: Size,
): string => `${count} dowels Ø${say(diameter)} on Ø${say(circleDiameter)}`

/** The same to a hole for what turns the outer ring. */
export const driveLabel = (
  of: {
    readonly kind: DriveSeat['kind']
    readonly count: number
    readonly circleDiameter: Mm
    readonly holeDiameter: Mm
    readonly depth: Mm
  },
  say: Size,
): string =>
  `${of.kind}: ${of.count === 1 ? '' : `${of.count} × `}Ø${say(of.holeDiameter)}, ${say(of.depth)} deep, on Ø${say(of.circleDiameter)}`

export const CAPTIONS = {
  section: 'half section',
  face: 'face',
  detail: 'detail X',
  faceWithoutCheek: 'face, one cheek off',
  faceWithoutPlate: 'face, one plate off',
  faceWithoutHalfCage: 'face, half the cage off',
  faceCageCut: 'face, cage cut at mid width',
} as const

/** `half section (1:2)`, as ISO 128-3 writes a scale beside a view. */
export const caption = (view: string, scale: string): string => `${view} (${scale})`

/** Behind the symbol and the size of the play in the enlarged end of a roller. */
export const ROLLER_PLAY = { axial: 'in all', radial: 'across' } as const

/** Behind the symbol and the size of what no table of the sheet has. */
export const grooveWide = (size: string): string => `${size} wide`
export const apart = (size: string): string => `${size} apart`

/* The table of sizes: short words, for there is no room for long ones. */

export const TABLE_HEADINGS = {
  outer: 'outer ring',
  inner: 'inner ring',
  innerAndPlug: 'inner ring, plug',
  innerAndRollers: 'inner ring, rollers',
  ringsAndChecks: 'both rings, checks',
  cageAndPlay: 'cage, play',
  checks: 'checks',
  eachPlate: 'each plate',
  plateGroove: 'groove of each plate',
  platesAndChecks: 'both plates, checks',
  onTheRule: 'on the rule',
} as const

const SHORT_NAMES = {
  'outerRing.outsideDiameter': 'outside',
  'outerRing.landDiameter': 'hole',
  'outerRing.grooveBottomDiameter': 'groove bottom',
  'outerRing.grooveDepth': 'groove depth',
  'outerRing.grooveRadius': 'groove radius',
  'outerRing.trackDiameter': 'track',
  'outerRing.wall': 'wood behind',
  'innerRing.wall': 'wood behind',
  'innerRing.boreDiameter': 'bore',
  'innerRing.landDiameter': 'outside',
  'innerRing.grooveBottomDiameter': 'groove bottom',
  'innerRing.grooveDepth': 'groove depth',
  'innerRing.grooveRadius': 'groove radius',
  'innerRing.trackDiameter': 'track',
  rollerLength: 'roller length',
  'cheeks.holeDiameter': 'cheek hole',
  'cheeks.thickness': 'cheek thickness',
  'cage.outsideDiameter': 'outside',
  'cage.boreDiameter': 'bore',
  'cage.width': 'width',
  'cage.pocketDiameter': 'pockets',
  'cage.web': 'least web',
  'plates.outsideDiameter': 'outside',
  'plates.boreDiameter': 'bore',
  'plates.thickness': 'thickness',
  'plates.floor': 'wood below',
  'plates.wall': 'wood outside',
  'plates.innerWall': 'wood inside',
  pitchDiameter: 'circle',
  'plates.grooveDepth': 'depth',
  'plates.grooveRadius': 'radius',
  'plates.grooveWidth': 'width',
  'outerRing.width': 'width',
  plugDiameter: 'plug',
  'gauge.goDiameter': 'go plug',
  'gauge.noGoDiameter': 'no-go plug',
  plateGap: 'between plates',
  height: 'total height',
  radialInternalClearance: 'play',
  axialPlay: 'play along axis',
} as const satisfies Partial<Record<DimensionKey, string>>

/** The sizes that the tables of the assemblies have. */
export type TabledKey = keyof typeof SHORT_NAMES | 'innerRing.width' | 'ballGap'

export function shortName(key: TabledKey, arrangement: ArrangementName): string {
  switch (key) {
    case 'innerRing.width':
      // Rings with a groove are as wide as one another; between cheeks the inner one is narrower.
      return arrangement === 'roller' ? 'width' : 'width of both'
    case 'ballGap':
      return TERMS[arrangement].gap
    default:
      return SHORT_NAMES[key]
  }
}

/* Templates. */

export const BLANK_TITLES = {
  outer: 'Outer ring',
  inner: 'Inner ring',
  cage: 'Cage',
  cheek: 'Cheek',
  firstCheek: 'First cheek',
  secondCheek: 'Second cheek',
  plate: 'Plate',
} as const

export const GRAIN = 'grain'
/** The same in a list below the drawing. */
export const GRAIN_BELOW = 'arrow: along the grain'

/** In a list below a drawing that has the number where its line is. */
export const numberedLabel = (number: number, label: string): string => `${number}: ${label}`

/** At an edge that is cut: on which side of its line, and whether it is the one that counts. */
export const EDGES = {
  outside: 'cut outside',
  inside: 'cut inside',
  touches: 'this edge touches',
} as const

/** Beside a line of a template. A symbol comes before a size of the design. */
export const TEMPLATE_LABELS = {
  saw: (size: string) => `${EDGES.outside}: Ø${size}`,
  turn: (symbol: string, size: string) => `turn to: ${symbol} Ø${size}`,
  open: (symbol: string, size: string) => `open to: ${symbol} Ø${size}`,
  bore: (symbol: string, size: string) => `bore to: ${symbol} Ø${size}`,
  core: (size: string) => `${EDGES.inside}, for the core: Ø${size}`,
  bladeHole: (size: string) => `drill for the blade: Ø${size}, in the core`,
  grooveCircle: (symbol: string, size: string) => `cut the groove on: ${symbol} Ø${size}`,
  pockets: (count: number, symbol: string, size: string) =>
    `${count} pockets ${symbol} Ø${size}, towards the centre, at mid width`,
  blankThickness: (pieces: number, size: string) =>
    pieces === 1 ? `thickness of the blank: ${size}` : `thickness of each of the two blanks: ${size}`,
  /** Where nothing comes off its sides. */
  thicknessAsIs: (size: string) => `thickness: ${size}`,
  thicknessOfHalves: (each: string, both: string) => `thickness of each of the two blanks: ${each}, together ${both}`,
  thickness: (size: string) => `thickness when faced: ${size}`,
  thicknessOfBoth: (size: string) => `thickness of both together, when faced: ${size}`,
} as const

/** Titles of one piece of each part that is glued up of segments. */
export const SEGMENT_TITLES: Readonly<Record<WoodPart, string>> = {
  outerRing: 'Segment of the outer ring',
  innerRing: 'Segment of the inner ring',
  cage: 'Segment of the cage',
  plates: 'Segment of each plate',
}

export const SEGMENT_LABELS = {
  miter: (degrees: number) => `${EDGES.outside}, both ends ${angleFigure(degrees)} from square`,
  long: (size: string) => `long edge: ${size}`,
  short: (size: string) => `short edge: ${size}`,
  strip: (width: string, thick: string) => `of a strip ${width} wide and ${thick} thick`,
  pieces: (pieces: number) => `make ${pieces}: lay the first one on this before you cut the others`,
} as const

/** The screws, and their holes. */
const screws = (holes: CheekScrews | Screws, circle: Mm, say: Size, each?: PairedPart): readonly [string, string] => [
  `${holes.count} screws ${holes.name} × ${say(holes.length)} on Ø${say(circle)}${inEach(each)}`,
  `clearance ${holes.clearance.name}, pilot ${holes.pilot.name}, ${say(holes.pilotDepth)} deep ${TRADE_SIGN}`,
]

const dowelWords = (
  { count, diameter, length, depthEachHalf }: Dowels,
  circle: Mm,
  say: Size,
): readonly [string, string] => [
  `${count} dowels Ø${say(diameter)} × ${say(length)} on Ø${say(circle)}`,
  `holes ${say(depthEachHalf)} deep in each half ${TRADE_SIGN}`,
]

/** A line for what goes in, and one for its holes with what else is to know of them: no template is wider than a page for its words. */
const inTwo = ([fasteners, holes]: readonly [string, string], more: string): readonly string[] => [
  fasteners,
  `${holes}; ${more}`,
]

export const TEMPLATE_NOTES = {
  splitScrews: (holes: Screws, circle: Mm, say: Size) => inTwo(screws(holes, circle, say), 'before turning'),
  splitDowels: (holes: Dowels, circle: Mm, say: Size) => inTwo(dowelWords(holes, circle, say), 'before turning'),
  cheekScrews: (holes: CheekScrews, say: Size) => inTwo(screws(holes, holes.screwCircle, say), 'into the outer ring'),
  cheekHoles: 'screws between those of the first cheek',
  plateScrews: (holes: CheekScrews, say: Size) => inTwo(screws(holes, holes.screwCircle, say), 'into the board'),
  upperHole: (size: string) => `upper plate: open the bore to Ø${size} ${TRADE_SIGN} when its groove is cut`,
  segments: ({ count, pieces, stripWidth, miter }: GluedUp & { readonly pieces: number }, say: Size) =>
    `glued up from ${count} segments${pieces === count ? '' : ` a layer, ${pieces} in all`}, of a strip ${say(stripWidth)} wide, cut at ${angleFigure(miter)}`,
  joints: 'lay the full straight lines over the joints',
  splitRing: 'two discs, each half as thick, split at mid groove',
  splitCage: (isSegmented: boolean) => [
    'two rings, each half as thick, pinned together to be drilled',
    isSegmented
      ? 'the joints of one over the middles of the segments of the other'
      : 'the grain of the second across that of the first',
  ],
  makeTwo: 'make two',
} as const

/* Gauges. */

export const GAUGE_TITLES = {
  plug: 'Plug',
  goPlug: 'Go plug',
  noGoPlug: 'No-go plug',
  outerGroove: 'Groove of the outer ring',
  innerGroove: 'Groove of the inner ring',
  plateGroove: 'Groove of each plate',
  outerOutside: 'Outside of the outer ring',
  outerHole: 'Hole of the outer ring',
  innerOutside: 'Outside of the inner ring',
  cageOutside: 'Outside of the cage',
  plateOutside: 'Outside of each plate',
  outerBlocks: 'Set-blocks of the outer ring',
  innerBlocks: 'Set-blocks of the inner ring',
  depthBlock: 'Depth block',
  circle: 'Circle of the groove',
} as const

/** `size` is the symbol and the size of what is checked. */
export const GAUGE_LABELS = {
  plug: (size: string) => `${size}: just enters between the balls, evenly spread`,
  goPlug: (size: string, { element }: Terms) => `${size}: must enter between the seated ${element.many}`,
  noGoPlug: (size: string) => `${size}: must not enter`,
  bar: (width: string) => `a bar, at least ${width} wide: it enters where it goes in and turns all the way round`,
  /** At a plug that is sized for bare wood, where a finish will come on it. */
  beforeFinish: ', before the finish',
  /** Where the two cannot tell when a groove is finished. */
  entersAt: (size: string, gap: GapSpread, units: Units) => `${size}: enters at a gap of ${giveOrTake(gap, units)}`,
  decidesNothing: `decides nothing, so ${LEAVE_OUT}: ${MEASURE_INSTEAD}`,
  /** Instead of the outline of a plug. */
  noOutline: 'larger than a page: not drawn',
  oneEnd: 'larger than a page: one end is drawn',
  profile: (surface: 'land' | 'face') => `deep enough when the shoulders meet the ${surface}`,
  stop: (size: string) => `the sharp tool stops at a depth of ${size}`,
  dowel: (size: string, abrasive: string) => `dowel: Ø${size}, for abrasive ${abrasive} thick, wrapped once`,
  block: (at: 'stop' | 'done', size: string, { raceway }: Terms) =>
    at === 'stop' ? `stop ${size}: where the sharp tool stops` : `done ${size}: across the finished ${raceway.one}`,
  depthBlock: (size: string) => `step ${size}: set the depth rod of the caliper to it`,
  circle: (size: string) => `${size} from the wall of the bore to the lowest line of the groove`,
  edge: (size: string) => `${size}: no light between edge and wood`,
} as const

/** Of a file that a machine cuts by. Outlines that are too small are left as drawn, on the layer of the marks. */
export const kerfWords = (kerf: string, isZero: boolean, areAllMoved: boolean): string =>
  isZero
    ? `kerf 0: cut on the lines`
    : `kerf ${kerf}: outlines moved out and holes moved in by half of it${areAllMoved ? '' : ', but for those too small for it: cut them by hand'}`

/* Paper. */

export const CHECK_BAR = {
  title: 'Measure these bars first',
  lines: ['If they are not 100 mm and 4 in long, do not', 'cut by this page: print it at 100 %.'],
} as const

export const pageFooting = (title: string, page: number, pages: number, paper: string): string =>
  `${title}, page ${page} of ${pages}, ${paper}`

/** Every piece of a set has another title, so no two sheets of it have one name. */
export const tileNote = (title: string, sheet: string, sheets: number): string =>
  `${title}, sheet ${sheet} of ${sheets}: lay its marks over those of its neighbours`

/** Whose sheet it is. */
interface Imprinted {
  readonly code: string
  readonly version: string
  readonly name?: string | undefined
}

export const imprint = ({ code, version, name }: Imprinted): string =>
  `${name === undefined ? '' : `${name}: `}code ${code}, Racewright ${version}`

/** Of sizes whose unit stands nowhere else. */
export const sizesIn = (units: Units): string => `sizes in ${UNIT_NAMES[units]}`

/** The same of what is cut out by its lines, whose sizes have no unit of their own. */
export const imprintWithUnits = (mark: Imprinted, units: Units): string => `${imprint(mark)}, ${sizesIn(units)}`

export const tooManyPages = (needed: number, most: number, paper: string): string =>
  `at full size this takes ${needed} sheets of ${paper}, and no more than ${most} are printed: request svg or dxf`

/* A drawing as a figure in a page. */

const FIGURE_VIEWS: Readonly<Record<View, (arrangement: ArrangementName) => string>> = {
  assembly: (arrangement) => `${SHOWN[arrangement]}. Not to scale here.`,
  templates: () => 'templates of the blanks. Not to scale here: to cut by them, print the PDF at full size.',
  gauges: () => 'gauges. Not to scale here: to cut them out, print the PDF at full size.',
}

/** Below a part of a drawing on a narrow screen, where every part is as wide as it. */
export const OWN_SCALE = 'each drawing at its own scale'

/** A size in one line, where there is no table. */
export const sizeLine = (key: DimensionKey, terms: Terms, size: string): string =>
  `${DIMENSION_SYMBOLS[key]} ${dimensionName(key, terms)}: ${size}`

export function figureCaption(view: View, arrangement: ArrangementName, facts: BearingFacts): string {
  const terms = TERMS[arrangement]
  const { ballDiameter, outside, units } = facts
  return `Wooden ${terms.bearing} with ${rolling(facts, terms)} of ${figure(ballDiameter, units)}, ${figure(outside, units)} outside: ${FIGURE_VIEWS[view](arrangement)}`
}
