import { type CagedDesign, type FullRingDesign, isCaged, type RollerBearing } from '#shared/bearing/arrangements.ts'
import { clearancesToFit } from '#shared/bearing/clearances-to-fit.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import { playLimits } from '#shared/bearing/play-limits.ts'
import { mountingOf } from '#shared/making/mounting.ts'
import type { Stock } from '#shared/making/stock.ts'
import { apart, CAPTIONS } from '#src/words/drawing.ts'
import { type Assembled, gapToNote } from './assembly.ts'
import { deviationsOf } from './deviations.ts'
import { driveHolesIn, faceView, fastenersIn, screwsOfBothCheeks } from './face.ts'
import { grooveDetail, mostOfDetail } from './groove-detail.ts'
import { type DrawnRings, halfSection, overallHalf } from './half-section.ts'
import { mostOfRollerDetail, rollerDetail, rollerEnd } from './roller-detail.ts'
import { type Deviations, ringColumns } from './size-columns.ts'

/** The enlarged part: a groove, or the end of a roller between tracks. */
type Enlarged = Pick<Assembled, 'marked' | 'enlarged'>

/** The facts that distinguish the kinds of rings. */
type Kind = Pick<Assembled, 'faceCaption' | 'between'> & { readonly arrangement: 'radial' | 'caged' | 'roller' }

/** Two rings inside one another, as their sheet shows them. */
export function assembledRings(design: FullRingDesign, stock: Stock): Assembled {
  const { bearing } = design
  const hasCheeks = bearing.cheeks !== undefined
  return drawnRings(
    design,
    stock,
    hasCheeks ? rollerEnlarged(bearing) : grooveEnlarged(bearing, deviationsOf(design)),
    {
      arrangement: hasCheeks ? 'roller' : 'radial',
      faceCaption: hasCheeks ? CAPTIONS.faceWithoutCheek : CAPTIONS.face,
      between: (say) => `${DIMENSION_SYMBOLS.ballGap} ${say(bearing.ballGap)}`,
    },
  )
}

/** The same with a cage, which is open in the face view. */
export const assembledWithCage = (design: CagedDesign, stock: Stock): Assembled =>
  drawnRings(design, stock, grooveEnlarged(design.bearing, deviationsOf(design)), {
    arrangement: 'caged',
    faceCaption: design.bearing.cage.pieces === 2 ? CAPTIONS.faceWithoutHalfCage : CAPTIONS.faceCageCut,
    between: (say) => apart(`${DIMENSION_SYMBOLS.ballSpacing} ${say(design.bearing.ballSpacing)}`),
  })

const grooveEnlarged = (bearing: DrawnRings, deviations: Deviations): Enlarged => ({
  marked: { along: 0, reach: bearing.resolved.ballDiameter / 2 },
  enlarged: {
    most: (say, room) => mostOfDetail(bearing, deviations, say, room),
    draw: (say, scale, room) => grooveDetail(bearing, deviations, say, scale, room),
  },
})

const rollerEnlarged = (bearing: RollerBearing): Enlarged => ({
  marked: rollerEnd(bearing),
  enlarged: {
    most: (say, room) => mostOfRollerDetail(bearing, say, room),
    draw: (say, scale, room) => rollerDetail(bearing, say, scale, room),
  },
})

function drawnRings(
  design: FullRingDesign | CagedDesign,
  { split, cheekScrews, cage }: Stock,
  { marked, enlarged }: Enlarged,
  kind: Kind,
): Assembled {
  const { bearing, dimensions } = design
  const deviations = deviationsOf(design)
  const { radialInternalClearance: play, resolved } = bearing
  const mounting = resolved.input.making && mountingOf(bearing)
  const fasteners = fastenersIn(split, cheekScrews)
  const inTheWay = fasteners && cheekScrews ? screwsOfBothCheeks(fasteners) : fasteners
  const holes = [fasteners, driveHolesIn(mounting?.drive, inTheWay)].filter((each) => each !== undefined)
  const screws = split?.screws ?? cheekScrews
  const circle = split?.screwCircle ?? cheekScrews?.screwCircle
  return {
    ...kind,
    ring: bearing,
    dimensions,
    outside: bearing.outerRing.outsideDiameter,
    bore: bearing.innerRing.boreDiameter,
    wide: 2 * overallHalf(bearing),
    marked,
    section: (hatchSpacing, overhang) => halfSection(bearing, hatchSpacing, overhang),
    columns: (say, factor) => ringColumns(bearing, deviations, say, factor),
    face: (overhang, ballRole) => faceView(bearing, holes, overhang, ballRole),
    enlarged,
    holes,
    notes: {
      ...(isCaged(design) ? {} : { gap: { ...gapToNote(design), symbol: OUTER_CUT[kind.arrangement] } }),
      fits: clearancesToFit(design),
      play: { size: play, most: playLimits(play, resolved.input.units).max },
      ...(split && { split: { ring: split.ring, half: split.partingPlane } }),
      ...(screws && circle && { screws: { holes: screws, circle, ...(cheekScrews && { each: 'cheek' }) } }),
      // The season moves no size of a seat.
      ...(mounting && { mounting }),
      ...(isCaged(design) &&
        design.bearing.cage.pieces === 2 &&
        cage?.segments === undefined && { isCageCrossed: true }),
      ...(kind.arrangement === 'roller' && !cheekScrews && { hasPinnedCheeks: true }),
      ...(!screws && split?.dowels && { dowels: { holes: split.dowels, circle: split.screwCircle } }),
    },
  }
}

/** The size that is cut until the gap is right. */
const OUTER_CUT: Readonly<Record<Kind['arrangement'], string>> = {
  radial: DIMENSION_SYMBOLS['outerRing.grooveBottomDiameter'],
  caged: DIMENSION_SYMBOLS['outerRing.grooveBottomDiameter'],
  roller: DIMENSION_SYMBOLS['outerRing.trackDiameter'],
}
