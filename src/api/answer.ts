import { type Static, type TSchema, Type } from 'typebox'

/** The field by which an answer tells its arrangement. */
export const arrangementTag = <const Name extends string>(...names: readonly [Name, ...Name[]]) =>
  Type.Unsafe<Name>(Type.Enum([...names], { type: 'string', description: 'The arrangement that was asked for.' }))

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
