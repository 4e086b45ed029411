const STEPS = [1, 2, 5] as const

/** How much larger a thing may be drawn at the most: powers of ten times 1, 2 and 5 (ISO 5455), written `2:1` or `1:5`. */
export type Scale = { readonly factor: number; readonly text: string }

/** The largest scale of ISO 5455's series, carried on either way, that is at most so large. */
export function scaleUpTo(most: number): Scale {
  if (!(most > 0 && most < Number.POSITIVE_INFINITY))
    throw new RangeError(`most must be above 0 and finite, got ${most}`)
  const isEnlarged = most >= 1
  const times = isEnlarged ? most : 1 / most
  const ten = 10 ** Math.floor(Math.log10(times))
  const step = isEnlarged
    ? (STEPS.findLast((one) => one * ten <= times) ?? 1)
    : (STEPS.find((one) => one * ten >= times) ?? 10)
  const size = step * ten
  return isEnlarged ? { factor: size, text: `${size}:1` } : { factor: 1 / size, text: `1:${size}` }
}
