import type { Mm } from '#shared/units/length.ts'
import type { DesignInput, GrooveInput, Split } from './design-input.ts'

/** One number, or one choice, of the input, and what to set it to. */
export type Suggestion =
  | { readonly path: string; readonly kind: 'length'; readonly value: Mm }
  | { readonly path: string; readonly kind: 'number'; readonly value: number }
  | { readonly path: string; readonly kind: 'choice'; readonly value: Split }

type Turn<V> = (input: DesignInput, value: V) => DesignInput

const grooveTurns = (set: (input: DesignInput, change: GrooveInput) => DesignInput) => ({
  conformity: (input: DesignInput, conformity: number) => set(input, { conformity }),
  grooveRadius: (input: DesignInput, grooveRadius: Mm) => set(input, { grooveRadius }),
  cutterDiameter: (input: DesignInput, cutterDiameter: Mm) => set(input, { cutterDiameter }),
})

const forBoth = grooveTurns((input, groove) => ({ ...input, groove }))
const forOuter = grooveTurns((input, groove) => ({ ...input, outerRing: { ...input.outerRing, groove } }))
const forInner = grooveTurns((input, groove) => ({ ...input, innerRing: { ...input.innerRing, groove } }))

const LENGTHS: Readonly<Record<string, Turn<Mm>>> = {
  '/balls/length': (input, length) => ({ ...input, balls: { ...input.balls, length } }),
  '/bore': (input, bore) => ({ ...input, bore }),
  '/ballGap': (input, ballGap) => ({ ...input, ballGap }),
  '/radialInternalClearance': (input, radialInternalClearance) => ({ ...input, radialInternalClearance }),
  '/width': (input, width) => ({ ...input, width }),
  '/plates/wall': (input, wall) => ({ ...input, plates: { ...input.plates, wall } }),
  '/plates/outsideDiameter': (input, outsideDiameter) => ({ ...input, plates: { ...input.plates, outsideDiameter } }),
  '/plates/thickness': (input, thickness) => ({ ...input, plates: { ...input.plates, thickness } }),
  '/plates/grooveDepth': (input, grooveDepth) => ({ ...input, plates: { ...input.plates, grooveDepth } }),
  '/cage/web': (input, web) => ({ ...input, cage: { ...input.cage, web } }),
  '/cage/pitchDiameter': (input, pitchDiameter) => ({ ...input, cage: { ...input.cage, pitchDiameter } }),
  '/cage/landClearance': (input, landClearance) => ({ ...input, cage: { ...input.cage, landClearance } }),
  '/cage/width': (input, width) => ({ ...input, cage: { ...input.cage, width } }),
  '/outerRing/wall': (input, wall) => ({ ...input, outerRing: { ...input.outerRing, wall } }),
  '/outerRing/outsideDiameter': (input, outsideDiameter) => ({
    ...input,
    outerRing: { ...input.outerRing, outsideDiameter },
  }),
  '/outerRing/grooveDepth': (input, grooveDepth) => ({ ...input, outerRing: { ...input.outerRing, grooveDepth } }),
  '/innerRing/grooveDepth': (input, grooveDepth) => ({ ...input, innerRing: { ...input.innerRing, grooveDepth } }),
  '/groove/grooveRadius': forBoth.grooveRadius,
  '/groove/cutterDiameter': forBoth.cutterDiameter,
  '/outerRing/groove/grooveRadius': forOuter.grooveRadius,
  '/outerRing/groove/cutterDiameter': forOuter.cutterDiameter,
  '/innerRing/groove/grooveRadius': forInner.grooveRadius,
  '/innerRing/groove/cutterDiameter': forInner.cutterDiameter,
}

const NUMBERS: Readonly<Record<string, Turn<number>>> = {
  '/balls/count': (input, count) => ({ ...input, balls: { ...input.balls, count } }),
  '/shopDenominator': (input, shopDenominator) => ({ ...input, shopDenominator }),
  '/plates/engagement': (input, engagement) => ({ ...input, plates: { ...input.plates, engagement } }),
  '/outerRing/engagement': (input, engagement) => ({ ...input, outerRing: { ...input.outerRing, engagement } }),
  '/innerRing/engagement': (input, engagement) => ({ ...input, innerRing: { ...input.innerRing, engagement } }),
  '/groove/conformity': forBoth.conformity,
  '/outerRing/groove/conformity': forOuter.conformity,
  '/innerRing/groove/conformity': forInner.conformity,
}

/**
 * The input with one suggestion taken: what a caller does who puts `value` at `path` and asks again.
 *
 * @throws RangeError for a path that no suggestion has
 */
export function withSuggestion(input: DesignInput, suggestion: Suggestion): DesignInput {
  const { path, kind, value } = suggestion
  if (kind === 'choice' && path === '/split') return { ...input, split: value }
  const turned =
    kind === 'length' ? LENGTHS[path]?.(input, value) : kind === 'number' ? NUMBERS[path]?.(input, value) : undefined
  if (turned === undefined) throw new RangeError(`path must be that of a ${kind} of the input, got ${path}`)
  return turned
}
