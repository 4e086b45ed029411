import { type Static, Type } from 'typebox'
import type { RadialBearing, RadialDesign } from '#shared/bearing/arrangements.ts'
import type { StockInput } from '#shared/making/input.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import {
  beforeFinish,
  toAsked,
  toBallRing,
  toGauge,
  toLands,
  toNotes,
  toPlay,
  toRings,
  toTable,
} from '#src/api/design/present.ts'
import {
  type Gauge,
  gapPerBallDiameter,
  type InnerRing,
  LANDS,
  type OuterRing,
  PLAY,
  RING,
} from '#src/api/design/schema.ts'
import { stockAnswer } from '#src/api/design/stock.ts'
import type { Stock } from '#src/api/design/stock-schema.ts'
import { requestRef } from '#src/api/design-input.ts'
import type { Dimension } from '#src/api/dimension.ts'
import { show, shownLength } from '#src/api/length.ts'
import { showNumber, shownNumber } from '#src/api/number.ts'
import { refTo } from '#src/http/schema.ts'
import { radialSteps } from '#src/words/assembly.ts'
import { designSummary } from '#src/words/summary.ts'

const Assembly = Type.Object(
  {
    split: Type.Enum(['inner-ring', 'outer-ring', 'none'], {
      type: 'string',
      description: 'The ring that comes apart at the middle of its groove.',
    }),
    easiestWay: Type.Enum(['from-inside', 'over-land', 'open-side'], {
      type: 'string',
      description: 'The way in that needs the smallest gap for the last ball.',
    }),
    waysIn: Type.Object(
      {
        fromInside: shownLength('Ball gap needed to push the last ball straight out from the middle.'),
        overLand: shownLength("Ball gap needed to bring it in from the side, over the outer ring's land."),
      },
      { description: 'The ball gap that each way in needs.' },
    ),
    eccentricFilling: Type.Object(
      {
        mostBalls: Type.Integer({
          description:
            'Balls that lie in half a turn, or a little more by the play: all that two one-piece rings could take.',
        }),
        roomBetweenLands: Type.Boolean({
          description: 'Whether a ball passes between the lands with the inner ring set aside.',
        }),
      },
      { description: 'How many balls go in with the inner ring all the way to one side.' },
    ),
    steps: Type.Array(Type.String(), { description: 'Steps in order.' }),
  },
  { $id: 'Assembly', description: 'Assembly of the bearing.' },
)

export const RadialDesignResponse = Type.Object(
  answerOf(['radial'], requestRef('radial'), {
    ...RING,
    gapPerGrooveDepth: shownNumber('Change of the ball gap per unit of groove depth.'),
    gapPerBallDiameter,
    outerRing: refTo<typeof OuterRing>('OuterRing'),
    innerRing: refTo<typeof InnerRing>('InnerRing'),
    ...LANDS,
    ...PLAY,
    gauge: refTo<typeof Gauge>('Gauge'),
    assembly: refTo<typeof Assembly>('Assembly'),
    dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
    stock: Type.Optional(refTo<typeof Stock>('Stock')),
  }),
  { $id: 'RadialDesignResponse', description: 'Every size to cut, the gauges, and what to watch.' },
)
export type RadialDesignResponse = Static<typeof RadialDesignResponse>

/** A design in the caller's units and in words. */
function toResponse(design: RadialDesign, input?: StockInput): RadialDesignResponse {
  const { bearing } = design
  const stock = input && stockAnswer(bearing, input)
  return answer(
    { ...toAsked('radial', bearing.resolved, stock), summary: designSummary(design) },
    {
      ...toBallRing(bearing),
      gapPerGrooveDepth: showNumber(bearing.gapPerGrooveDepth),
      gapPerBallDiameter: showNumber(bearing.gapPerBallDiameter),
      ...toRings(bearing),
      ...toLands(bearing),
      ...toPlay(bearing),
      gauge: toGauge(bearing, beforeFinish(bearing.resolved)),
      assembly: toAssembly(bearing),
      ...toTable(design, stock),
    },
    toNotes(design, stock),
  )
}

function toAssembly({ assembly, eccentricFilling, resolved }: RadialBearing): RadialDesignResponse['assembly'] {
  const { units } = resolved.input
  const { easiestWay } = assembly
  const { split, waysIn } = resolved
  return {
    split,
    easiestWay,
    waysIn: { fromInside: show(waysIn.fromInside, units), overLand: show(waysIn.overLand, units) },
    eccentricFilling: { mostBalls: eccentricFilling.mostBalls, roomBetweenLands: eccentricFilling.roomBetweenLands },
    steps: radialSteps(easiestWay, split),
  }
}

export const RADIAL = { response: RadialDesignResponse, schemas: [Assembly, RadialDesignResponse], toResponse }
