import { type Static, Type } from 'typebox'
import { ARRANGEMENT_NAMES, type ArrangementName, traitsOf } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { SettledBalls } from '#shared/bearing/resolve.ts'
import { tagOf } from '#src/api/answer.ts'
import { type CautionCode, cautionSentence } from '#src/words/caution.ts'
import { TERMS } from '#src/words/terms.ts'

export const Caution = Type.Object(
  { code: Type.String({ description: 'A name for programs.' }), message: Type.String() },
  { $id: 'Caution', description: 'What can hurt someone. Local rules and licensed practice come first.' },
)
export type Caution = Static<typeof Caution>

export const caution = (code: CautionCode, arrangement: ArrangementName): Caution => ({
  code,
  message: cautionSentence(code, TERMS[arrangement]),
})

/** The cautions for making and using a bearing with balls, or rollers, of a material. */
export const cautionsFor = (material: BallMaterial, arrangement: ArrangementName = 'radial'): Caution[] =>
  [
    'light-use-only' as const,
    ...(traitsOf({ arrangement }).rolls === 'rollers' ? (['roller-skew'] as const) : []),
    ...(material === 'glass' ? (['glass-balls'] as const) : []),
    ...(['turning', 'dust', 'finish'] as const),
  ].map((code) => caution(code, arrangement))

/** The cautions for a design. */
export const cautionsOf = ({ input }: Pick<SettledBalls, 'input'>): Caution[] =>
  cautionsFor(input.balls.material ?? BALL_MATERIAL, tagOf(input, ...ARRANGEMENT_NAMES))
