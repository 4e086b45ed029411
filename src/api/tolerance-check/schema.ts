import { text } from '#src/api/schema.ts'
import { ARRANGEMENT_SCHEMAS, type ToleranceCheckResponse } from '#src/api/tolerance-check/arrangements/all.ts'
import { JSON_TYPE } from '#src/http/media-type.ts'
import { refTo } from '#src/http/schema.ts'
import { CONTRIBUTOR_SCHEMAS } from './contributors.ts'
import { CheckedFigure, ContributorEffect, FitChances, Percentile, ToleranceHistogram } from './figures-schema.ts'
import { ToleranceCheckRequest, ToleranceLimits } from './request-schema.ts'

export const TOLERANCE_CHECK_SCHEMAS = [
  ...CONTRIBUTOR_SCHEMAS,
  ToleranceLimits,
  ToleranceCheckRequest,
  Percentile,
  FitChances,
  ToleranceHistogram,
  CheckedFigure,
  ContributorEffect,
  ...ARRANGEMENT_SCHEMAS,
]

export const SVG_TYPE = 'image/svg+xml'

export const ANSWERS = {
  [JSON_TYPE]: { schema: refTo<typeof ToleranceCheckResponse>('ToleranceCheckResponse') },
  [SVG_TYPE]: { schema: text('How the ball gap is spread, with limits and aim.') },
}
