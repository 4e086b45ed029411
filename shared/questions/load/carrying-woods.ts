import type { WoodsInput } from '#shared/bearing/making-input.ts'
import { CONTACT_WOODS, type ContactWoodId, contactWood } from '#shared/data/contact-woods.ts'
import { isSpecies, type SpeciesId } from '#shared/data/species.ts'
import { NEWTONS_PER_LBF, STRENGTH } from '#shared/data/wood-strength.ts'
import { itemAt } from '#shared/numbers/item-at.ts'
import type { LoadOptions } from './input.ts'

/** A wood of a plan, and the one whose figures are taken for it. */
export interface StandIn {
  readonly species: SpeciesId
  readonly id: ContactWoodId
}

const hardnessOf = (id: ContactWoodId): number => contactWood(id).sideHardness

/** From the softest to the hardest (Wood Handbook Table 5-3b). */
const BY_HARDNESS = CONTACT_WOODS.toSorted((one, other) => hardnessOf(one) - hardnessOf(other))
export const SOFTEST: ContactWoodId = itemAt(BY_HARDNESS, 0)

/**
 * The wood whose figures stand for another: the hardest of the table that is no harder. The softest where none is, or where no hardness
 * of the wood is printed: who loads by it is on the safe side of any wood but those few that are softer still.
 */
function standInFor(species: SpeciesId): ContactWoodId {
  const own = BY_HARDNESS.find((id) => id === species)
  const { hardnessLbf = 0 } = STRENGTH[species] ?? {}
  return own ?? BY_HARDNESS.findLast((id) => hardnessOf(id) <= hardnessLbf * NEWTONS_PER_LBF) ?? SOFTEST
}

/** Of the rings or plates the softest, which is marked first; and the wood of wooden balls. */
interface Carrying {
  readonly wood?: StandIn
  readonly ballWood?: StandIn
}

function carryingIn({ outerRing, innerRing, plates, balls }: WoodsInput): Carrying {
  const known = (parts: readonly ({ readonly species?: string } | undefined)[]): readonly StandIn[] =>
    parts.flatMap((part) =>
      part?.species !== undefined && isSpecies(part.species)
        ? [{ species: part.species, id: standInFor(part.species) }]
        : [],
    )
  const [wood] = known([outerRing, innerRing, plates]).toSorted(
    (one, other) => hardnessOf(one.id) - hardnessOf(other.id),
  )
  const [ballWood] = known([balls])
  return { ...(wood && { wood }), ...(ballWood && { ballWood }) }
}

/** The woods that carry a load, as a plan states them. */
export function carryingWoods(woods: WoodsInput = {}): Pick<LoadOptions, 'wood' | 'ballWood'> {
  const { wood, ballWood } = carryingIn(woods)
  return { ...(wood && { wood: wood.id }), ...(ballWood && { ballWood: ballWood.id }) }
}

/** The woods of a plan for which another stands in a load check that states none itself, each once. */
export function standInsOf(
  woods: WoodsInput = {},
  stated: Pick<LoadOptions, 'wood' | 'ballWood'>,
  hasWoodenBalls: boolean,
): readonly StandIn[] {
  const { wood, ballWood } = carryingIn(woods)
  const used = [
    ...(wood && stated.wood === undefined ? [wood] : []),
    ...(ballWood && hasWoodenBalls && stated.ballWood === undefined ? [ballWood] : []),
  ]
  const standIns = new Map(used.filter(({ species, id }) => id !== species).map((each) => [each.species, each]))
  return [...standIns.values()]
}
