import { type Static, Type } from 'typebox'
import type { ArrangementName } from '#shared/bearing/arrangement.ts'

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
  '/balls/length': ['as long as the ring is wide, less what lets it run free of the cheeks', TRADE],
  '/balls/material': ['turned wooden balls are what most makers buy', TRADE],
  '/balls/standardDeviation': ['how much balls of this material scatter in a bought lot', TRADE],
  '/outerRing/engagement': ['shallow: the last ball still goes in over the land, and sanding to fit is quick', TRADE],
  '/innerRing/engagement': ['deep: it holds the balls once the split ring is closed', TRADE],
  '/outerRing/wall': ['two thirds of a ball of wood behind the groove', TRADE],
  '/outerRing/roundOutsideDiameterTo': ['an even figure on the rule', TRADE],
  '/plates/engagement': ['three tenths of a ball: deep enough to hold it, and the plates stay well apart', TRADE],
  '/plates/wall': ['a ball of wood round the groove', TRADE],
  '/plates/roundOutsideDiameterTo': ['an even figure on the rule', TRADE],
  '/plates/thickness': ['as thick as a ball: most of it is left under the groove', TRADE],
  '/cage/web': [
    'a quarter of a ball of wood between two pockets, and more where the balls would otherwise not go in',
    TRADE,
  ],
  '/cage/pocketClearance': ['a ball that rolls freely in its pocket and does not rattle', TRADE],
  '/cage/landClearance': ['clear of both lands when the rings stand aside and the wood moves', TRADE],
  '/cage/width': ['as wide as the rings: nothing stands out', TRADE],
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

/** What a sister takes for another reason. */
const SISTERS: Readonly<Partial<Record<ArrangementName, typeof REASONS>>> = {
  caged: {
    '/outerRing/engagement': ['shallow: a ball passes between the lands with the inner ring aside', TRADE],
    '/innerRing/engagement': ['no deeper: both grooves together stay within half a ball, so that balls go in', TRADE],
    '/split': ['fewer balls than a full ring go in between one-piece rings', TRADE],
  },
  thrust: { '/ballGap': ['a gap that shows', TRADE] },
  roller: {
    '/balls/material': ['turned wooden dowels are what most makers have', TRADE],
    '/balls/standardDeviation': ['how much dowels of this material scatter in a bought lot', TRADE],
    '/outerRing/wall': ['two thirds of a roller of wood behind the track', TRADE],
    '/ballGap': ['a gap that shows', TRADE],
    '/width': ['twice as wide as the rollers are thick: long rollers hardly turn askew', TRADE],
  },
}

/** A default's reason, ready to be found by its whole path: names to walk, and the words. */
interface Explained {
  readonly names: readonly string[]
  readonly reason: string
  readonly standing: string
}

const explained = (path: string, [reason, standing]: readonly [string, string]): readonly [string, Explained] => [
  path,
  { names: path.slice(1).split('/'), reason, standing },
]

/** Every default by its path; that of a groove stands for both rings and for each of them. */
const BY_PATH: ReadonlyMap<string, Explained> = new Map(
  Object.entries(REASONS).flatMap(([path, words]) =>
    (path.startsWith('/groove/') ? ['', '/outerRing', '/innerRing'] : ['']).map((ring) =>
      explained(ring + path, words),
    ),
  ),
)

type Echoed = object & { readonly arrangement?: ArrangementName }

/** What was assumed, each with its reason, read out of the echoed input. */
export function toAssumptions(assumed: readonly string[], echoed: Echoed): Static<typeof Assumption>[] {
  const sisters = echoed.arrangement === undefined ? undefined : SISTERS[echoed.arrangement]
  return assumed.map((path) => {
    const found = BY_PATH.get(path)
    if (found === undefined) throw new RangeError(`path must be that of a default, got ${path}`)
    const [reason, standing] = sisters?.[path] ?? [found.reason, found.standing]
    return { path, value: leafAt(echoed, found.names), reason, standing }
  })
}

/** An echoed input as it is walked: objects of objects of leaves. */
type Tree = { readonly [name: string]: unknown }

function leafAt(echoed: object, names: readonly string[]): Leaf {
  let at: unknown = echoed
  for (const name of names) at = isTree(at) ? at[name] : undefined
  return typeof at === 'number' || typeof at === 'string' ? at : null
}

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null
