import type { Static } from 'typebox'
import type { AimPoint as CoreAimPoint } from '#shared/questions/tolerance/aim.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import type { Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import { type AnswerFoot, type AnswerHead, toAim, toChances, toRings } from '#src/api/tolerance-check/figures.ts'
import { notes } from '#src/words/tolerance-check.ts'
import type { RollerAimPoint } from './roller-schema.ts'

export const toRollerAnswer = (checked: ToleranceCheck, head: AnswerHead, foot: AnswerFoot) =>
  answer(
    { arrangement: 'roller', ...head },
    { ...toRings(checked), aim: toAim(checked, toRollerAimPoint), notes: notes(checked) },
    foot,
  )

const toRollerAimPoint = (point: CoreAimPoint, units: Units): Static<typeof RollerAimPoint> => ({
  trackDiameter: show(point.grooveBottomDiameter, units),
  wider: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})
