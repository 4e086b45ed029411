import type { Static } from 'typebox'
import type { RollerDesign } from '#shared/bearing/arrangements.ts'
import { makingAnswer } from '#src/api/design/making.ts'
import type { Making } from '#src/api/design/making-schema.ts'
import * as parts from '#src/api/design/parts.ts'
import { designResponse, toDesignAnswer } from '#src/api/design/present.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { named, shownBy } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { ROLLER_STEPS } from '#src/words/assembly.ts'

const PLAIN_RING = {
  trackDiameter: shownLength('Diameter of the plain cylinder on which the rollers run.'),
  wall: shownLength('Wood left behind the track: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Width of the ring along the axis.'),
}
const PlainOuterRing = named('PlainOuterRing', 'Finished sizes of the ring.', {
  outsideDiameter: shownLength('Outside diameter.'),
  ...PLAIN_RING,
})
const PlainInnerRing = named('PlainInnerRing', 'Finished sizes. It is as wide as the rollers are long.', {
  boreDiameter: shownLength('Bore.'),
  ...PLAIN_RING,
})
const Cheeks = named('Cheeks', 'Two discs on the sides of the outer ring that keep the rollers in.', {
  outsideDiameter: shownLength('Outside diameter: that of the outer ring.'),
  holeDiameter: shownLength('Diameter of the hole: the cheek also keeps the inner ring in, and clears the bore.'),
  thickness: shownLength('Thickness of each cheek.'),
})

const RollerDesignResponse = designResponse(
  'roller',
  {
    $id: 'RollerDesignResponse',
    description: 'Sizes of a bearing of rollers between plain rings, and its warnings. `balls` are the rollers.',
  },
  {
    ...parts.BALL_RING,
    gapPerBallDiameter: parts.gapPerBallDiameter,
    rollerLength: shownLength('Length of each roller.'),
    outerRing: refTo<typeof PlainOuterRing>('PlainOuterRing'),
    innerRing: refTo<typeof PlainInnerRing>('PlainInnerRing'),
    cheeks: refTo<typeof Cheeks>('Cheeks'),
    ...parts.PLAY,
    gauge: parts.gauge,
    assembly: parts.stepsOfAssembly,
  },
  refTo<typeof Making>('Making'),
)

function toResponse(design: RollerDesign): Static<typeof RollerDesignResponse> {
  const { bearing } = design
  const { outerRing: outer, innerRing: inner, cheeks, resolved } = bearing
  const { units } = resolved.input
  const body = {
    ...parts.toBallRing(bearing),
    gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
    rollerLength: show(resolved.rollerLength, units),
    outerRing: shownBy(PlainOuterRing, { ...outer, trackDiameter: outer.grooveBottomDiameter }, units),
    innerRing: shownBy(PlainInnerRing, { ...inner, trackDiameter: inner.grooveBottomDiameter }, units),
    cheeks: shownBy(Cheeks, cheeks, units),
    ...parts.toPlay(bearing),
    gauge: parts.toGauge(bearing, parts.beforeFinish(resolved)),
    assembly: { steps: [...ROLLER_STEPS] },
  }
  return toDesignAnswer('roller', design, body, makingAnswer(bearing))
}

export const ROLLER = {
  response: RollerDesignResponse,
  schemas: [PlainOuterRing, PlainInnerRing, Cheeks, RollerDesignResponse],
  toResponse,
}
