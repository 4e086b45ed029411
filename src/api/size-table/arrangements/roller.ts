import { shownLength } from '#src/api/length.ts'
import { object } from '#src/api/schema.ts'
import { outsideDiameter, rowsOf } from '#src/api/size-table/row.ts'

export const ROLLER_ROWS = rowsOf({
  name: 'roller',
  bearing: 'roller bearing',
  sizes: {
    outerRing: object('Sizes of the outer ring.', {
      outsideDiameter,
      trackDiameter: shownLength('Diameter of the plain cylinder on which the rollers run.'),
    }),
  },
  sizesOf: ({ outerRing }) => ({ outerRing: { ...outerRing, trackDiameter: outerRing.grooveBottomDiameter } }),
  columns: ['outerRing.trackDiameter', 'outerRing.outsideDiameter', 'gapPerPitchRadius'],
})
