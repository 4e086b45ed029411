import { type Static, type TProperties, type TSchema, Type } from 'typebox'
import {
  type ArrangementName,
  type DesignByArrangement,
  type InputByArrangement,
  sourcesOf,
} from '#shared/bearing/arrangements.ts'
import type { DesignOf } from '#shared/bearing/design.ts'
import type { ResolvedBalls } from '#shared/bearing/resolve.ts'
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
import type { StockAnswer } from './stock.ts'

type Stocked = StockAnswer<unknown>
type Echoed<Name extends ArrangementName> = Pick<ResolvedBalls, 'assumed'> & {
  readonly input: InputByArrangement[Name]
}

/** The schema of an arrangement's answer: its own figures between what every answer has. */
export const designResponse = <Name extends ArrangementName, Body extends TProperties, Stock extends TSchema>(
  arrangement: Name,
  about: { readonly $id: string; readonly description: string },
  body: Body,
  stock: Stock,
) =>
  Type.Object(
    answerOf([arrangement], requestRef(arrangement), {
      ...body,
      dimensions: Type.Array(refTo<typeof Dimension>('Dimension')),
      stock: Type.Optional(stock),
    }),
    about,
  )

/** Such an answer, in the caller's units and in words. */
export const toDesignAnswer = <Name extends ArrangementName, Body extends object, Stock>(
  arrangement: Name,
  design: DesignByArrangement[Name] & { readonly bearing: { readonly resolved: Echoed<Name> } },
  body: Body,
  stock: StockAnswer<Stock> | undefined,
) =>
  answer(
    { ...toEchoed(arrangement, design.bearing.resolved, stock), summary: designSummary(design) },
    { ...body, ...toTable(design, stock) },
    toNotes(design, stock),
  )

/** The request for a design with every default filled in, and the defaults that were used. */
export function toEchoed<Name extends ArrangementName>(
  arrangement: Name,
  { input: resolved, assumed }: Echoed<Name>,
  stock?: Stocked,
) {
  const input = toDesignRequest<Name>(resolved)
  return {
    arrangement,
    units: resolved.units,
    input: stock === undefined ? input : { ...input, stock: stock.request },
    assumed: [...toAssumptions(assumed, arrangement, input), ...(stock?.assumed ?? [])],
  }
}

type Noted = DesignOf<{ readonly resolved: ResolvedBalls }>

/** The table of sizes to cut, and the stock where the request asks for it. */
const toTable = <S>(
  { bearing, dimensions }: Noted,
  stock: StockAnswer<S> | undefined,
): { dimensions: Static<typeof Dimension>[]; stock?: S } => ({
  dimensions: dimensions.map((row) => toDimension(row, bearing.resolved.input.units, termsOf(bearing.resolved.input))),
  ...(stock === undefined ? {} : { stock: stock.stock }),
})

export function toNotes({ bearing, warnings }: Noted, stock?: Stocked) {
  const { units } = bearing.resolved.input
  return {
    warnings: [
      ...warnings.map((warning) => toWarning(warning, units, termsOf(bearing.resolved.input))),
      ...(stock?.warnings ?? []),
    ],
    cautions: cautionsOf(bearing.resolved),
    sources: [...new Set([...sourcesOf(bearing.resolved.input), ...(stock?.sources ?? [])])].map(toSource),
  }
}
