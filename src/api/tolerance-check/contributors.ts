import { type Static, Type } from 'typebox'
import { FEWEST_BALLS } from '#shared/geometry/ring-of-balls.ts'
import type { ContributorName, Contributors, Scatter } from '#shared/questions/tolerance/input.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import type { Units } from '#shared/units/length.ts'
import { echo, type Length, nonNegativeLength, signedLength, toMm } from '#src/api/length.ts'
import { namedRequest } from '#src/api/schema.ts'
import type { Fault } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import { LOT_MEAN_OF_LIST } from '#src/words/tolerance-check.ts'

const MOST_MEASURED = 500

const NormalScatter = namedRequest('NormalScatter', 'Normally distributed.', {
  kind: Type.Literal('normal', { description: 'The kind of scatter.' }),
  mean: Type.Optional(
    signedLength(
      'For balls and groove bottoms: the difference of the mean from the design, above 0 if larger; default 0. For `outOfRound`: the mean amplitude; default 0. For `finishFilm`: the mean thickness; default: `finishAllowance`.',
    ),
  ),
  standardDeviation: nonNegativeLength(
    'About two thirds of all values lie within one standard deviation of the mean, and 95 % within two.',
  ),
})
const UniformScatter = namedRequest('UniformScatter', 'Evenly distributed about the design.', {
  kind: Type.Literal('uniform', { description: 'The kind of scatter.' }),
  plusMinus: nonNegativeLength(
    'Every value within this distance of the design is equally likely. None lies beyond it.',
  ),
})
const TriangularScatter = namedRequest(
  'TriangularScatter',
  'Between two limits, and most likely at the design in the middle.',
  {
    kind: Type.Literal('triangular', { description: 'The kind of scatter.' }),
    plusMinus: nonNegativeLength(
      'No value lies farther from the design than this, and the design itself is most likely.',
    ),
  },
)
const MeasuredBalls = namedRequest(
  'MeasuredBalls',
  'A list of measured balls. It has a mean of its own, so `ballLotMean` must be absent.',
  {
    kind: Type.Literal('measured', { description: 'The kind of scatter.' }),
    diameters: Type.Array(refTo<typeof Length>('Length'), {
      minItems: FEWEST_BALLS,
      maxItems: MOST_MEASURED,
      description:
        'The diameter of each ball on hand: at least as many as the bearing needs. Balls are drawn from this list without replacement.',
    }),
  },
)

const LENGTHS = [NormalScatter, UniformScatter, TriangularScatter]
const BALLS = [...LENGTHS, MeasuredBalls]

/** The `$id` of a schema, which is not part of its type. */
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

const LengthScatter = oneOf<LengthScatterRequest>('LengthScatter', 'The distribution of a length.', LENGTHS)
const BallScatter = oneOf<BallScatterRequest>(
  'BallScatter',
  'The distribution of ball diameters, or a list of measured balls.',
  BALLS,
)

const scatter = (description: string) =>
  Type.Optional(Type.Unsafe<LengthScatterRequest>({ ...refTo<typeof LengthScatter>('LengthScatter'), description }))

export const ContributorsRequest = namedRequest(
  'ContributorsRequest',
  'The sizes that may differ from the design, and by how much. A size that is not named does not differ, except for single balls: without `ballDiameter` they differ as the design says.',
  {
    ballDiameter: Type.Optional(
      Type.Unsafe<BallScatterRequest>({
        ...refTo<typeof BallScatter>('BallScatter'),
        description:
          'The diameter of each single ball about the mean of the lot. Default: normal, with `balls.standardDeviation` of the design. For balls that are all alike give a standard deviation of 0.',
      }),
    ),
    ballLotMean: scatter('The mean diameter of the lot that was bought: it moves all balls together.'),
    outerGrooveBottomRadius: scatter('Radius to the bottom of the outer groove. Above 0 the groove is too deep.'),
    innerGrooveBottomRadius: scatter('Radius to the bottom of the inner groove. Above 0 the groove is too shallow.'),
    outOfRound: scatter(
      'Amplitude of a two-lobed error of each groove, independent and in any direction: half the difference between the largest and the smallest radius.',
    ),
    finishFilm: scatter('Thickness of the finish, the same in both grooves.'),
    grooveCircleRadius: scatter(
      'For turntables only, each plate on its own: radius of the groove circle. Above 0 the groove is too far out.',
    ),
    grooveDepth: scatter('For turntables only, each plate on its own: depth of the groove. Above 0 it is too deep.'),
  },
)
export type ContributorsRequest = Static<typeof ContributorsRequest>

export const CONTRIBUTOR_SCHEMAS = [...BALLS, LengthScatter, BallScatter, ContributorsRequest]

interface ContributorsOf {
  readonly contributors: ContributorsRequest
  readonly design: { readonly units: Units }
}

/** The contributors of a request as core input, or the faults of a combination. */
export function toContributors({
  contributors: request,
  design,
}: ContributorsOf): Result<Contributors, readonly Fault[]> {
  if (request.ballDiameter?.kind === 'measured' && request.ballLotMean !== undefined) {
    return fail([{ path: '/contributors/ballLotMean', message: LOT_MEAN_OF_LIST }])
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

/** The reverse, for the echo. */
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
        ...(scattered.mean === undefined ? {} : { mean: echo(scattered.mean, units) }),
        standardDeviation: echo(scattered.standardDeviation, units),
      }
    case 'measured':
      return { kind: 'measured', diameters: scattered.diameters.map((diameter) => echo(diameter, units)) }
    default:
      return { kind: scattered.kind, plusMinus: echo(scattered.plusMinus, units) }
  }
}
