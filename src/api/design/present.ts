import { type Static, type TProperties, type TSchema, Type } from 'typebox'
import {
  type ArrangementName,
  type DesignByArrangement,
  type InputByArrangement,
  sourcesOf,
} from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
import { FLAT_SAWN_SOURCES } from '#shared/wood/flat-sawn-play.ts'
import { answer, answerOf } from '#src/api/answer.ts'
import { toAssumptions } from '#src/api/assumption.ts'
import { cautionsOf } from '#src/api/caution.ts'
import { requestRef, toDesignRequest } from '#src/api/design-input.ts'
import { type Dimension, toDimension } from '#src/api/dimension.ts'
import { toSource } from '#src/api/source.ts'
import { toWarning } from '#src/api/warning.ts'
import { refTo } from '#src/http/schema.ts'
import { designSummary } from '#src/words/summary.ts'
import { termsOf } from '#src/words/terms.ts'
import type { MakingAnswer } from './making.ts'

type Made = MakingAnswer<unknown>
type Echoed<Name extends ArrangementName> = Pick<ResolvedBalls, 'assumed'> & {
  readonly input: InputByArrangement[Name]
}

/** The schema of an arrangement's answer: its own figures between what every answer has. */
export const designResponse = <Name extends ArrangementName, Body extends TProperties, Making extends TSchema>(
  arrangement: Name,
  about: { readonly $id: string; readonly description: string },
  body: Body,
  making: Making,
) =>
  Type.Object(
    answerOf([arrangement], requestRef(arrangement), {
      ...body,
      dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
      making: Type.Optional(making),
    }),
    about,
  )

/** Such an answer, in the caller's units and in words. */
export const toDesignAnswer = <Name extends ArrangementName, Body extends object, Making>(
  arrangement: Name,
  design: DesignByArrangement[Name] & { readonly bearing: { readonly resolved: Echoed<Name> } },
  body: Body,
  making: MakingAnswer<Making> | undefined,
) =>
  answer(
    { ...toEchoed(arrangement, design.bearing.resolved, making), summary: designSummary(design) },
    { ...body, ...toTable(design, making) },
    toNotes(design, making),
  )

/** The request for a design with every default filled in, and the defaults that were used. */
export function toEchoed<Name extends ArrangementName>(
  arrangement: Name,
  { input: resolved, assumed }: Echoed<Name>,
  making?: Made,
) {
  const input = toDesignRequest<Name>(resolved)
  return {
    arrangement,
    units: resolved.units,
    input: making === undefined ? input : { ...input, making: making.request },
    assumed: [...toAssumptions(assumed, arrangement, input, resolved.seasoned?.paths), ...(making?.assumed ?? [])],
  }
}

type Noted = DesignOf<{ readonly resolved: ResolvedBalls }>

/** The table of sizes to cut, and how to make it where the request asks for that. */
function toTable<M>(
  { bearing, dimensions }: Noted,
  made: MakingAnswer<M> | undefined,
): { dimensions: Static<typeof Dimension>[]; making?: M } {
  const { resolved } = bearing
  const terms = termsOf(resolved.input)
  return {
    dimensions: dimensions.map((row) => toDimension(row, resolved, terms)),
    ...(made === undefined ? {} : { making: made.making }),
  }
}

export function toNotes({ bearing, warnings }: Noted, making?: Made) {
  const { units, making: plan } = bearing.resolved.input
  const ofNoYear = plan?.climate === undefined ? FLAT_SAWN_SOURCES : []
  return {
    warnings: [
      ...warnings.map((warning) => toWarning(warning, units, termsOf(bearing.resolved.input))),
      ...(making?.warnings ?? []),
    ],
    cautions: cautionsOf(bearing.resolved),
    sources: [...new Set([...sourcesOf(bearing.resolved.input), ...ofNoYear, ...(making?.sources ?? [])])].map(
      toSource,
    ),
  }
}
