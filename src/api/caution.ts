import type { Static } from 'typebox'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { named, text } from '#src/api/schema.ts'
import { cautionCodes } from '#src/words/bearing-caution.ts'
import { type CautionCode, cautionSentence } from '#src/words/caution.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'

export const Caution = named('Caution', 'A danger to people. Local rules and licensed practice come first.', {
  code: text('A name for programs.'),
  message: text('The caution in words.'),
})
export type Caution = Static<typeof Caution>

export const caution = (code: CautionCode, terms: Terms): Caution => ({ code, message: cautionSentence(code, terms) })

/** The cautions for a design, in the terms of its arrangement. */
export const cautionsOf = ({ input }: Pick<ResolvedBalls, 'input'>, terms: Terms = termsOf(input)): Caution[] =>
  cautionCodes(input.balls.material ?? BALL_MATERIAL, input).map((code) => caution(code, terms))
