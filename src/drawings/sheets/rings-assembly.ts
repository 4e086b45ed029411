import type { CagedDesign, FullRingDesign, RollerBearing } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { Stock } from '#shared/making/stock.ts'
import { CAPTIONS } from '#src/words/drawing.ts'
import type { Assembled } from './assembly.ts'
import { faceView, screwsIn } from './face.ts'
import { detailScale, grooveDetail } from './groove-detail.ts'
import { type DrawnRings, halfSection, overallHalf } from './half-section.ts'
import { rollerDetail, rollerDetailScale, rollerEnd } from './roller-detail.ts'
import { sizeColumns } from './size-columns.ts'

/** What is enlarged: a groove, or the end of a roller between tracks. */
type Enlarged = Pick<Assembled, 'marked' | 'enlarged'>

/** What tells the kinds of rings apart. */
type Kind = Pick<Assembled, 'arrangement' | 'faceCaption' | 'between'>

/** Two rings inside one another, as their sheet shows them. */
export function assembledRings(design: FullRingDesign, stock: Stock): Assembled {
  const { bearing } = design
  const hasCheeks = bearing.cheeks !== undefined
  return drawnRings(design, stock, hasCheeks ? rollerEnlarged(bearing) : grooveEnlarged(bearing), {
    arrangement: hasCheeks ? 'roller' : 'radial',
    faceCaption: hasCheeks ? CAPTIONS.faceWithoutCheek : CAPTIONS.face,
    between: (say) => `${DIMENSION_SYMBOLS.ballGap} ${say(bearing.ballGap)}`,
  })
}

/** The same with a cage, which is open in the face view. */
export const assembledWithCage = (design: CagedDesign, stock: Stock): Assembled =>
  drawnRings(design, stock, grooveEnlarged(design.bearing), {
    arrangement: 'caged',
    faceCaption: design.bearing.cage.pieces === 2 ? CAPTIONS.faceWithoutHalfCage : CAPTIONS.faceCageCut,
    between: (say) => `${DIMENSION_SYMBOLS.ballSpacing} ${say(design.bearing.ballSpacing)}`,
  })

const grooveEnlarged = (bearing: DrawnRings): Enlarged => ({
  marked: { along: 0, reach: bearing.resolved.ballDiameter / 2 },
  enlarged: {
    scale: (say, room) => detailScale(bearing, say, room),
    draw: (say, scale, room) => grooveDetail(bearing, say, scale, room),
  },
})

const rollerEnlarged = (bearing: RollerBearing): Enlarged => ({
  marked: rollerEnd(bearing),
  enlarged: {
    scale: (say, room) => rollerDetailScale(bearing, say, room),
    draw: (say, scale, room) => rollerDetail(bearing, say, scale, room),
  },
})

const drawnRings = (
  { bearing, dimensions }: DesignOf<DrawnRings>,
  { split, cheekScrews }: Stock,
  { marked, enlarged }: Enlarged,
  kind: Kind,
): Assembled => ({
  ...kind,
  ring: bearing,
  dimensions,
  outside: bearing.outerRing.outsideDiameter,
  bore: bearing.innerRing.boreDiameter,
  wide: 2 * overallHalf(bearing),
  marked,
  section: (hatchSpacing, overhang) => halfSection(bearing, hatchSpacing, overhang),
  columns: (say, factor) => sizeColumns(bearing, say, factor),
  face: (overhang, ballRole) => faceView(bearing, screwsIn(split, cheekScrews), overhang, ballRole),
  enlarged,
})
