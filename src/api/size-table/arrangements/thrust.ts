import { shownLength } from '#src/api/length.ts'
import { object } from '#src/api/schema.ts'
import { outsideDiameter, rowsOf } from '#src/api/size-table/row.ts'

export const THRUST_ROWS = rowsOf({
  name: 'thrust',
  bearing: 'turntable',
  sizes: {
    plates: object('Sizes of both plates.', { outsideDiameter }),
    plateGap: shownLength('Space between the faces of the plates.'),
    height: shownLength('Height over both plates.'),
  },
  sizesOf: ({ plate, ...row }) => ({ ...row, plates: plate }),
  columns: ['plates.outsideDiameter', 'plateGap', 'height', 'gapPerPitchRadius'],
})
