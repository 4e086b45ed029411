import type { Static } from 'typebox'
import { BALL_MATERIALS, type BallMaterial } from '#shared/bearing/fields.ts'
import { ACRYLIC_GROWTH, BALL_SUBSTANCES } from '#shared/data/ball-materials.ts'
import type { SourceId } from '#shared/data/sources.ts'
import { SPECIES, SPECIES_IDS, type Species, type SpeciesId } from '#shared/data/species.ts'
import { ALONG_THE_GRAIN, MOVEMENT } from '#shared/data/wood-movement.ts'
import { MPA_PER_PSI, NEWTONS_PER_LBF, STRENGTH } from '#shared/data/wood-strength.ts'
import { present } from '#src/api/optional.ts'
import { toSource } from '#src/api/source.ts'
import { readSpecies } from '#src/api/species.ts'
import type { Fault } from '#src/http/problem.ts'
import { MATERIAL_NOTES, WITH_MOISTURE } from '#src/words/material-notes.ts'
import type { BallSubstance, MaterialsRequest, MaterialsResponse, Wood, WoodMovement, WoodStrength } from './schema.ts'

/** The materials asked for, or the fault of an unknown name. */
export function toMaterialsResponse(query: MaterialsRequest): MaterialsResponse | Fault {
  const species = query.species === undefined ? undefined : readSpecies(query.species, '/species')
  if (typeof species === 'object') return species
  const ofWoods = [query.group, query.minSideHardness, query.maxTangentialMovement, species].some(
    (one) => one !== undefined,
  )
  const woods =
    query.kind === 'ball'
      ? []
      : SPECIES_IDS.filter((id) => (species === undefined || id === species) && isAsked(id, query)).map(toWood)
  const balls = query.kind === 'wood' || (ofWoods && query.kind !== 'ball') ? [] : BALL_MATERIALS.map(toBall)
  const used = new Set([
    ...woods.flatMap(({ movement, strength }) => [
      ...(movement === undefined ? [] : [movement.source, ALONG_THE_GRAIN.source]),
      ...(strength === undefined ? [] : [strength.source]),
    ]),
    ...balls.flatMap(({ sources }) => sources),
  ])
  return { woods, balls, notes: [...MATERIAL_NOTES], sources: [...used].map((id) => toSource(id as SourceId)) }
}

const newtons = (lbf: number | undefined): number | undefined => (lbf === undefined ? undefined : lbf * NEWTONS_PER_LBF)

function isAsked(id: SpeciesId, { group, minSideHardness, maxTangentialMovement }: MaterialsRequest): boolean {
  const hardness = newtons(STRENGTH[id]?.hardnessLbf) ?? Number.NaN
  const movement = MOVEMENT[id]?.tangential ?? Number.NaN
  return (
    (group === undefined || SPECIES[id].group === group) &&
    (minSideHardness === undefined || hardness >= minSideHardness) &&
    (maxTangentialMovement === undefined || movement <= maxTangentialMovement)
  )
}

function toWood(id: SpeciesId): Static<typeof Wood> {
  const species: Species = SPECIES[id]
  return present<Static<typeof Wood>>({
    species: id,
    name: species.name,
    botanicalName: species.botanical,
    group: species.group,
    imported: species.imported === true,
    movement: toMovement(id),
    strength: toStrength(id),
  })
}

function toMovement(id: SpeciesId): Static<typeof WoodMovement> | undefined {
  const movement = MOVEMENT[id]
  if (movement === undefined) return undefined
  const { radial, tangential, saturation, source } = movement
  const { perPercent: longitudinal, source: longitudinalSource } = ALONG_THE_GRAIN
  return { radial, tangential, longitudinal, fibreSaturation: saturation, source, longitudinalSource }
}

function toStrength(id: SpeciesId): Static<typeof WoodStrength> | undefined {
  const strength = STRENGTH[id]
  if (strength === undefined) return undefined
  const { compressionPsi, hardnessLbf } = strength
  return present<Static<typeof WoodStrength>>({
    specificGravity: strength.specificGravity,
    greenSpecificGravity: strength.greenSpecificGravity,
    compressionAcrossGrain: compressionPsi === undefined ? undefined : compressionPsi * MPA_PER_PSI,
    compressionAcrossGrainPsi: compressionPsi,
    sideHardness: newtons(hardnessLbf),
    sideHardnessLbf: hardnessLbf,
    source: strength.source,
  })
}

function toBall(material: BallMaterial): Static<typeof BallSubstance> {
  const withMoisture = WITH_MOISTURE[material]
  if (material === 'wood') return { material, withMoisture, sources: ['fpl-13-5', 'fpl-5-3b'] }
  const { source, ...figures } = BALL_SUBSTANCES[material]
  if (material !== 'acrylic') return { material, ...figures, withMoisture, sources: [source] }
  return { material, ...figures, withMoisture, growth: [...ACRYLIC_GROWTH], sources: [source, 'acrylic-humidity'] }
}
