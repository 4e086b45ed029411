import { type Static, Type } from 'typebox'
import type { Source } from '#src/api/source.ts'
import { speciesName } from '#src/api/species.ts'
import { refTo } from '#src/http/schema.ts'

/** More than any wood has. */
const MOST_HARDNESS = 50_000
const MOST_MOVEMENT = 0.1

const sourceId = Type.String({ description: 'The row of `sources` that it was taken from.' })

export const MaterialsRequest = Type.Object(
  {
    kind: Type.Optional(Type.Enum(['wood', 'ball'], { type: 'string', description: 'Only these.' })),
    species: Type.Optional(speciesName('Only this wood.')),
    group: Type.Optional(Type.Enum(['hardwood', 'softwood'], { type: 'string', description: 'Only these woods.' })),
    minSideHardness: Type.Optional(
      Type.Number({ minimum: 0, maximum: MOST_HARDNESS, description: 'Only woods at least so hard, in newtons.' }),
    ),
    maxTangentialMovement: Type.Optional(
      Type.Number({
        minimum: 0,
        maximum: MOST_MOVEMENT,
        description: 'Only woods that move no more, per size and per % of moisture content.',
      }),
    ),
  },
  {
    description: 'Which materials to show; all, when nothing is said.',
    additionalProperties: false,
  },
)
export type MaterialsRequest = Static<typeof MaterialsRequest>

export const WoodMovement = Type.Object(
  {
    radial: Type.Number({ description: 'Across the grain, from pith to bark.' }),
    tangential: Type.Number({ description: 'Across the grain, along the growth rings.' }),
    longitudinal: Type.Number({ description: 'Along the grain: for all woods alike.' }),
    fibreSaturation: Type.Number({ description: 'Moisture content in %, above which it moves no more.' }),
    source: sourceId,
  },
  { $id: 'WoodMovement', description: 'Change of size, per size at 10 % and per % of moisture content.' },
)

export const WoodStrength = Type.Object(
  {
    specificGravity: Type.Optional(Type.Number({ description: 'Ovendry mass over the volume at 12 %, to water.' })),
    greenSpecificGravity: Type.Optional(Type.Number({ description: 'The same over the green volume.' })),
    compressionAcrossGrain: Type.Optional(Type.Number({ description: 'At the proportional limit, in MPa.' })),
    compressionAcrossGrainPsi: Type.Optional(Type.Number({ description: 'The same as printed, in lbf/in2.' })),
    sideHardness: Type.Optional(Type.Number({ description: 'Janka, in newtons.' })),
    sideHardnessLbf: Type.Optional(Type.Number({ description: 'The same as printed, in pounds-force.' })),
    source: sourceId,
  },
  { $id: 'WoodStrength', description: 'Averages of small clear pieces at 12 % of moisture: to compare woods by.' },
)

export const Wood = Type.Object(
  {
    species: Type.String({ description: 'The name that other paths take.' }),
    name: Type.String(),
    botanicalName: Type.Optional(Type.String()),
    group: Type.Enum(['hardwood', 'softwood'], { type: 'string' }),
    imported: Type.Boolean({ description: 'Into the United States, whence the tables come.' }),
    movement: Type.Optional(refTo<typeof WoodMovement>('WoodMovement')),
    strength: Type.Optional(refTo<typeof WoodStrength>('WoodStrength')),
  },
  { $id: 'Wood', description: 'A wood, and what is known of it.' },
)

export const BallSubstance = Type.Object(
  {
    material: Type.Enum(['wood', 'glass', 'acrylic', 'steel'], { type: 'string' }),
    density: Type.Optional(Type.Number({ description: 'kg/m3' })),
    stiffness: Type.Optional(Type.Number({ description: "Young's modulus, MPa." })),
    poissonsRatio: Type.Optional(Type.Number()),
    hardness: Type.Optional(Type.String()),
    withMoisture: Type.String({ description: 'What damp air does to its size.' }),
    growth: Type.Optional(
      Type.Array(
        Type.Object({
          relativeHumidity: Type.Number({ description: '%' }),
          growth: Type.Number({ description: 'Per size when dry.' }),
        }),
        { description: 'Straight lines between these points.' },
      ),
    ),
    sources: Type.Array(Type.String(), { description: 'Rows of `sources`.' }),
  },
  { $id: 'BallSubstance', description: 'What balls are made of.' },
)

export const MaterialsResponse = Type.Object(
  {
    woods: Type.Array(refTo<typeof Wood>('Wood')),
    balls: Type.Array(refTo<typeof BallSubstance>('BallSubstance')),
    notes: Type.Array(Type.String(), { description: 'How makers choose: common practice, no source.' }),
    sources: Type.Array(refTo<typeof Source>('Source')),
  },
  { $id: 'MaterialsResponse', description: 'Woods and ball materials, each figure with its source.' },
)
export type MaterialsResponse = Static<typeof MaterialsResponse>
