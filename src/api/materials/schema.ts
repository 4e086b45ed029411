import { type Static, Type } from 'typebox'
import { choiceOf, flag, named, requestObject, text } from '#src/api/schema.ts'
import type { Source } from '#src/api/source.ts'
import { speciesName } from '#src/api/species.ts'
import { refTo } from '#src/http/schema.ts'

/** More than any wood has. */
const MOST_HARDNESS = 50_000
const MOST_MOVEMENT = 0.1

const sourceId = text('The row of `sources` that the figures come from.')

export const MaterialsRequest = requestObject('Which materials to show. Default: all.', {
  kind: Type.Optional(choiceOf('Show only these.', ['wood', 'ball'])),
  species: Type.Optional(speciesName('Show only this wood.')),
  group: Type.Optional(choiceOf('Show only these woods.', ['hardwood', 'softwood'])),
  minSideHardness: Type.Optional(
    Type.Number({
      minimum: 0,
      maximum: MOST_HARDNESS,
      description: 'Show only woods of at least this side hardness, in newtons.',
    }),
  ),
  maxTangentialMovement: Type.Optional(
    Type.Number({
      minimum: 0,
      maximum: MOST_MOVEMENT,
      description:
        'Show only woods with at most this tangential movement, per unit of size and per % of moisture content.',
    }),
  ),
})
export type MaterialsRequest = Static<typeof MaterialsRequest>

export const WoodMovement = named(
  'WoodMovement',
  'Change of size per % of moisture content, as a fraction of the size at 10 %.',
  {
    radial: Type.Number({ description: 'Across the grain, from pith to bark.' }),
    tangential: Type.Number({ description: 'Across the grain, along the growth rings.' }),
    longitudinal: Type.Number({ description: 'Along the grain. The same figure for all woods.' }),
    fibreSaturation: Type.Number({ description: 'Moisture content in %, above which the wood no longer moves.' }),
    source: sourceId,
    longitudinalSource: Type.String({ description: 'The row of `sources` that `longitudinal` comes from.' }),
  },
)

export const WoodStrength = named(
  'WoodStrength',
  'Averages of small clear pieces at 12 % moisture content, for comparing woods.',
  {
    specificGravity: Type.Optional(
      Type.Number({ description: 'Ovendry mass over the volume at 12 % moisture content, relative to water.' }),
    ),
    greenSpecificGravity: Type.Optional(
      Type.Number({ description: 'Ovendry mass over the green volume, relative to water.' }),
    ),
    compressionAcrossGrain: Type.Optional(Type.Number({ description: 'Stress at the proportional limit, in MPa.' })),
    compressionAcrossGrainPsi: Type.Optional(Type.Number({ description: 'The printed figure, in lbf/in2.' })),
    sideHardness: Type.Optional(Type.Number({ description: 'Janka hardness, in newtons.' })),
    sideHardnessLbf: Type.Optional(Type.Number({ description: 'The printed figure, in pounds-force.' })),
    source: sourceId,
  },
)

export const Wood = named('Wood', 'A wood with its published figures.', {
  species: text('The name that other paths take.'),
  name: text('The common name.'),
  botanicalName: Type.Optional(text('The botanical name.')),
  group: choiceOf('Hardwood or softwood.', ['hardwood', 'softwood']),
  imported: flag('Imported into the United States, where the tables come from.'),
  movement: Type.Optional(refTo<typeof WoodMovement>('WoodMovement')),
  strength: Type.Optional(refTo<typeof WoodStrength>('WoodStrength')),
})

export const BallSubstance = named('BallSubstance', 'A material for balls.', {
  material: choiceOf('The material.', ['wood', 'glass', 'acrylic', 'steel']),
  density: Type.Optional(Type.Number({ description: 'kg/m3' })),
  stiffness: Type.Optional(Type.Number({ description: "Young's modulus, MPa." })),
  poissonsRatio: Type.Optional(Type.Number({ description: "Poisson's ratio." })),
  hardness: Type.Optional(text('Hardness, with its scale.')),
  withMoisture: text('The effect of damp air on the size of the balls.'),
  growth: Type.Optional(
    Type.Array(
      Type.Object({
        relativeHumidity: Type.Number({ description: '%' }),
        growth: Type.Number({ description: 'Growth as a fraction of the dry size.' }),
      }),
      { description: 'Points of a curve; interpolate linearly between them.' },
    ),
  ),
  sources: Type.Array(Type.String(), { description: 'The `id` of each source in `sources`.' }),
})

export const MaterialsResponse = named('MaterialsResponse', 'Woods and ball materials, each figure with its source.', {
  woods: Type.Array(refTo<typeof Wood>('Wood')),
  balls: Type.Array(refTo<typeof BallSubstance>('BallSubstance')),
  notes: Type.Array(Type.String(), { description: 'Advice on choosing: common practice, no source.' }),
  sources: Type.Array(refTo<typeof Source>('Source')),
})
export type MaterialsResponse = Static<typeof MaterialsResponse>
