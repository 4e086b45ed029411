import { Type } from 'typebox'
import { significant } from '#shared/numbers/significant.ts'

declare const shown: unique symbol
/** A number of an answer that is not a length, to 9 significant digits. Only `showNumber` makes one. */
export type ShownNumber = number & { readonly [shown]: true }

/** A number of an answer that is neither a length nor a count. */
export const shownNumber = (description: string) => Type.Unsafe<ShownNumber>(Type.Number({ description }))
/** A share, from 0 to 1. */
export const shownShare = (description: string) =>
  Type.Unsafe<ShownNumber>(Type.Number({ minimum: 0, maximum: 1, description }))

/** @throws RangeError for a number that is not finite: a bug must not reach a caller as `null` */
export function showNumber(value: number): ShownNumber {
  if (!Number.isFinite(value)) throw new RangeError(`value must be finite, got ${value}`)
  return significant(value) as ShownNumber
}
