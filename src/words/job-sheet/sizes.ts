import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { ScrewCircle } from '#shared/making/cutting-allowances.ts'
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
  bore: 'bore',
  thickness: 'thickness',
  planedThickness: 'thickness, both faces planed',
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
  playToReach: 'play to reach',
  play: 'play',
  pocket: 'pocket',
  web: 'least wood between two pockets',
  ballSpacing: 'space between neighbouring balls',
  plateGap: 'space between the plates',
  height: 'height over both plates',
  film: 'film on each surface',
} as const

export const meanDiameter = (arrangement: ArrangementName): string => `mean ${TERMS[arrangement].element.one} diameter`
export const rowOf = (count: number, arrangement: ArrangementName): string =>
  `row of ${count} ${TERMS[arrangement].element.many}`
export const screwCircle = ({ count }: ScrewCircle): string => `circle of the ${count} screws`
export const gapName = (arrangement: ArrangementName): string => TERMS[arrangement].gap
export const gapToReach = (arrangement: ArrangementName): string => `${gapName(arrangement)} to reach`

export const READINGS = {
  acrossBottoms: 'across the groove bottoms',
  acrossTrack: 'across the track',
  depth: 'depth below the land',
  holeThere: 'diameter of the hole there',
  play: 'play from side to side',
  binds: 'it binds',
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
