import type { Static } from 'typebox'
import type { AimPoint as CoreAimPoint } from '#shared/questions/tolerance/aim.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import type { Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { type AnswerFoot, type AnswerHead, toAim, toChances, toRings } from '#src/api/tolerance-check/figures.ts'
import { notes } from '#src/words/tolerance-check.ts'
import type { AimPoint } from './radial-schema.ts'

export const toRadialAnswer = (checked: ToleranceCheck, head: AnswerHead, foot: AnswerFoot) =>
  answer(
    { arrangement: 'radial', ...head },
    { ...toRings(checked), aim: toAim(checked, toAimPoint), notes: notes(checked) },
    foot,
  )

const toAimPoint = (point: CoreAimPoint, units: Units): Static<typeof AimPoint> => ({
  grooveDepth: show(point.grooveDepth, units),
  grooveBottomDiameter: show(point.grooveBottomDiameter, units),
  deeper: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})
