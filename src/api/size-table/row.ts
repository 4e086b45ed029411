import { type TObject, type TProperties, Type } from 'typebox'
import type { BallRing } from '#shared/bearing/ball-ring.ts'
import type { RowByArrangement, Served } from '#shared/questions/size-table/arrangements/by-name.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { answerOf } from '#src/api/answer.ts'
import { shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { integer, named, object, type Raw, shownBy } from '#src/api/schema.ts'
import { refTo } from '#src/http/schema.ts'
import { capitalised } from '#src/words/figure.ts'

export const ROWS_DESCRIPTION = 'A row for each diameter and count: all counts of the first diameter, then of the next.'

const RING = {
  balls: object('The balls, as in a design.', {
    count: integer('How many there are.'),
    diameter: shownLength('Nominal diameter.'),
  }),
  closedPitchRadius: shownLength('Pitch radius at which the balls exactly close.'),
  pitchRadius: shownLength('Pitch radius that leaves `ballGap`.'),
  pitchDiameter: shownLength('Pitch diameter: twice the pitch radius.'),
  ballGap: shownLength('Gap between the last ball and the first.'),
  gapPerPitchRadius: shownNumber('Change of the ball gap per unit of pitch radius.'),
  gauge: object('The gauge of the outer groove.', {
    nominalDiameter: shownLength('Diameter of the plug that fits inside the seated balls.'),
  }),
}
export const outsideDiameter = shownLength('Outside diameter.')

const ofRing = (ring: BallRing & { readonly ballCount: number }): Raw<TObject<typeof RING>> => ({
  ...ring,
  balls: { count: ring.ballCount, diameter: ring.resolved.ballDiameter },
  pitchDiameter: mm(2 * ring.pitchRadius),
})

const RING_COLUMNS = [
  'balls.diameter',
  'balls.count',
  'closedPitchRadius',
  'pitchRadius',
  'pitchDiameter',
  'ballGap',
  'gauge.nominalDiameter',
]

/** The part of a row that is the arrangement's own. */
interface Own<Name extends Served, Sizes extends TProperties> {
  readonly name: Name
  /** Bearings of the arrangement, in the singular. */
  readonly bearing: string
  readonly sizes: Sizes
  readonly sizesOf: (row: RowByArrangement[Name]) => Raw<TObject<Sizes>>
  /** Its columns in a spreadsheet, after those of all. */
  readonly columns: readonly string[]
}

/** The rows of an arrangement: their schema, the answer that has them, how one is made, and the columns of a spreadsheet. */
export function rowsOf<const Name extends Served, Sizes extends TProperties>({
  name,
  bearing,
  sizes,
  sizesOf,
  columns,
}: Own<Name, Sizes>) {
  const prefix = capitalised(name)
  const Row = named(`${prefix}SizeTableRow`, `The sizes of a ${bearing} for one ball diameter and count.`, {
    ...RING,
    ...sizes,
  })
  const Response = named(
    `${prefix}SizeTableResponse`,
    ROWS_DESCRIPTION,
    answerOf([name], refTo('SizeTableRequest'), { rows: Type.Array(refTo<typeof Row>(`${prefix}SizeTableRow`)) }),
  )
  return {
    Row,
    Response,
    toRow: (row: RowByArrangement[Name], units: Units): object =>
      shownBy(Row as TObject, { ...ofRing(row), ...sizesOf(row) }, units),
    columns: [...RING_COLUMNS, ...columns],
  }
}
