import type { Static } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { named, text } from '#src/api/schema.ts'
import { type CautionCode, cautionSentence, ownCautions } from '#src/words/caution.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'

export const Caution = named('Caution', 'A danger to people. Local rules and licensed practice come first.', {
  code: text('A name for programs.'),
  message: text('The caution in words.'),
})
export type Caution = Static<typeof Caution>

export const caution = (code: CautionCode, terms: Terms): Caution => ({ code, message: cautionSentence(code, terms) })

/** The cautions for making and using a bearing with balls of a material, those of its arrangement alone among them. */
export const cautionsFor = (material: BallMaterial, terms: Terms, own: readonly CautionCode[] = []): Caution[] => {
  const codes: readonly CautionCode[] = [
    'light-use-only',
    ...own,
    ...(material === 'glass' ? (['glass-balls'] as const) : []),
    'turning',
    'dust',
    'finish',
  ]
  return codes.map((code) => caution(code, terms))
}

/** The cautions for a design, in the terms of its arrangement. */
export const cautionsOf = ({ input }: Pick<ResolvedBalls, 'input'>, terms: Terms = termsOf(input)): Caution[] =>
  cautionsFor(input.balls.material ?? BALL_MATERIAL, terms, ownCautions(input))
