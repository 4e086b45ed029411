import { type Static, Type } from 'typebox'
import { ARRANGEMENTS, type ArrangementName } from '#shared/bearing/arrangement.ts'
import { type Bounds, CONFORMITY, ENGAGEMENT, MOST_BALLS } from '#shared/bearing/bounds.ts'
import {
  BALL_MATERIALS,
  type BallMaterial,
  type BallsInput,
  type CageInput,
  type DesignInput,
  type GrooveInput,
  type OuterRingInput,
  type OutsideInput,
  type PlatesInput,
  type RingInput,
  SHOP_DENOMINATORS,
  SPLITS,
  type Split,
} from '#shared/bearing/design-input.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { refTo } from '#src/http/schema.ts'
import { type Length, length, nonNegativeLength, type ShownLength, show, toMm } from './length.ts'
import { present, written } from './optional.ts'
import type { StockRequest } from './stock-input.ts'
import type { UnitsName } from './units.ts'

const MOST_MEASURED = 500

const ratio = (description: string, { least, most }: Bounds) =>
  Type.Number({ minimum: least, maximum: most, description })

export const arrangement = Type.Unsafe<ArrangementName>(
  Type.Enum(ARRANGEMENTS, {
    type: 'string',
    description:
      '`radial`: a full ring of balls between grooved rings. `thrust`: a full ring of balls between two flat plates, each with a groove, the axis upright; it has `plates` and no rings. `roller`: dowel rollers between plain rings, kept by cheeks; it has no groove, no engagement and no split. `caged`: fewer balls than fill the ring, held evenly by a `cage` between rings that need no split; it has no ball gap. Default: radial.',
  }),
)

/** Of each group one name at the most may be given. An extension keyword: see `validation.ts`. */
const oneOfEach = (...groups: readonly (readonly string[])[]) => ({
  additionalProperties: false,
  'x-exclusive': groups,
})

export const Balls = Type.Object(
  {
    count: Type.Integer({ minimum: FEWEST_BALLS, maximum: MOST_BALLS, description: 'How many balls fill the ring.' }),
    diameter: length('Nominal ball diameter.'),
    length: Type.Optional(
      length('Of rollers alone: how long they are. Default: the width, less a clearance of 1/20 of a roller.'),
    ),
    material: Type.Optional(
      Type.Unsafe<BallMaterial>(
        Type.Enum(BALL_MATERIALS, { type: 'string', description: 'What the balls are made of. Default: wood.' }),
      ),
    ),
    standardDeviation: Type.Optional(
      nonNegativeLength('Scatter of single balls round their mean. Default: by material.'),
    ),
    diameters: Type.Optional(
      Type.Array(refTo<typeof Length>('Length'), {
        minItems: FEWEST_BALLS,
        maxItems: MOST_MEASURED,
        description:
          "The maker's own measurements, `count` or more: their mean closes the ring, not the nominal diameter. Instead of `standardDeviation`.",
      }),
    ),
  },
  {
    $id: 'Balls',
    description:
      'What rolls: the balls that are bought, or, under the same names, the dowels of a `roller` arrangement.',
    ...oneOfEach(['standardDeviation', 'diameters']),
  },
)

export const Groove = Type.Object(
  {
    conformity: Type.Optional(ratio('Groove radius over ball diameter. Default: 0.53.', CONFORMITY)),
    grooveRadius: Type.Optional(length('Radius of the groove in section. Instead of `conformity`.')),
    cutterDiameter: Type.Optional(length('Diameter of the round-nosed cutter or scraper. Instead of `conformity`.')),
  },
  {
    $id: 'Groove',
    description: "A groove's arc in section, said in one of three ways.",
    ...oneOfEach(['conformity', 'grooveRadius', 'cutterDiameter']),
  },
)

const engagement = (usual: number) =>
  Type.Optional(ratio(`Groove depth as a fraction of the ball diameter. Default: ${usual}.`, ENGAGEMENT))
const grooveDepth = Type.Optional(length('Land to groove bottom, at mid width. Instead of `engagement`.'))
const ownGroove = Type.Optional(refTo<typeof Groove>('Groove'))

