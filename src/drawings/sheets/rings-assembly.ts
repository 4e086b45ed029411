import type { Bearing } from '#shared/bearing/bearing.ts'
import type { Design } from '#shared/bearing/design.ts'
import type { Assembled } from './assembly.ts'
import { faceView } from './face.ts'
import { detailScale, grooveDetail } from './groove-detail.ts'
import { halfSection, overallHalf } from './half-section.ts'
import { rollerDetail, rollerDetailScale, rollerEnd } from './roller-detail.ts'
import { sizeColumns } from './size-columns.ts'

const TITLES = { balls: 'Ball bearing', rollers: 'Roller bearing' } as const
/** What is enlarged: a groove, or the end of a roller between tracks. */
const ENLARGED = {
  groove: {
    words: 'enlarged groove',
    marked: ({ settled }: Bearing) => ({ along: 0, reach: settled.ballDiameter / 2 }),
    scale: detailScale,
    draw: grooveDetail,
  },
  track: { words: 'enlarged end of a roller', marked: rollerEnd, scale: rollerDetailScale, draw: rollerDetail },
} as const

/** Two rings inside one another, as their sheet shows them. */
export function assembledRings({ bearing, dimensions }: Design): Assembled {
  const { settled, outerRing, innerRing, cheeks } = bearing
  const { traits, input } = settled
  const { units, balls } = input
  const enlarged = ENLARGED[traits.raceway]
  const title = TITLES[traits.rolls]
  return {
    ring: bearing,
    dimensions,
    outside: outerRing.outsideDiameter,
    wide: 2 * overallHalf(bearing),
    marked: enlarged.marked(bearing),
    section: (hatchSpacing, overhang) => halfSection(bearing, hatchSpacing, overhang),
    columns: (say, factor) => sizeColumns(bearing, say, factor),
    face: (overhang, ballRole) => faceView(bearing, overhang, ballRole),
    enlarged: {
      scale: (say, room) => enlarged.scale(bearing, say, room),
      draw: (say, scale, room) => enlarged.draw(bearing, say, scale, room),
    },
    words: {
      title,
      section: 'half section',
      face: cheeks === undefined ? 'face' : 'face, cheek off,',
      description: (say) =>
        [
          `Half section, face view and ${enlarged.words} of a wooden ${title.toLowerCase()} with ${balls.count} ${traits.rolls}`,
          `of ${say(settled.ballDiameter)} ${units}, ${say(outerRing.outsideDiameter)} ${units} outside,`,
          `with a bore of ${say(innerRing.boreDiameter)} ${units}.`,
        ].join(' '),
    },
  }
}
