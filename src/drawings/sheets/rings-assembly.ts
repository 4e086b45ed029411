import type { CagedDesign, FullRingBearing, FullRingDesign } from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import { DIMENSION_SYMBOLS } from '#shared/bearing/dimensions.ts'
import type { Assembled } from './assembly.ts'
import { faceView } from './face.ts'
import { detailScale, grooveDetail } from './groove-detail.ts'
import { type DrawnRings, halfSection, overallHalf } from './half-section.ts'
import { rollerDetail, rollerDetailScale, rollerEnd } from './roller-detail.ts'
import { sizeColumns } from './size-columns.ts'

/** What is enlarged, and how that is called: a groove, or the end of a roller between tracks. */
type Enlarged = Pick<Assembled, 'marked' | 'enlarged'> & { readonly called: string }

/** What each kind of rings says of itself. */
type Said = { readonly title: string; readonly face: string; readonly between: Assembled['words']['between'] }

/** Two rings inside one another, as their sheet shows them. */
export function assembledRings(design: FullRingDesign): Assembled {
  const { bearing } = design
  const isTrack = bearing.settled.traits.raceway === 'track'
  return drawnRings(design, isTrack ? rollerEnlarged(bearing) : grooveEnlarged(bearing), {
    title: isTrack ? 'Roller bearing' : 'Ball bearing',
    face: isTrack ? 'face, cheek off,' : 'face',
    between: (say) => `${DIMENSION_SYMBOLS.ballGap} ${say(bearing.ballGap)}`,
  })
}

/** The same with a cage, which is open in the face view. */
export const assembledWithCage = (design: CagedDesign): Assembled =>
  drawnRings(design, grooveEnlarged(design.bearing), {
    title: 'Ball bearing',
    face: design.bearing.cage.pieces === 2 ? 'face, half the cage off,' : 'face, cage cut at mid width,',
    between: (say) => `${DIMENSION_SYMBOLS.ballSpacing} ${say(design.bearing.ballSpacing)}`,
  })

const grooveEnlarged = (bearing: DrawnRings): Enlarged => ({
  called: 'enlarged groove',
  marked: { along: 0, reach: bearing.settled.ballDiameter / 2 },
  enlarged: {
    scale: (say, room) => detailScale(bearing, say, room),
    draw: (say, scale, room) => grooveDetail(bearing, say, scale, room),
  },
})

const rollerEnlarged = (bearing: FullRingBearing): Enlarged => ({
  called: 'enlarged end of a roller',
  marked: rollerEnd(bearing),
  enlarged: {
    scale: (say, room) => rollerDetailScale(bearing, say, room),
    draw: (say, scale, room) => rollerDetail(bearing, say, scale, room),
  },
})

function drawnRings(
  { bearing, dimensions }: DesignOf<DrawnRings>,
  { called, marked, enlarged }: Enlarged,
  { title, face, between }: Said,
): Assembled {
  const { settled, outerRing, innerRing } = bearing
  const { traits, input } = settled
  const { units, balls } = input
  return {
    ring: bearing,
    dimensions,
    outside: outerRing.outsideDiameter,
    wide: 2 * overallHalf(bearing),
    marked,
    section: (hatchSpacing, overhang) => halfSection(bearing, hatchSpacing, overhang),
    columns: (say, factor) => sizeColumns(bearing, say, factor),
    face: (overhang, ballRole) => faceView(bearing, overhang, ballRole),
    enlarged,
    words: {
      title,
      section: 'half section',
      face,
      between,
      description: (say) =>
        [
          `Half section, face view and ${called} of a wooden ${title.toLowerCase()} with ${balls.count} ${traits.rolls}`,
          `of ${say(settled.ballDiameter)} ${units}, ${say(outerRing.outsideDiameter)} ${units} outside,`,
          `with a bore of ${say(innerRing.boreDiameter)} ${units}.`,
        ].join(' '),
    },
  }
}
