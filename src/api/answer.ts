import { type Static, type TProperties, type TSchema, Type } from 'typebox'
import type { Units } from '#shared/units/length.ts'
import { choiceOf, listOf, text } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import type { Assumption } from './assumption.ts'
import type { Caution } from './caution.ts'
import type { Source } from './source.ts'
import type { UnitsName } from './units.ts'
import type { Warning } from './warning.ts'

/*
 * Every computing path answers in one shape: head, the path's own figures, foot. Both the schema and the answer are put together
 * here, so that no path can leave a part out.
 */

/** The head of an answer. */
interface Head<Name extends string, Input> {
  readonly arrangement: Name
  readonly units: Units
  /** The request with every default filled in: sent again, it gives the same answer. */
  readonly input: Input
  readonly assumed: Static<typeof Assumption>[]
  /** One or two sentences that a maker can act on. */
  readonly summary: string
}

/** The foot of an answer. */
interface Foot {
  readonly warnings: Static<typeof Warning>[]
  readonly cautions: Caution[]
  readonly sources: Static<typeof Source>[]
}

/** An answer of any computing path. */
export const answer = <Name extends string, Input, Body extends object>(
  { arrangement, units, input, assumed, summary }: Head<Name, Input>,
  body: Body,
  { warnings, cautions, sources }: Foot,
) => ({ arrangement, units, input, assumed, summary, ...body, warnings, cautions, sources })

/** The properties of such an answer, for its schema. */
export const answerOf = <const Name extends string, Input extends TSchema, Body extends TProperties>(
  names: readonly [Name, ...Name[]],
  input: Input,
  body: Body,
) => ({
  arrangement: arrangementTag(...names),
  units: refTo<typeof UnitsName>('Units'),
  input: Type.Unsafe<Static<Input>>({
    ...input,
    description: 'The request with every default filled in. Sent again, it gives the same answer.',
  }),
  assumed: listOf<typeof Assumption>('Assumption', 'The values that the request left open, with the reason for each.'),
  summary: text('One or two sentences that a maker can act on.'),
  ...body,
  warnings: listOf<typeof Warning>('Warning', 'Risks and faults of this bearing.'),
  cautions: listOf<typeof Caution>('Caution', 'Dangers while making and using it.'),
  sources: listOf<typeof Source>('Source', 'Sources of the figures.'),
})

/** The field by which a request or an answer tells its arrangement. */
const arrangementTag = <const Name extends string>(...names: readonly [Name, ...Name[]]) =>
  choiceOf<Name>('The arrangement of the bearing.', names)

/** The answer of a path: one of several shapes, told apart by `arrangement`. Each of them has a `$id` and the tag. */
export const answerUnion = <const Answers extends readonly TSchema[]>(
  $id: string,
  description: string,
  ...answers: Answers
) =>
  Type.Unsafe<Static<Answers[number]>>({
    $id,
    description,
    discriminator: { propertyName: 'arrangement' },
    oneOf: answers.map((answer) => Type.Ref(String(Reflect.get(answer, '$id')))),
  })

/**
 * The arrangement of a resolved input, for the answer's tag.
 *
 * @throws RangeError where it is none of those that the answer has a shape for
 */
export function tagOf<const Name extends string>(
  { arrangement }: { readonly arrangement?: string },
  ...names: readonly Name[]
): Name {
  const found = names.find((name) => name === arrangement)
  if (found === undefined) throw new RangeError(`arrangement must be one of ${names.join(', ')}, got ${arrangement}`)
  return found
}
