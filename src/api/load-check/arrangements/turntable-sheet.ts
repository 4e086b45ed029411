import type { SafeOffset, SafeOffsetCurve } from '#shared/questions/load/arrangements/safe-offsets.ts'
import type { PlateLoadCheck } from '#shared/questions/load/arrangements/thrust.ts'
import { inUnits } from '#shared/units/length.ts'
import { safeOffsetSheet } from '#src/drawings/sheets/safe-offset.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { roundedDown } from '#src/words/figure.ts'
import { type Spoken, safeOffsetWords } from '#src/words/load-check.ts'

/** The fastest speed shown, over the speed of a hand: nobody turns a turntable faster. */
const SPEEDS_SHOWN = 2.5

/** The input with which a worker thread calculates the curve. */
export const safeOffsetCurveOf = ({ load, turntable, tipsBeyond, handTurned }: PlateLoadCheck): SafeOffsetCurve => ({
  check: { load, turntable, tipsBeyond },
  fastest: SPEEDS_SHOWN * handTurned,
})

/** How far from the axis the load of a turntable may stand at each speed, as a picture. */
export function toSafeOffsetSheet(
  check: PlateLoadCheck,
  curve: readonly SafeOffset[],
  spoken: Spoken,
  isFrictionStated: boolean,
): string {
  const { byHand, ...words } = safeOffsetWords(check, spoken, isFrictionStated)
  return toSvg(
    safeOffsetSheet({
      ...words,
      // Where its words say that it is.
      byHand: { speed: roundedDown(check.handTurned), text: byHand },
      curve: curve.map(({ offset, speed }) => ({ offset: inUnits(offset, spoken.units), speed })),
    }),
  )
}
