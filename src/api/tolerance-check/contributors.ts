import { type Static, Type } from 'typebox'
import { type ArrangementName, traitsOf } from '#shared/bearing/arrangements.ts'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import {
  CONTRIBUTORS_OF,
  type ContributorName,
  type Contributors,
  type Scatter,
} from '#shared/questions/tolerance/input.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { Units } from '#shared/units/length.ts'
import { type Length, type NonNegativeLength, type SignedLength, show, toMm } from '#src/api/length.ts'
import type { Fault } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'

const MOST_MEASURED = 500

const size0 = (description: string) =>
  Type.Unsafe<NonNegativeLength>({ ...refTo<typeof NonNegativeLength>('NonNegativeLength'), description })

const closed = ($id: string, description: string) => ({ $id, description, additionalProperties: false })

const NormalScatter = Type.Object(
  {
    kind: Type.Literal('normal', { description: 'The kind of scatter.' }),
    mean: Type.Optional(
      Type.Unsafe<SignedLength>({
        ...refTo<typeof SignedLength>('SignedLength'),
        description:
          'Balls and groove bottoms: how far the mean is off the design, above 0 larger; default 0. `outOfRound`: mean amplitude; default 0. `finishFilm`: mean thickness; default: `finishAllowance`.',
      }),
    ),
    standardDeviation: size0('Two thirds of all lie within it, 95 % within twice as much.'),
  },
  closed('NormalScatter', 'Normally distributed.'),
)
const UniformScatter = Type.Object(
  {
    kind: Type.Literal('uniform', { description: 'The kind of scatter.' }),
    plusMinus: size0('As likely anywhere within this much either way, and never beyond.'),
  },
  closed('UniformScatter', 'Evenly spread about the design.'),
)
const TriangularScatter = Type.Object(
  {
    kind: Type.Literal('triangular', { description: 'The kind of scatter.' }),
    plusMinus: size0('Never farther off than this, and most likely not off at all.'),
  },
  closed('TriangularScatter', 'Between two ends, most likely in the middle: the design.'),
)
const MeasuredBalls = Type.Object(
  {
    kind: Type.Literal('measured', { description: 'The kind of scatter.' }),
    diameters: Type.Array(refTo<typeof Length>('Length'), {
      minItems: FEWEST_BALLS,
      maxItems: MOST_MEASURED,
      description: 'Each ball on hand, as many as the ring takes or more: drawn from these, none twice.',
    }),
  },
  closed('MeasuredBalls', "The maker's own list. Without `ballLotMean`: the list has its mean."),
)

const LENGTHS = [NormalScatter, UniformScatter, TriangularScatter]
const BALLS = [...LENGTHS, MeasuredBalls]

/** The `$id` of a schema, which its type does not know of. */
const idOf = (schema: object): string => String(Object.getOwnPropertyDescriptor(schema, '$id')?.value)

const oneOf = <T>($id: string, description: string, schemas: readonly object[]) =>
  Type.Unsafe<T>({
    $id,
    description,
    type: 'object',
    required: ['kind'],
    discriminator: { propertyName: 'kind' },
    oneOf: schemas.map((schema) => ({ $ref: idOf(schema) })),
  })

type LengthScatterRequest = Static<(typeof LENGTHS)[number]>
type BallScatterRequest = Static<(typeof BALLS)[number]>

const LengthScatter = oneOf<LengthScatterRequest>('LengthScatter', 'How something scatters.', LENGTHS)
const BallScatter = oneOf<BallScatterRequest>('BallScatter', 'How balls scatter, or which there are.', BALLS)

const scatter = (description: string) =>
  Type.Optional(Type.Unsafe<LengthScatterRequest>({ ...refTo<typeof LengthScatter>('LengthScatter'), description }))

export const ContributorsRequest = Type.Object(
  {
    ballDiameter: Type.Optional(
      Type.Unsafe<BallScatterRequest>({
        ...refTo<typeof BallScatter>('BallScatter'),
        description: 'Each ball on its own, about the mean of the lot.',
      }),
    ),
    ballLotMean: scatter('All balls together: the mean of the lot that was bought.'),
    outerGrooveBottomRadius: scatter('Radius to the bottom of the outer groove: above 0 too deep.'),
    innerGrooveBottomRadius: scatter('Radius to the bottom of the inner groove: above 0 too shallow.'),
    outOfRound: scatter(
      'Amplitude of a two-lobed error, of either groove on its own and in any direction: half of largest less smallest radius.',
    ),
    finishFilm: scatter('Thickness of the finish in either groove, the same in both.'),
    grooveCircleRadius: scatter(
      'Of plates alone, each on its own: radius of the circle in which the groove lies; above 0 too far out.',
    ),
    grooveDepth: scatter('Of plates alone, each on its own: depth of the groove; above 0 too deep.'),
  },
  {
    $id: 'ContributorsRequest',
    description:
      'What may differ from the design, and how much. At least one, or a `climate`; what is not named does not differ.',
    additionalProperties: false,
  },
)
export type ContributorsRequest = Static<typeof ContributorsRequest>

export const CONTRIBUTOR_SCHEMAS = [...BALLS, LengthScatter, BallScatter, ContributorsRequest]

interface Asked {
  readonly contributors: ContributorsRequest
  readonly climate?: unknown
  readonly design: { readonly units: Units; readonly arrangement?: ArrangementName }
}

/** The caller's contributors in the core's words, or what cannot be said together. */
export function toContributors({
  contributors: request,
  climate,
  design,
}: Asked): Result<Contributors, readonly Fault[]> {
  if (request.ballDiameter?.kind === 'measured' && request.ballLotMean !== undefined) {
    const message = 'goes without ballDiameter of kind measured: a list of balls has its mean already'
    return fail([{ path: '/contributors/ballLotMean', message }])
  }
  if (Object.keys(request).length === 0 && climate === undefined) {
    const names = CONTRIBUTORS_OF[traitsOf(design).members].join(', ')
    return fail([{ path: '/contributors', message: `must name what may differ: ${names}` }])
  }
  const entries = Object.entries(request) as [ContributorName, BallScatterRequest][]
  return ok(Object.fromEntries(entries.map(([name, scattered]) => [name, toScatter(scattered, design.units)])))
}

function toScatter(request: BallScatterRequest, units: Units): Scatter {
  switch (request.kind) {
    case 'normal':
      return {
        kind: 'normal',
        ...(request.mean === undefined ? {} : { mean: toMm(request.mean, units) }),
        standardDeviation: toMm(request.standardDeviation, units),
      }
    case 'measured':
      return { kind: 'measured', diameters: request.diameters.map((diameter) => toMm(diameter, units)) }
    default:
      return { kind: request.kind, plusMinus: toMm(request.plusMinus, units) }
  }
}

/** The way back, for the echo. */
export function fromContributors(contributors: Contributors, units: Units): ContributorsRequest {
  return Object.fromEntries(
    Object.entries(contributors).map(([name, scattered]) => [name, fromScatter(scattered, units)]),
  )
}

function fromScatter(scattered: Scatter, units: Units): BallScatterRequest {
  switch (scattered.kind) {
    case 'normal':
      return {
        kind: 'normal',
        ...(scattered.mean === undefined ? {} : { mean: show(scattered.mean, units) }),
        standardDeviation: show(scattered.standardDeviation, units),
      }
    case 'measured':
      return { kind: 'measured', diameters: scattered.diameters.map((diameter) => show(diameter, units)) }
    default:
      return { kind: scattered.kind, plusMinus: show(scattered.plusMinus, units) }
  }
}
