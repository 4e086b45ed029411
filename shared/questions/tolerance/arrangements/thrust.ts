import type { ThrustBearing } from '#shared/bearing/arrangements.ts'
import { ballGapOnCircle, gapPerEachDiameterOnCircle, type HeightOf } from '#shared/geometry/balls-on-a-circle.ts'
import { meanRise } from '#shared/geometry/plate-on-balls.ts'
import type {
  Break,
  CheckModel,
  FigureName,
  Slopes,
  WeatherReach,
  WorstCase,
} from '#shared/questions/tolerance/check-model.ts'
import type { PlateCheck } from '#shared/questions/tolerance/checked.ts'
import { STILL } from '#shared/questions/tolerance/climate-movement.ts'
import type { ContributorName } from '#shared/questions/tolerance/input.ts'
import { FARTHEST_ROUND, MOST_UNEVEN } from '#shared/questions/tolerance/reach.ts'
import { type GroovedRing, innerCentre, seatSlopes, sitsOnBottom } from '#shared/questions/tolerance/seats.ts'
import { extremeBalls, farthest } from '#shared/questions/tolerance/worst-ends.ts'
import { type Ends, varianceOf } from '#shared/statistics/distribution.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import { plateEvaluation } from './thrust-trials.ts'

/*
 * A full ring of balls between two plates, each with a groove of its own cut by the same cutter. Pressed together by what they
 * carry, alike but for the radius of their circles, the plates hold each ball midway between both: turned over, it is the same
 * pair, so neither has more say. So the ring closes on the mean of both circles, and a plate that is cut off by x moves it by
 * x / 2. How deep the grooves are moves the space between the faces and nothing else. The upper plate finds its own middle.
 */

export const plateModel = (check: PlateCheck): CheckModel => ({
  canBind: false,
  nominal: { ballGap: check.bearing.ballGap, play: check.bearing.plateGap },
  slopes: slopesOf(check),
  extremes: () => extremes(check),
  breaks: (reach, weather) => breaks(check, reach, weather),
  shifts: (from, to) => shifts(check, from, to),
  placeAt: (shift) => ({
    grooveDepth: check.bearing.plate.grooveDepth,
    grooveBottomDiameter: mm(check.bearing.plate.grooveCircleDiameter + 2 * shift),
    deeper: mm(shift),
  }),
  evaluation: (chunk, weather) => plateEvaluation(check, faceOf(check.bearing), chunk, weather),
})

/** About how much further apart the faces stand than on balls of the mean size, since the upper plate rests on three of the largest. */
export function riseOnLargest({ bearing, differences }: PlateCheck): Mm {
  const balls = differences.get('ballDiameter')
  if (balls === undefined) return mm(0)
  const { ballDiameter, input } = bearing.resolved
  const { perSeatRadius } = seatSlopes(faceOf(bearing), ballDiameter / 2)
  return meanRise(input.balls.count, mm(perSeatRadius * Math.sqrt(varianceOf(balls))))
}

/** A plate's groove from its face: to a ball it is that of a ring without end, its land at 0. */
const faceOf = ({ plate }: ThrustBearing): GroovedRing => ({
  bottomRadius: -plate.grooveDepth,
  landRadius: 0,
  grooveRadius: plate.grooveRadius,
  grooveDepth: plate.grooveDepth,
})

const NOT_OF_PLATES = {
  outerGrooveBottomRadius: 0,
  innerGrooveBottomRadius: 0,
  outOfRound: 0,
  finishFilm: 0,
} as const
const NO_RINGS = { outer: 0, inner: 0 } as const

function slopesOf({ bearing }: PlateCheck): Readonly<Record<FigureName, Slopes>> {
  const { ballDiameter, input } = bearing.resolved
  const { count } = input.balls
  const equal = Array.from({ length: count }, () => ballDiameter as number)
  const { perSeatRadius, perDepth } = seatSlopes(faceOf(bearing), ballDiameter / 2)
  return {
    ballGap: {
      eachBall: gapPerEachDiameterOnCircle(bearing.pitchRadius, equal),
      of: {
        ...NOT_OF_PLATES,
        ballLotMean: bearing.gapPerBallDiameter,
        grooveCircleRadius: bearing.gapPerPitchRadius / 2,
        grooveDepth: 0,
      },
      perUnevenness: 0,
      ofRing: NO_RINGS,
    },
    // A centre stands so high over one face and so deep under the other.
    play: {
      eachBall: equal.map(() => perSeatRadius / count),
      of: { ...NOT_OF_PLATES, ballLotMean: perSeatRadius, grooveCircleRadius: 0, grooveDepth: -perDepth },
      perUnevenness: 0,
      ofRing: NO_RINGS,
    },
  }
}