const roundOutsideDiameterTo = Type.Optional(
  Type.Union([refTo<typeof Length>('Length'), Type.Null()], {
    description:
      'The outside diameter is rounded up to a multiple of this; null switches that off. Default: 1/4 in or 5 mm.',
  }),
)

export const OuterRingRequest = Type.Object(
  {
    engagement: engagement(0.2),
    grooveDepth,
    groove: ownGroove,
    wall: Type.Optional(length('Least wood behind the groove. Default: 2/3 of a ball diameter.')),
    roundOutsideDiameterTo,
    outsideDiameter: Type.Optional(length('Instead of `wall` and `roundOutsideDiameterTo`.')),
  },
  {
    $id: 'OuterRingRequest',
    description: 'What is wished of the outer ring.',
    ...oneOfEach(
      ['engagement', 'grooveDepth'],
      ['outsideDiameter', 'wall'],
      ['outsideDiameter', 'roundOutsideDiameterTo'],
    ),
  },
)

export const InnerRingRequest = Type.Object(
  { engagement: engagement(0.4), grooveDepth, groove: ownGroove },
  {
    $id: 'InnerRingRequest',
    description: 'What is wished of the inner ring.',
    ...oneOfEach(['engagement', 'grooveDepth']),
  },
)

export const PlatesRequest = Type.Object(
  {
    engagement: engagement(0.3),
    grooveDepth,
    wall: Type.Optional(length('Least wood from the edge of the groove outward. Default: a ball diameter.')),
    roundOutsideDiameterTo,
    outsideDiameter: Type.Optional(length('Instead of `wall` and `roundOutsideDiameterTo`.')),
    thickness: Type.Optional(length('Of each plate. Default: a ball diameter.')),
  },
  {
    $id: 'PlatesRequest',
    description: 'What is wished of both plates of a `thrust` arrangement, which are cut alike.',
    ...oneOfEach(
      ['engagement', 'grooveDepth'],
      ['outsideDiameter', 'wall'],
      ['outsideDiameter', 'roundOutsideDiameterTo'],
    ),
  },
)

export const CageRequest = Type.Object(
  {
    web: Type.Optional(
      length(
        'Least wood between two pockets. Default: a quarter of a ball, and more where the balls would not go in between rings of one piece.',
      ),
    ),
    pitchDiameter: Type.Optional(length('Of the circle through the centres of the balls. Instead of `web`.')),
    pocketClearance: Type.Optional(
      nonNegativeLength('By how much a pocket is wider than a ball. Default: 1/20 of a ball.'),
    ),
    landClearance: Type.Optional(
      nonNegativeLength('Between the cage and the land of either ring. Default: 1/25 of a ball.'),
    ),
    width: Type.Optional(length('Of the cage, along the axis. Default: as the rings.')),
  },
  {
    $id: 'CageRequest',
    description: 'What is wished of the cage of a `caged` arrangement.',
    ...oneOfEach(['web', 'pitchDiameter']),
  },
)

export const DesignRequest = Type.Object(
  {
    units: refTo<typeof UnitsName>('Units'),
    arrangement: Type.Optional(arrangement),
    balls: refTo<typeof Balls>('Balls'),
    bore: length('Bore of the inner ring, or of both plates.'),
    outerRing: Type.Optional(refTo<typeof OuterRingRequest>('OuterRingRequest')),
    innerRing: Type.Optional(refTo<typeof InnerRingRequest>('InnerRingRequest')),
    plates: Type.Optional(refTo<typeof PlatesRequest>('PlatesRequest')),
    cage: Type.Optional(refTo<typeof CageRequest>('CageRequest')),
    groove: Type.Optional(refTo<typeof Groove>('Groove')),
    ballGap: Type.Optional(
      nonNegativeLength(
        'Gap to aim at. Default: 1/20 of a ball, or what the last ball needs to go in, whichever is more.',
      ),
    ),
    minBallGap: Type.Optional(nonNegativeLength('Smallest gap that still runs. Default: 0.')),
    maxBallGap: Type.Optional(
      nonNegativeLength(
        'Largest gap that is still good. Default: 1/8 of a ball, and 1/16 of a ball above the aim at least.',
      ),
    ),
    radialInternalClearance: Type.Optional(
      nonNegativeLength('Play of the inner ring, side to side. Default: 1/50 of a ball.'),
    ),
    finishAllowance: Type.Optional(nonNegativeLength('Film or raised grain on each turned surface. Default: 0.')),
    width: Type.Optional(length('Width of both rings. Default: 1 1/2 balls, of rollers 2.')),
    split: Type.Optional(
      Type.Unsafe<Split>(
        Type.Enum(SPLITS, {
          type: 'string',
          description: 'Which ring comes apart at mid groove to close the balls in. Default: inner-ring.',
        }),
      ),
    ),
    shopDenominator: Type.Optional(
      Type.Unsafe<number>(
        Type.Enum(SHOP_DENOMINATORS, {
          type: 'integer',
          description:
            'Shop figures in inches are to the nearest one of so many parts. Default: 64. Without effect in millimetres.',
        }),
      ),
    ),
    stock: Type.Optional(refTo<typeof StockRequest>('StockRequest')),
  },
  {
    $id: 'DesignRequest',
    description:
      'A bearing, by what is known of it. What is left out takes common practice, and is echoed in the answer.',
    additionalProperties: false,
  },
)
export type DesignRequest = Static<typeof DesignRequest>

