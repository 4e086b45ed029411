/* What tests and benchmarks ask of the worker threads. */

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

/** A selection from thirty balls: milliseconds of a thread. */
export const SMALL_SELECTION = {
  design: DESIGN,
  measured: Array.from({ length: 30 }, (_, index) => 16 + 0.1 * Math.sin(index)),
  goal: 'close-groove',
}

const MONTHS = Array.from({ length: 24 }, (_, index) => ({
  name: `month ${index + 1}`,
  temperature: 15,
  relativeHumidity: Math.round(50 + 3 * Math.sin(index)),
}))
const WOOD = { species: 'maple-sugar' }

/** A search through a year of two dozen months: seconds of a thread. */
export const LARGE_SEARCH = {
  units: 'mm',
  outsideDiameter: { max: 2000 },
  bore: { min: 8, max: 20, step: 2 },
  balls: Array.from({ length: 24 }, (_, index) => ({ diameter: 10 + index })),
  counts: { min: 10, max: 60 },
  show: 'all',
  year: {
    woods: { outerRing: WOOD, innerRing: WOOD, balls: WOOD },
    climate: { today: { temperature: 20, relativeHumidity: 50 }, months: MONTHS },
  },
}
