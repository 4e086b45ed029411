import type { Design } from '#shared/bearing/arrangements.ts'
import { trialDepth } from '#shared/making/cutting-allowances.ts'
import { gaugeKitOf } from '#shared/making/gauge-kit.ts'
import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import { caliperFigure } from '#src/words/figure.ts'
import { firstCutLine } from '#src/words/kiosk/lathe.ts'
import type { Terms } from '#src/words/terms.ts'

interface Shown {
  readonly design?: Design
  readonly terms: Terms
}

/** How far to cut a fresh blank before there is anything to measure: as far as the job sheet has it. */
export function firstCut({ design, terms }: Shown, of: FittedRing): string | undefined {
  if (design === undefined) return undefined
  const { bearing } = design
  const { units } = bearing.resolved.input
  if ('plate' in bearing)
    return firstCutLine(caliperFigure(trialDepth(bearing.plate.grooveDepth), units), undefined, terms)
  const block = gaugeKitOf(bearing).setBlocks.find(({ ring, at }) => ring === `${of}Ring` && at === 'stop')
  return block && firstCutLine(caliperFigure(block.length, units), terms.acrossIt, terms)
}
