import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { clearancesToFit } from '#shared/bearing/clearances-to-fit.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { plateMountingOf } from '#shared/making/plate-mounting.ts'
import { mm } from '#shared/units/length.ts'
import { CAPTIONS } from '#src/words/drawing.ts'
import { type Assembled, gapToNote } from './assembly.ts'
import { deviationsOf } from './deviations.ts'
import { fastenersIn, holesRound } from './face.ts'
import { mostOfPlateDetail, plateDetail } from './plate-detail.ts'
import { plateFace, plateHalfSection } from './plates.ts'
import { type Columns, type Deviations, MID_GROOVE } from './size-columns.ts'
import type { SizeText } from './size-text.ts'

/** Two plates with balls between them, as their sheet shows them. */
export function assembledPlates(design: ThrustDesign): Assembled {
  const { bearing, dimensions } = design
  const deviations = deviationsOf(design)
  const { resolved, plate, height } = bearing
  const mounting = resolved.input.making && plateMountingOf(bearing)
  const screws = mounting?.screws
  const holes = fastenersIn(undefined, screws, 'plate')
  return {
    arrangement: 'thrust',
    ring: bearing,
    dimensions,
    outside: plate.outsideDiameter,
    wide: height,
    marked: { along: 0, reach: resolved.ballDiameter / 2 },
    section: (hatchSpacing, overhang) => plateHalfSection(bearing, hatchSpacing, overhang),
    columns: (say, factor) => plateColumns(design, deviations, say, factor),
    face: (overhang, ballRole) => [...plateFace(bearing, overhang, ballRole), ...holesRound(holes, 'outline')],
    holes: holes === undefined ? [] : [holes],
    enlarged: {
      most: (say, room) => mostOfPlateDetail(bearing, deviations, say, room),
      draw: (say, scale, room) => plateDetail(bearing, deviations, say, scale, room),
    },
    notes: {
      gap: { ...gapToNote(design), symbol: DIMENSION_SYMBOLS.pitchDiameter },
      fits: clearancesToFit(design),
      ...(screws && { screws: { holes: screws, circle: screws.screwCircle, each: 'plate' } }),
      ...(mounting && { plateMounting: mounting }),
    },
    faceCaption: CAPTIONS.faceWithoutPlate,
    between: (say) => `${DIMENSION_SYMBOLS.ballGap} ${say(bearing.ballGap)}`,
    bore: plate.boreDiameter,
  }
}

function plateColumns({ bearing }: ThrustDesign, deviations: Deviations, say: SizeText, factor: number): Columns {
  const { plate, plateGap, height, pitchRadius } = bearing
  const half = (height / 2) * factor
  return {
    half,
    outside: { key: 'plates.outsideDiameter', size: plate.outsideDiameter },
    left: [],
    right: [
      { key: 'plates.boreDiameter', size: plate.boreDiameter, from: half },
      { key: 'pitchDiameter', size: mm(2 * pitchRadius), from: MID_GROOVE },
    ],
    width: { key: 'height', size: height, isAuxiliary: true },
    piece: {
      words: `${DIMENSION_SYMBOLS['plates.thickness']} ${say(plate.thickness)}`,
      from: (plateGap / 2) * factor,
      to: half,
    },
    deviations,
  }
}