/** Added once by `app.ts`, inner ones first: every path that takes a bearing refers to them. */
export const DESIGN_INPUT_SCHEMAS = [
  Balls,
  Groove,
  OuterRingRequest,
  InnerRingRequest,
  PlatesRequest,
  CageRequest,
  DesignRequest,
]

/** The caller's input in the words of the core: millimetres, and no field that is undefined. */
export function toDesignInput(request: DesignRequest): DesignInput {
  const { units, balls, outerRing, innerRing, plates, groove } = request
  const size = (length: Length | undefined): Mm | undefined => (length === undefined ? undefined : toMm(length, units))
  return present<DesignInput>({
    units,
    arrangement: request.arrangement,
    balls: present<BallsInput>({
      count: balls.count,
      diameter: toMm(balls.diameter, units),
      length: size(balls.length),
      material: balls.material,
      standardDeviation: size(balls.standardDeviation),
      diameters: balls.diameters?.map((diameter) => toMm(diameter, units)),
    }),
    bore: toMm(request.bore, units),
    outerRing: outerRing && toOuterRing(outerRing, units),
    innerRing: innerRing && present<RingInput>(toRing(innerRing, units)),
    plates: plates && toPlates(plates, units),
    cage: request.cage && toCage(request.cage, units),
    groove: groove && toGroove(groove, units),
    ballGap: size(request.ballGap),
    minBallGap: size(request.minBallGap),
    maxBallGap: size(request.maxBallGap),
    radialInternalClearance: size(request.radialInternalClearance),
    finishAllowance: size(request.finishAllowance),
    width: size(request.width),
    split: request.split,
    shopDenominator: request.shopDenominator,
  })
}

type Fields<T> = { readonly [Name in keyof T]-?: T[Name] | undefined }

export const toOuterRing = (ring: Static<typeof OuterRingRequest>, units: Units): OuterRingInput =>
  present<OuterRingInput>({ ...toRing(ring, units), ...toOutside(ring, units) })

export const toPlates = (plates: Static<typeof PlatesRequest>, units: Units): PlatesInput =>
  present<PlatesInput>({
    ...toDepth(plates, units),
    ...toOutside(plates, units),
    thickness: plates.thickness === undefined ? undefined : toMm(plates.thickness, units),
  })

function toCage(cage: Static<typeof CageRequest>, units: Units): CageInput {
  const size = (length: Length | undefined): Mm | undefined => (length === undefined ? undefined : toMm(length, units))
  return present<CageInput>({
    web: size(cage.web),
    pitchDiameter: size(cage.pitchDiameter),
    pocketClearance: size(cage.pocketClearance),
    landClearance: size(cage.landClearance),
    width: size(cage.width),
  })
}

