import type { ThrustDesign } from '#shared/bearing/arrangements.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { mm } from '#shared/units/length.ts'
import { CAPTIONS } from '#src/words/drawing.ts'
import type { Assembled } from './assembly.ts'
import { plateDetail, plateDetailScale } from './plate-detail.ts'
import { plateFace, plateHalfSection } from './plates.ts'
import { columnsBeside, MID_GROOVE } from './size-columns.ts'

/** Two plates with balls between them, as their sheet shows them. */
export function assembledPlates({ bearing, dimensions }: ThrustDesign): Assembled {
  const { resolved, plate, height, pitchRadius } = bearing
  return {
    arrangement: 'thrust',
    ring: bearing,
    dimensions,
    outside: plate.outsideDiameter,
    wide: height,
    marked: { along: 0, reach: resolved.ballDiameter / 2 },
    section: (hatchSpacing, overhang) => plateHalfSection(bearing, hatchSpacing, overhang),
    columns: (say, factor) => {
      const half = (height / 2) * factor
      return columnsBeside(
        {
          half,
          outside: { key: 'plates.outsideDiameter', size: plate.outsideDiameter },
          left: [],
          right: [
            { key: 'plates.boreDiameter', size: plate.boreDiameter, from: half },
            { key: 'pitchDiameter', size: mm(2 * pitchRadius), from: MID_GROOVE },
          ],
          width: { key: 'height', size: height },
        },
        say,
        factor,
      )
    },
    face: (overhang, ballRole) => plateFace(bearing, overhang, ballRole),
    enlarged: {
      scale: (say, room) => plateDetailScale(bearing, say, room),
      draw: (say, scale, room) => plateDetail(bearing, say, scale, room),
    },
    faceCaption: CAPTIONS.faceWithoutPlate,
    between: (say) => `${DIMENSION_SYMBOLS.ballGap} ${say(bearing.ballGap)}`,
    bore: plate.boreDiameter,
  }
}
