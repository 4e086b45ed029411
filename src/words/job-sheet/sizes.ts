import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { Holder } from '#shared/making/mounting.ts'
import { TERMS } from '#src/words/terms.ts'

/* The sizes of an operation, and the readings to write down in it. */

export const SIZES = {
  outside: 'outside',
  outsideLine: 'outside (full line)',
  outsideLand: 'outside (land)',
  hole: 'hole',
  holeLine: 'hole (full line)',
  holeLineStays: 'hole (leave the full line)',
  holeLand: 'hole (land)',
  sawingLine: 'sawing line (dashed)',
  cuttingLine: 'cutting line (dashed)',
  core: 'largest core',
  bladeHole: 'hole for the blade',
  bladeHolePlace: 'from the centre to the middle of that hole',
  bore: 'bore',
  thickness: 'thickness',
  planedThickness: 'thickness, both faces planed',
  blank: 'thickness of the blank',
  eachBlank: 'thickness of each blank',
  thicknessOfEach: 'thickness of each',
  thicknessOfDisc: 'thickness of each disc',
  thicknessOfBoth: 'thickness of both together',
  widthAsRollers: 'width, as long as the rollers',
  length: 'length',
  grooveRadius: 'groove radius',
  grooveDepth: 'groove depth',
  grooveCircle: 'circle of the groove',
  acrossBottoms: 'across the groove bottoms',
  track: 'track',
  plug: 'plug that just enters',
  goPlug: 'go plug',
  noGoPlug: 'no-go plug',
  barWidth: 'width of a plug that is a bar, at least',
  playToReach: 'play to reach',
  leftToSand: 'left to sand, all round',
  play: 'play',
  travelOnThree: 'travel towards a ball, with three balls in',
  pocket: 'pocket',
  web: 'least wood between two pockets',
  ballSpacing: 'space between neighbouring balls',
  plateGap: 'space between the plates',
  height: 'height over both plates',
  screwLength: 'length of the screws',
  clearanceHole: 'clearance hole',
  pilotHole: 'pilot hole',
  pilotDepth: 'depth of the pilot hole in the second piece',
  counterbore: 'counterbore for the heads',
  counterboreDepth: 'depth of the counterbore',
  countersinkDepth: 'depth of the countersink',
  dowel: 'dowel',
  dowelLength: 'length of the dowels',
  dowelDepth: 'depth of the dowel holes in each half',
  stripWidth: 'width of the strips',
  layer: 'thickness of each layer',
  stripLength: 'length of all strips together',
  longEdge: 'long edge of a segment',
  shortEdge: 'short edge of a segment',
  film: 'film on each surface',
  abrasiveDowel: 'dowel with the abrasive over it',
  shaft: 'shaft',
  shaftSeat: 'bore on the shaft',
  housingSeat: 'seat in the housing',
  seatDepth: 'depth of the seat',
  shoulderHole: 'hole behind the seat',
  housingWidth: 'board of the housing, at least across',
  pin: 'pin in the middle',
  pinLength: 'length of the pin',
  pinSeat: 'bore of the lower plate',
  upperHole: 'bore of the upper plate, opened',
  boards: 'boards below and above, at least',
} as const

const RING_WORDS: Readonly<Record<RingName, string>> = { outerRing: 'outer', innerRing: 'inner' }

const gaugesOf = (raceway: string) => ({
  radius: `${raceway}: radius of profile and scraper`,
  depth: `${raceway}: from their shoulders to the tip`,
  stop: `${raceway}: set-block “stop”`,
  done: `${raceway}: set-block “done”`,
  dowel: `${raceway}: bare dowel for the abrasive`,
})

/** The gauges of one raceway. */
export const gaugeNames = (ring: RingName, raceway: 'groove' | 'track') => gaugesOf(`${RING_WORDS[ring]} ${raceway}`)

/** The same of both plates. */
export const PLATE_GAUGE_NAMES = {
  ...gaugesOf('groove'),
  step: 'step of the depth block',
  circle: 'circle gauge, from the bore to the tip',
} as const

const HOLDER_WORDS: Readonly<Record<Holder['kind'], (count: number) => string>> = {
  pin: (count) => (count === 1 ? 'pin' : `${count} pins`),
  key: () => 'key',
  screws: (count) => (count === 1 ? 'screw' : `${count} screws`),
  'retaining-ring': (count) => (count === 1 ? 'retaining ring' : `${count} retaining rings`),
}

/** Names of the parts that hold one seat. */
export function holderNames(at: 'shaft' | 'housing', { kind, count }: Pick<Holder, 'kind' | 'count'>) {
  const what = `${HOLDER_WORDS[kind](count)} at the ${at}`
  const across = kind === 'retaining-ring' && at === 'housing' ? 'hole' : kind === 'key' ? 'width' : 'across'
  return {
    diameter: `${what}: ${across}`,
    length: `${what}: ${kind === 'retaining-ring' ? 'thickness' : 'length'}`,
    circle: `${what}: circle`,
  }
}

/** Names of the drives of an outer ring. */
export const driveNames = (kind: 'crank' | 'hub') => {
  const holes = kind === 'crank' ? 'hole for the handle' : 'holes for the hub'
  return { hole: holes, depth: `${holes}: depth`, circle: `${holes}: circle` }
}

export const meanDiameter = (arrangement: ArrangementName): string => `mean ${TERMS[arrangement].element.one} diameter`
export const rowOf = (count: number, arrangement: ArrangementName): string =>
  `row of ${count} ${TERMS[arrangement].element.many}`
export const circleOfScrews = (count: number): string => `circle of the ${count} screws`
export const circleOfDowels = (count: number): string => `circle of the ${count} dowels`
export const gapName = (arrangement: ArrangementName): string => TERMS[arrangement].gap
export const beforeFinishName = (name: string): string => `${name} before the finish`
/** Sizes that nothing is set to: a dial indicator or feelers tell them. */
export const isMeasuredInPlace = (name: string): boolean =>
  [SIZES.play, SIZES.playToReach, beforeFinishName(SIZES.playToReach), SIZES.travelOnThree].some(
    (each) => each === name,
  )
export const gapToReach = (arrangement: ArrangementName): string => `${gapName(arrangement)} to reach`

export const READINGS = {
  acrossBottoms: 'across the groove bottoms',
  acrossTrack: 'across the track',
  depth: 'depth below the land',
  holeThere: 'diameter of the hole there',
  outsideThere: 'outside diameter there',
  play: 'play from side to side',
  playOnThree: 'play: the travel on three balls, divided',
  binds: 'it binds',
  plug: 'plug: enters, snug or refuses',
  goPlug: 'go plug: enters, snug or refuses',
  noGoPlug: 'no-go plug: enters, snug or refuses',
} as const

export const rowLength = (count: number, arrangement: ArrangementName): string =>
  `length of the ${rowOf(count, arrangement)}`
export const gapReading = (arrangement: ArrangementName): string => `gap, all ${TERMS[arrangement].element.many} in`
export const openingReading = (arrangement: ArrangementName): string =>
  `opening, one ${TERMS[arrangement].element.one} left out`
export const refusedReading = (arrangement: ArrangementName): string =>
  `last ${TERMS[arrangement].element.one} does not go in`
