import type { SheetReading } from '#src/api/job-sheet/schema.ts'

/** Where the figure of a blank goes. */
export const goesTo = (reading: SheetReading): string =>
  `fit correction${'ring' in reading ? `, ${reading.ring} ring` : ''}: ${reading.kind}${reading.field}`
