import { type PlateLoadCheck, safeOffsets } from '#shared/questions/load/arrangements/thrust.ts'
import { inUnits } from '#shared/units/length.ts'
import { safeOffsetSheet } from '#src/drawings/sheets/safe-offset.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { type Spoken, safeOffsetWords } from '#src/words/load-check.ts'

/** Of the speed of a hand: nobody turns a turntable faster. */
const SPEEDS_SHOWN = 2.5

/** How far from the axis the load of a turntable may stand at each speed, as a picture. */
export function toSafeOffsetSheet(check: PlateLoadCheck, spoken: Spoken): string {
  const { byHand, ...words } = safeOffsetWords(check, spoken)
  return toSvg(
    safeOffsetSheet({
      ...words,
      byHand: { speed: check.handTurned, text: byHand },
      curve: safeOffsets(check, SPEEDS_SHOWN * check.handTurned).map(({ offset, speed }) => ({
        offset: inUnits(offset, spoken.units),
        speed,
      })),
    }),
  )
}