/**
 * The gap falls with each ball and rises with the circle; the space between the faces rises with the balls and falls with
 * depth. The weather moves all at once: each of its ends is looked at.
 */
function extremes(check: PlateCheck): WorstCase {
  const [lot, circle, depth] = [
    farthest(check, 'ballLotMean'),
    farthest(check, 'grooveCircleRadius'),
    farthest(check, 'grooveDepth'),
  ]
  const ends = check.climate?.ends ?? [STILL]
  const [tight, loose] = [extremeBalls(check, 'tight'), extremeBalls(check, 'loose')]
  const { pitchRadius } = check.bearing
  const face = faceOf(check.bearing)
  const gap = (out: number, balls: readonly number[]) =>
    ballGapOnCircle(mm(pitchRadius + out), balls, heightIn(face, 0))
  const apart = (balls: readonly number[], deeper: number) => mm(2 * heightIn(face, deeper)(meanOf(balls)))
  const cases = ends.map((end) => {
    const largest = tight.map((diameter) => diameter + lot.most + end.ballLotMean)
    const smallest = loose.map((diameter) => diameter + lot.least + end.ballLotMean)
    return {
      ballGap: {
        min: gap(circle.least + end.grooveCircleRadius, largest),
        max: gap(circle.most + end.grooveCircleRadius, smallest),
      },
      play: { min: apart(smallest, depth.most), max: apart(largest, depth.least) },
    }
  })
  const widest = (figure: FigureName) => ({
    min: mm(Math.min(...cases.map(({ [figure]: { min } }) => min))),
    max: mm(Math.max(...cases.map(({ [figure]: { max } }) => max))),
  })
  return { ballGap: widest('ballGap'), play: widest('play') }
}

/** How high a ball's centre stands over a face, by its diameter. */
const heightIn =
  (face: GroovedRing, deeper: number): HeightOf =>
  (diameter) =>
    innerCentre(face, diameter / 2, -deeper)

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/** The values beyond which there is no bearing of two plates. */
function breaks(
  { bearing }: PlateCheck,
  reach: (name: ContributorName) => Ends,
  weather: WeatherReach,
): readonly Break[] {
  const { ballDiameter, input } = bearing.resolved
  const [each, lot, circle, depth] = [
    reach('ballDiameter'),
    reach('ballLotMean'),
    reach('grooveCircleRadius'),
    reach('grooveDepth'),
  ]
  const smallest = ballDiameter + each.least + lot.least + weather.ballLotMean.least
  const largest = ballDiameter + each.most + lot.most + weather.ballLotMean.most
  if (!(smallest > 0 && largest <= MOST_UNEVEN * smallest)) {
    return [{ names: ['ballDiameter', 'ballLotMean', 'climate'], because: 'balls' }]
  }
  if (!isGroove(faceOf(bearing), smallest / 2, depth)) return [{ names: ['grooveDepth'], because: 'plate-groove' }]
  const sine = largest / 2 / (bearing.pitchRadius + circle.least + weather.grooveCircleRadius.least)
  const round = sine > 0 && sine < 1 ? 2 * (input.balls.count - 1) * Math.asin(sine) : Number.NaN
  if (round < FARTHEST_ROUND) return []
  return [{ names: ['ballDiameter', 'ballLotMean', 'grooveCircleRadius', 'climate'], because: 'closes' }]
}

/** Whether the groove keeps some depth, is no more than a half circle, and lets the smallest ball stay out of the wood. */
function isGroove(face: GroovedRing, smallestRadius: number, { least, most }: Ends): boolean {
  const deepest = face.grooveDepth + most
  const staysOut = sitsOnBottom(face, smallestRadius)
    ? smallestRadius > deepest
    : heightIn(face, most)(2 * smallestRadius) > 0
  return face.grooveDepth + least > 0 && deepest <= face.grooveRadius && staysOut
}

/** Least part of the wood on either side of a groove that is left. Common practice, no source. */
const LEAST_WOOD = 0.01

function shifts({ bearing: { plate } }: PlateCheck, from: number, to: number): readonly [from: number, to: number] {
  const share = 1 - LEAST_WOOD
  return [Math.max(from, -share * plate.innerWall), Math.min(to, share * plate.wall)]
}