function toOutside(
  { wall, roundOutsideDiameterTo: roundTo, outsideDiameter }: Static<typeof PlatesRequest>,
  units: Units,
): Fields<OutsideInput> {
  return {
    wall: wall === undefined ? undefined : toMm(wall, units),
    roundOutsideDiameterTo: roundTo === undefined || roundTo === null ? roundTo : toMm(roundTo, units),
    outsideDiameter: outsideDiameter === undefined ? undefined : toMm(outsideDiameter, units),
  }
}

const toRing = (ring: Static<typeof InnerRingRequest>, units: Units): Fields<RingInput> => ({
  ...toDepth(ring, units),
  groove: ring.groove && toGroove(ring.groove, units),
})

const toDepth = (
  { engagement, grooveDepth: depth }: Pick<Static<typeof InnerRingRequest>, 'engagement' | 'grooveDepth'>,
  units: Units,
): Fields<Pick<RingInput, 'engagement' | 'grooveDepth'>> => ({
  engagement,
  grooveDepth: depth === undefined ? undefined : toMm(depth, units),
})

export function toGroove(
  { conformity, grooveRadius, cutterDiameter }: Static<typeof Groove>,
  units: Units,
): GrooveInput {
  return present<GrooveInput>({
    conformity,
    grooveRadius: grooveRadius === undefined ? undefined : toMm(grooveRadius, units),
    cutterDiameter: cutterDiameter === undefined ? undefined : toMm(cutterDiameter, units),
  })
}

/** The core's input as the caller could have written it: lengths as numbers in `units`. The way back of `toDesignInput`. */
export function toDesignRequest(input: DesignInput): DesignRequest {
  const { units, balls, outerRing, innerRing, plates, cage, groove } = input
  const size = (length: Mm | undefined): ShownLength | undefined =>
    length === undefined ? undefined : show(length, units)
  const ring = (from: RingInput): Fields<Static<typeof InnerRingRequest>> => ({
    engagement: from.engagement,
    grooveDepth: size(from.grooveDepth),
    groove: from.groove && fromGroove(from.groove, units),
  })
  const outside = ({ wall, roundOutsideDiameterTo: roundTo, outsideDiameter }: OutsideInput) => ({
    wall: size(wall),
    roundOutsideDiameterTo: roundTo === null ? null : size(roundTo),
    outsideDiameter: size(outsideDiameter),
  })
  return written<Omit<DesignRequest, 'stock'>>({
    units,
    arrangement: input.arrangement,
    balls: written<Static<typeof Balls>>({
      count: balls.count,
      diameter: show(balls.diameter, units),
      length: size(balls.length),
      material: balls.material,
      standardDeviation: size(balls.standardDeviation),
      diameters: balls.diameters?.map((diameter) => show(diameter, units)),
    }),
    bore: show(input.bore, units),
    outerRing:
      outerRing &&
      written<Static<typeof OuterRingRequest>>({
        ...ring(outerRing),
        ...outside(outerRing),
      }),
    innerRing: innerRing && written<Static<typeof InnerRingRequest>>(ring(innerRing)),
    plates:
      plates &&
      written<Static<typeof PlatesRequest>>({
        engagement: plates.engagement,
        grooveDepth: size(plates.grooveDepth),
        ...outside(plates),
        thickness: size(plates.thickness),
      }),
    cage:
      cage &&
      written<Static<typeof CageRequest>>({
        web: size(cage.web),
        pitchDiameter: size(cage.pitchDiameter),
        pocketClearance: size(cage.pocketClearance),
        landClearance: size(cage.landClearance),
        width: size(cage.width),
      }),
    groove: groove && fromGroove(groove, units),
    ballGap: size(input.ballGap),
    minBallGap: size(input.minBallGap),
    maxBallGap: size(input.maxBallGap),
    radialInternalClearance: size(input.radialInternalClearance),
    finishAllowance: size(input.finishAllowance),
    width: size(input.width),
    split: input.split,
    shopDenominator: input.shopDenominator,
  })
}

function fromGroove({ conformity, grooveRadius, cutterDiameter }: GrooveInput, units: Units): Static<typeof Groove> {
  return written<Static<typeof Groove>>({
    conformity,
    grooveRadius: grooveRadius === undefined ? undefined : show(grooveRadius, units),
    cutterDiameter: cutterDiameter === undefined ? undefined : show(cutterDiameter, units),
  })
}
