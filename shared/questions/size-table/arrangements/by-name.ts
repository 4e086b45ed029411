import type { InputByArrangement } from '#shared/bearing/arrangements.ts'
import type { Balls, Made, Without } from '#shared/questions/size-table/row.ts'
import { radialRow } from './radial.ts'
import { rollerRow } from './roller.ts'
import { thrustRow } from './thrust.ts'

/** The row of a pair in each arrangement that is served. */
export const ROWS = { radial: radialRow, thrust: thrustRow, roller: rollerRow } as const satisfies {
  readonly [Name in keyof InputByArrangement]?: (
    shared: Without<InputByArrangement[Name]>,
    balls: Balls,
  ) => Made<object>
}
export type Served = keyof typeof ROWS
export const SERVED = Object.keys(ROWS) as readonly Served[]

type ValueOf<T> = Extract<T, { readonly ok: true }> extends { readonly value: infer Value } ? Value : never
export type RowByArrangement = {
  readonly [Name in Served]: ValueOf<ReturnType<(typeof ROWS)[Name]>> & { readonly ballCount: number }
}

/** The fields of a design that move a row: the rest is the same in every row, or needs a bore. */
export const SHARED_NAMES = ['outerRing', 'plates', 'groove', 'ballGap'] as const
