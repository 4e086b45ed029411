import { type Static, Type } from 'typebox'

type Leaf = number | string | null

export const Assumption = Type.Object(
  {
    path: Type.String({ description: 'A JSON pointer into `input`.' }),
    value: Type.Unsafe<Leaf>({ type: ['number', 'string', 'null'] }),
    reason: Type.String(),
    standing: Type.String({ description: 'Whether the trade does it so, or it only states the plain case.' }),
  },
  { $id: 'Assumption', description: 'A value that the input left open.' },
)

const TRADE = 'common practice, no source'
const PLAIN = 'the plain case'

/** Why each default is what it is. A groove of a ring's own has the same reasons as the groove of both. */
const REASONS: Readonly<Record<string, readonly [reason: string, standing: string]>> = {
  '/balls/material': ['turned wooden balls are what most makers buy', TRADE],
  '/balls/standardDeviation': ['how much balls of this material scatter in a bought lot', TRADE],
  '/outerRing/engagement': ['shallow: the last ball still goes in over the land, and sanding to fit is quick', TRADE],
  '/innerRing/engagement': ['deep: it holds the balls once the split ring is closed', TRADE],
  '/outerRing/wall': ['two thirds of a ball of wood behind the groove', TRADE],
  '/outerRing/roundOutsideDiameterTo': ['an even figure on the rule', TRADE],
  '/groove/conformity': ['a little rounder than the ball; steel bearings stay at or below this (ISO 76)', TRADE],
  '/ballGap': ['a gap that shows, and that lets the last ball in', TRADE],
  '/minBallGap': ['the ring just closes', PLAIN],
  '/maxBallGap': ['wider gaps begin to knock', TRADE],
  '/radialInternalClearance': ['a play that is felt and not seen', TRADE],
  '/finishAllowance': ['bare wood', PLAIN],
  '/width': ['one and a half balls: shoulders that do not chip', TRADE],
  '/split': ['the ring with the deep groove comes apart', TRADE],
  '/shopDenominator': ['a common rule reads to 1/64 in', TRADE],
}

/** What was assumed, each with its reason, read out of the echoed input. */
export function toAssumptions(assumed: readonly string[], echoed: object): Static<typeof Assumption>[] {
  return assumed.map((path) => {
    const [reason, standing] = REASONS[path] ?? REASONS[path.replace(/^\/(outerRing|innerRing)/, '')] ?? noReason(path)
    return { path, value: leafAt(echoed, path), reason, standing }
  })
}

function noReason(path: string): never {
  throw new RangeError(`path must be that of a default, got ${path}`)
}

function leafAt(echoed: object, path: string): Leaf {
  let at: unknown = echoed
  for (const name of path.slice(1).split('/')) {
    at = typeof at === 'object' && at !== null ? Object.getOwnPropertyDescriptor(at, name)?.value : undefined
  }
  return typeof at === 'number' || typeof at === 'string' ? at : null
}
