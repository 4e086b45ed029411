const STEPS = [1, 2, 5] as const

/** How much larger a thing may be drawn at the most: powers of ten times 1, 2 and 5 (ISO 5455), written `2:1` or `1:5`. */
export type Scale = { readonly factor: number; readonly text: string }

/** The largest scale of ISO 5455's series, carried on either way, that is at most so large. */
export function scaleUpTo(most: number): Scale {
  if (!(most > 0 && most < Number.POSITIVE_INFINITY))
    throw new RangeError(`most must be above 0 and finite, got ${most}`)
  return most >= 1 ? enlarged(most) : reduced(1 / most)
}

function enlarged(most: number): Scale {
  const ten = 10 ** Math.floor(Math.log10(most))
  const step = STEPS.findLast((one) => one * ten <= most) ?? 1
  return { factor: step * ten, text: `${step * ten}:1` }
}

function reduced(least: number): Scale {
  const ten = 10 ** Math.floor(Math.log10(least))
  const step = STEPS.find((one) => one * ten >= least) ?? 10
  return { factor: 1 / (step * ten), text: `1:${step * ten}` }
}
