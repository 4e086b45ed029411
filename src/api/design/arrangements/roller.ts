import { type Static, Type } from 'typebox'
import type { RollerDesign } from '#shared/bearing/arrangements.ts'
import type { Ring } from '#shared/bearing/rings.ts'
import type { StockInput } from '#shared/making/input.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import { beforeFinish, toAsked, toBallRing, toGauge, toNotes, toPlay, toTable } from '#src/api/design/present.ts'
import { type Gauge, gapPerBallDiameter, PLAY, RING, type StepsOfAssembly } from '#src/api/design/schema.ts'
import { stockAnswer } from '#src/api/design/stock.ts'
import type { Stock } from '#src/api/design/stock-schema.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import { ROLLER_STEPS } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'

const plainRing = {
  trackDiameter: shownLength('Diameter of the plain cylinder on which the rollers run.'),
  wall: shownLength('Wood left behind the track: to the outside (outer ring), to the bore (inner ring).'),
  width: shownLength('Width of the ring along the axis.'),
}

const PlainOuterRing = Type.Object(
  { outsideDiameter: shownLength('Outside diameter.'), ...plainRing },
  { $id: 'PlainOuterRing', description: 'Finished sizes of the ring.' },
)
const PlainInnerRing = Type.Object(
  { boreDiameter: shownLength('Bore.'), ...plainRing },
  { $id: 'PlainInnerRing', description: 'Finished sizes. It is as wide as the rollers are long.' },
)
const Cheeks = Type.Object(
  {
    outsideDiameter: shownLength('Outside diameter: that of the outer ring.'),
    holeDiameter: shownLength('Diameter of the hole: the cheek also keeps the inner ring in, and clears the bore.'),
    thickness: shownLength('Thickness of each cheek.'),
  },
  { $id: 'Cheeks', description: 'Two discs on the sides of the outer ring that keep the rollers in.' },
)
const RollerDesignResponse = Type.Object(
  answerOf(['roller'], requestRef('roller'), {
    ...RING,
    gapPerBallDiameter,
    rollerLength: shownLength('Length of each roller.'),
    outerRing: refTo<typeof PlainOuterRing>('PlainOuterRing'),
    innerRing: refTo<typeof PlainInnerRing>('PlainInnerRing'),
    cheeks: refTo<typeof Cheeks>('Cheeks'),
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof StepsOfAssembly>('StepsOfAssembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  {
    $id: 'RollerDesignResponse',
    description: 'Sizes of a bearing of rollers between plain rings, and its warnings. `balls` are the rollers.',
  },
)
type RollerDesignResponse = Static<typeof RollerDesignResponse>

/** A design of rollers between plain rings, in the caller's units and in words. */
function toResponse(design: RollerDesign, input?: StockInput): RollerDesignResponse {
  const { bearing } = design
  const stock = input && stockAnswer(bearing, input)
  const { outerRing: outer, innerRing: inner, cheeks, resolved } = bearing
  const { units } = resolved.input
  const size = (length: Mm) => show(length, units)
  return answer(
    { ...toAsked('roller', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      rollerLength: size(resolved.rollerLength),
      outerRing: { outsideDiameter: size(outer.outsideDiameter), ...toPlainRing(outer, units) },
      innerRing: { boreDiameter: size(inner.boreDiameter), ...toPlainRing(inner, units) },
      cheeks: {
        outsideDiameter: size(cheeks.outsideDiameter),
        holeDiameter: size(cheeks.holeDiameter),
        thickness: size(cheeks.thickness),
      },
      ...toPlay(bearing),
      gauge: toGauge(bearing, beforeFinish(resolved)),
      assembly: { steps: [...ROLLER_STEPS] },
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

const toPlainRing = ({ grooveBottomDiameter: trackDiameter, wall, width }: Ring, units: Units) => ({
  trackDiameter: show(trackDiameter, units),
  wall: show(wall, units),
  width: show(width, units),
})

export const ROLLER = {
  response: RollerDesignResponse,
  schemas: [PlainOuterRing, PlainInnerRing, Cheeks, RollerDesignResponse],
  toResponse,
}
