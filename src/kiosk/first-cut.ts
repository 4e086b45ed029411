import type { ArrangementName, Design } from '#shared/bearing/arrangements.ts'
import { trialDepth } from '#shared/making/cutting-allowances.ts'
import { type GaugeKit, gaugeKitOf } from '#shared/making/gauge-kit.ts'
import type { FittedRing } from '#shared/questions/fit/fit-setup.ts'
import type { Mm } from '#shared/units/length.ts'
import { caliperFigure } from '#src/words/figure.ts'
import { cutUntil, deepOnCircle, firstCutLine, madeBesides, thenToPlug } from '#src/words/kiosk/lathe.ts'
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
  if ('plate' in bearing) {
    const { grooveDepth, grooveCircleDiameter } = bearing.plate
    const where = deepOnCircle(caliperFigure(grooveCircleDiameter, units))
    return firstCutLine(caliperFigure(trialDepth(grooveDepth), units), where, terms)
  }
  const stop = stopOf(gaugeKitOf(bearing), of)
  return stop && firstCutLine(caliperFigure(stop, units), terms.acrossIt, terms)
}

const stopOf = ({ setBlocks }: GaugeKit, of: FittedRing): Mm | undefined =>
  setBlocks.find(({ ring, at }) => ring === `${of}Ring` && at === 'stop')?.length

/** How far to cut a groove whose balls leave no gap, and what then. Undefined of a bearing that has none. */
export function cutToPlug({
  design,
  terms,
}: Shown): { readonly headline: string; readonly summary: string } | undefined {
  if (design === undefined || 'plate' in design.bearing) return undefined
  const { units } = design.bearing.resolved.input
  const kit = gaugeKitOf(design.bearing)
  const stop = stopOf(kit, 'outer')
  const plug = kit.plugs.find(({ kind }) => kind === 'snug')
  if (stop === undefined || plug === undefined) return undefined
  return {
    headline: cutUntil(caliperFigure(stop, units), terms.acrossIt),
    summary: thenToPlug(caliperFigure(plug.diameter, units), terms),
  }
}

/** What is made besides the raceways, and when. */
export function besidesOf({
  arrangement,
  design,
  terms,
}: Shown & { readonly arrangement: ArrangementName }): string | undefined {
  if (design === undefined) return undefined
  const { bearing } = design
  const depth = 'plate' in bearing ? caliperFigure(bearing.plate.grooveDepth, bearing.resolved.input.units) : ''
  return madeBesides(arrangement, depth, terms)
}
