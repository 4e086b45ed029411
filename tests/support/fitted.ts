import { type FitCorrection, fitCorrection } from '#shared/bearing/fit-correction/fit-correction.ts'
import type { FitCorrectionInput } from '#shared/bearing/fit-correction/input.ts'

type Asked = Pick<FitCorrectionInput, 'design' | 'readings'> & Partial<FitCorrectionInput>

/** A fit of the outer ring, of a groove with nothing before it, unless something else is said. */
export function fitted(asked: Asked): FitCorrection {
  const fit = fitCorrection({
    ring: 'outer',
    earlier: [],
    target: {},
    tools: {},
    removalHistory: [],
    ballsOnHand: [],
    ...asked,
  })
  if (!fit.ok) throw new Error(JSON.stringify(fit.error))
  return fit.value
}
