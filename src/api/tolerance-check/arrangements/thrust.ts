import type { Static } from 'typebox'
import type { AimPoint as CoreAimPoint } from '#shared/questions/tolerance/aim.ts'
import type { ToleranceCheck } from '#shared/questions/tolerance/tolerance-check.ts'
import type { Units } from '#shared/units/length.ts'
import { answer } from '#src/api/answer.ts'
import { show } from '#src/api/length.ts'
import {
  type AnswerFoot,
  type AnswerHead,
  toAim,
  toChances,
  toEffects,
  toFigure,
  toJoint,
  toMade,
  toMethod,
} from '#src/api/tolerance-check/figures.ts'
import { notes } from '#src/words/tolerance-check.ts'
import type { PlateAimPoint } from './thrust-schema.ts'

export const toThrustAnswer = (checked: ToleranceCheck, head: AnswerHead, foot: AnswerFoot) =>
  answer(
    { arrangement: 'thrust', ...head },
    {
      method: toMethod(checked, ({ ballGap, play }) => ({ ballGap, plateGap: play })),
      ...toMade(checked),
      plateGap: toFigure(checked.figures.play, checked.check.input.design.units),
      ...toJoint(checked),
      sensitivities: toEffects(checked).map(({ contributor, ballGap, play: plateGap, message }) => ({
        contributor,
        ballGap,
        plateGap,
        message,
      })),
      aim: toAim(checked, toPlateAimPoint),
      notes: notes(checked),
    },
    foot,
  )

const toPlateAimPoint = (point: CoreAimPoint, units: Units): Static<typeof PlateAimPoint> => ({
  grooveCircleDiameter: show(point.grooveBottomDiameter, units),
  furtherOut: show(point.deeper, units),
  ballGap: show(point.ballGap, units),
  outcomes: toChances(point.outcomes),
})
