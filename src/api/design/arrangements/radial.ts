import type { Static } from 'typebox'
import type { RadialBearing, RadialDesign } from '#shared/bearing/arrangements.ts'
import { makingAnswer } from '#src/api/design/making.ts'
import type { Making } from '#src/api/design/making-schema.ts'
import * as parts from '#src/api/design/parts.ts'
import { designResponse, toDesignAnswer } from '#src/api/design/present.ts'
import { showLengths, shownLength } from '#src/api/length.ts'
import { showNumber, shownNumber } from '#src/api/number.ts'
import { choiceOf, flag, integer, named, object } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { radialSteps } from '#src/words/assembly.ts'

const WAYS_IN = {
  fromInside: shownLength('Ball gap needed to push the last ball straight out from the middle.'),
  overLand: shownLength("Ball gap needed to bring it in from the side, over the outer ring's land."),
}
const Assembly = named('Assembly', 'Assembly of the bearing.', {
  split: choiceOf('The ring that comes apart at the middle of its groove.', ['inner-ring', 'outer-ring', 'none']),
  easiestWay: choiceOf('The way in that needs the smallest gap for the last ball.', [
    'from-inside',
    'over-land',
    'open-side',
  ]),
  waysIn: object('The ball gap that each way in needs.', WAYS_IN),
  eccentricFilling: object('How many balls go in with the inner ring all the way to one side.', {
    mostBalls: integer(
      'Balls that lie in half a turn, or a little more by the play: all that two one-piece rings could take.',
    ),
    roomBetweenLands: flag('Whether a ball passes between the lands with the inner ring set aside.'),
  }),
  ...parts.STEPS,
})

export const RadialDesignResponse = designResponse(
  'radial',
  { $id: 'RadialDesignResponse', description: 'Every size to cut, the gauges, and what to watch.' },
  {
    ...parts.BALL_RING,
    gapPerGrooveDepth: shownNumber('Change of the ball gap per unit of groove depth.'),
    gapPerBallDiameter: parts.gapPerBallDiameter,
    ...parts.RINGS,
    ...parts.LANDS,
    ...parts.PLAY,
    gauge: parts.gauge,
    assembly: refTo<typeof Assembly>('Assembly'),
  },
  refTo<typeof Making>('Making'),
)

function toResponse(design: RadialDesign): Static<typeof RadialDesignResponse> {
  const { bearing } = design
  const body = {
    ...parts.toBallRing(bearing),
    gapPerGrooveDepth: showNumber(bearing.gapPerGrooveDepth),
    gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
    ...parts.toRings(bearing),
    ...parts.toLands(bearing),
    ...parts.toPlay(bearing),
    gauge: parts.toGauge(bearing, parts.beforeFinish(bearing.resolved)),
    assembly: toAssembly(bearing),
  }
  return toDesignAnswer('radial', design, body, makingAnswer(bearing))
}

function toAssembly({ assembly, eccentricFilling, resolved }: RadialBearing): Static<typeof Assembly> {
  const { easiestWay } = assembly
  const { split, waysIn, input } = resolved
  return {
    split,
    easiestWay,
    waysIn: showLengths(WAYS_IN, waysIn, input.units),
    eccentricFilling: { mostBalls: eccentricFilling.mostBalls, roomBetweenLands: eccentricFilling.roomBetweenLands },
    steps: radialSteps(easiestWay, split),
  }
}

export const RADIAL = { response: RadialDesignResponse, schemas: [Assembly, RadialDesignResponse], toResponse }
