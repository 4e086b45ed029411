import { shownLength } from '#src/api/length.ts'
import { shownNumber } from '#src/api/number.ts'
import { object } from '#src/api/schema.ts'
import { outsideDiameter, rowsOf } from '#src/api/size-table/row.ts'

export const RADIAL_ROWS = rowsOf({
  name: 'radial',
  bearing: 'radial bearing',
  sizes: {
    gapPerGrooveDepth: shownNumber('Change of the ball gap per unit of groove depth.'),
    outerRing: object('Sizes of the outer ring.', {
      outsideDiameter,
      landDiameter: shownLength('Diameter of the land, the hole of the ring.'),
      grooveBottomDiameter: shownLength('Diameter across the bottoms of the groove.'),
    }),
  },
  sizesOf: (row) => row,
  columns: [
    'outerRing.landDiameter',
    'outerRing.grooveBottomDiameter',
    'outerRing.outsideDiameter',
    'gapPerGrooveDepth',
  ],
})
