import {
  answerTo,
  type CagedDesignRequest,
  type DesignRequest,
  type DesignResponse,
  design,
  designByQuery,
  drawing,
  drawingByQuery,
  jobSheetByQuery,
  problemOf,
  sizeTableByQuery,
} from './service.ts'

/*
 * A caller's program, for whichever client `service.ts` stands for. The compiler must find the mistakes that are marked in
 * it, and no others; run, it prints what it was told.
 */

/** A radial bearing need not say that it is one. */
const clock: DesignRequest = {
  units: 'mm',
  balls: { count: 14, diameter: 14, material: 'glass', standardDeviation: 0.1 },
  bore: 10,
  ballGap: 0.7,
}
const turntable: DesignRequest = { units: 'mm', arrangement: 'thrust', balls: { count: 20, diameter: 16 }, bore: 30 }
const rollers: DesignRequest = {
  units: 'in',
  arrangement: 'roller',
  balls: { count: 14, diameter: '1/2', length: '3/4' },
  bore: '1/2',
}
const caged: CagedDesignRequest = { units: 'mm', arrangement: 'caged', balls: { count: 9, diameter: 16 }, bore: 12 }
const requests = [clock, turntable, rollers, caged]

// @ts-expect-error: a name that no arrangement has
const misspelt = problemOf(design({ body: { ...clock, boer: 10 } }))
// @ts-expect-error: a material that no ball has
const soft: DesignRequest = { ...clock, balls: { count: 14, diameter: 14, material: 'cheese' } }
// @ts-expect-error: only rollers have a length
const long: DesignRequest = { ...clock, arrangement: 'radial', balls: { count: 14, diameter: 14, length: 20 } }
// @ts-expect-error: a turntable has no split
const split: DesignRequest = { units: 'mm', arrangement: 'thrust', balls: clock.balls, bore: 30, split: 'inner-ring' }

/** A size that only this arrangement has, or that it calls by its own name. */
function sizeOf(answer: DesignResponse): number {
  // @ts-expect-error: no ring before it is known to have one
  answer.outerRing
  switch (answer.arrangement) {
    case 'thrust':
      // @ts-expect-error: a turntable has plates
      answer.outerRing
      return answer.plates.lower.grooveDepth
    case 'roller':
      // @ts-expect-error: a roller runs on a plain track
      answer.outerRing.grooveDepth
      // @ts-expect-error: and so it has no land
      answer.outerRing.landDiameter
      return answer.outerRing.trackDiameter
    case 'caged':
      // @ts-expect-error: balls in a cage leave no gap
      answer.ballGap
      return answer.cage.pocketDiameter
    case 'radial':
      // @ts-expect-error: a full ring of balls has no cage
      answer.cage
      return answer.outerRing.grooveDepth
    default:
      // With every arrangement looked at, none is left.
      return answer satisfies never
  }
}

/** One client takes a drawing as text, another as bytes. */
const lengthOf = (drawn: string | Blob): number => (typeof drawn === 'string' ? drawn.length : drawn.size)

const told: { operation: string; arrangement: string; size?: number }[] = []
for (const body of requests) {
  const made = await answerTo(design({ body }))
  const again = await answerTo(design({ body: made.input }))
  if (sizeOf(again) !== sizeOf(made)) throw new Error('the echoed input must give the same bearing')
  told.push({ operation: 'design', arrangement: made.arrangement, size: sizeOf(made) })
  const drawn = await answerTo(drawing({ path: { view: 'assembly', format: 'svg' }, body }))
  told.push({ operation: 'drawing', arrangement: made.arrangement, size: lengthOf(drawn) })
}

for (const arrangement of ['radial', 'thrust', 'roller', 'caged'] as const) {
  const query = { units: 'in', arrangement, 'balls.count': 10, 'balls.diameter': '5/8', bore: '1/2' } as const
  const made = await answerTo(designByQuery({ query }))
  told.push({ operation: 'designByQuery', arrangement: made.arrangement, size: sizeOf(made) })
  const sheet = await answerTo(jobSheetByQuery({ query }))
  told.push({ operation: 'jobSheetByQuery', arrangement: sheet.arrangement })
  const drawn = await answerTo(drawingByQuery({ path: { view: 'gauges', format: 'svg' }, query }))
  told.push({ operation: 'drawingByQuery', arrangement, size: lengthOf(drawn) })
}
for (const arrangement of ['radial', 'thrust', 'roller'] as const) {
  const table = await answerTo(
    sizeTableByQuery({ query: { units: 'mm', arrangement, diameters: [14, 16], counts: [12] } }),
  )
  told.push({ operation: 'sizeTableByQuery', arrangement: table.arrangement })
}

console.log(JSON.stringify({ told, problem: await misspelt, mistakes: [soft, long, split].length }))
