import { ARRANGEMENTS, type CagedBearing } from '#shared/bearing/arrangements.ts'
import { cutDeviation, SHARP_TOOL } from '#shared/making/tool-error.ts'
import { ballsOf, innerGrooveOf, outerGrooveOf } from '#shared/questions/fit/bearing-parts.ts'
import { type Fitted, playBand, RINGS } from '#shared/questions/fit/fit-setup.ts'
import { cutRings, otherBalls, pieceOf, remadePair } from '#shared/questions/fit/remade.ts'
import type { Change, Remade } from '#shared/questions/fit/rescue.ts'
import { pitchRadius } from '#shared/questions/fit/ring-law.ts'
import { fail, ok } from '#shared/result.ts'
import { mm } from '#shared/units/length.ts'

/** The inner ring inside balls that a cage will hold: the outer groove is as deep as a sharp tool leaves it. */
export const CAGED: Fitted<CagedBearing> = {
  parts: RINGS,
  setupOf(bearing, part) {
    if (part === 'outer') return fail([{ code: 'gap-not-cut', path: '/ring' }])
    const { resolved, outerRing } = bearing
    return ok({
      resolved,
      subject: {
        cuts: 'inner',
        balls: ballsOf(resolved, outerRing.grooveBottomDiameter / 2, () => mm(0)),
        outer: outerGrooveOf(bearing),
        inner: innerGrooveOf(bearing),
        outerKnown: { by: 'groove', deviation: cutDeviation(SHARP_TOOL, outerRing.grooveDepth) },
      },
      workpiece: { ...pieceOf(bearing, 'inner'), remade: (change) => remadeCaged(bearing, change) },
      band: playBand(resolved.radialInternalClearance),
    })
  },
}

/** The balls stand where the outer groove has them, in a cage made for them. */
function remadeCaged(bearing: CagedBearing, change: Change): Remade | undefined {
  const { input, pockets, ballDiameter } = bearing.resolved
  const { web: _web, ...cage } = input.cage ?? {}
  const pitch = pitchRadius(outerGrooveOf(bearing).seat, change.x, change.diameter)
  const made = ARRANGEMENTS.caged.bearingOf({
    ...input,
    balls: otherBalls(input, change),
    ...cutRings(bearing, change),
    cage: { ...cage, pitchDiameter: mm(2 * pitch) },
  })
  if (!made.ok) return undefined
  return {
    ...remadePair(bearing, made.value, 0),
    pocketDiameter: pockets.pocketDiameter + change.diameter - ballDiameter,
  }
}
