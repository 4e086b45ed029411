import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import { inUnits, mm } from '#shared/units/length.ts'
import { distributionSheet } from '#src/drawings/sheets/distribution.ts'
import { toSvg } from '#src/drawings/writers/svg.ts'
import { gapSheetWords } from '#src/words/tolerance-check.ts'
import type { ToleranceCheckRequest } from './request-schema.ts'

/** A widest gap that a season asks for is no common practice. */
const practiceIn = ({ design, limits, overshootRisk }: ToleranceCheckRequest) => ({
  maxBallGap: limits?.maxBallGap === undefined && !('maxBallGap' in design) && design.making?.climate === undefined,
  overshootRisk: overshootRisk === undefined,
})

/** The spread of the ball gap as a picture: limits, aim, too tight, too loose. */
export function toGapSheet(checked: ToleranceCheck, request: ToleranceCheckRequest): string {
  const { check, figures, aim } = checked
  const { units } = check.input.design
  const { histogram } = figures.ballGap
  const along = (length: number): number => inUnits(mm(length), units)
  const { min, max } = check.gapLimits
  const { title, description, regions, axis, countAxis, foot, ...marks } = gapSheetWords(checked, practiceIn(request))
  return toSvg(
    distributionSheet({
      title,
      description,
      edges: histogram.edges.map(along),
      counts: histogram.counts,
      min: along(min),
      max: along(max),
      marks: [
        { at: along(min), role: 'hidden', text: marks.min },
        { at: along(max), role: 'hidden', text: marks.max },
        { at: along(aim.bestYield.ballGap), role: 'centre', text: marks.bestYield },
        ...(aim.limitedRisk === undefined || marks.limitedRisk === undefined
          ? []
          : [{ at: along(aim.limitedRisk.ballGap), role: 'centre' as const, text: marks.limitedRisk }]),
      ],
      regions,
      axis,
      countAxis,
      foot,
    }),
  )
}
