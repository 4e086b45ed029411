// ASME B18.6.1, Wood Screws: basic diameter 0.060 + 0.013 n in. Tolerance: what a double can hold.
// Holes: published tables, pilots of 70 % (softwood) and 90 % (hardwood) of the root. Tolerance: one drill step, 1/64 in.
import { expect, test } from 'vitest'
import { clearanceDrill, WOOD_SCREWS, withdrawalPerInch } from '#shared/data/wood-screws.ts'

const fraction = (text: string): number => {
  const [above = '', below = '1'] = text.split('/')
  return Number(above) / Number(below)
}

test.each(WOOD_SCREWS)('ASME B18.6.1, No. $gauge: $diameter in', ({ gauge, diameter }) => {
  expect(diameter).toBeWithin(1e-12, 0.06 + 0.013 * gauge)
})

test('ASME B18.6.1: a flat head grows by 0.0265 in a number, two shanks and a hair wide', () => {
  const heads = WOOD_SCREWS.filter(({ head }) => head !== undefined)
  expect(heads.length).toBeGreaterThan(9)
  const first = heads[0]
  for (const { gauge, head = Number.NaN, diameter } of heads) {
    expect(head).toBeWithin(0.0015, (first?.head ?? Number.NaN) + 0.0265 * (gauge - (first?.gauge ?? Number.NaN)))
    expect(head / diameter).toBeWithin(0.02, 2.015)
  }
})

test.each(WOOD_SCREWS.filter(({ root }) => root !== undefined))(
  'No. $gauge: clearance $clearance takes the shank, pilots are 70 and 90 % of the root $root',
  ({ gauge, diameter, root = Number.NaN, clearance, softwoodPilot, hardwoodPilot }) => {
    expect(root).toBeLessThan(diameter)
    if (clearance !== undefined) expect(fraction(clearance), `No. ${gauge}`).toBeWithin(1 / 64, diameter)
    if (softwoodPilot !== undefined) expect(fraction(softwoodPilot)).toBeWithin(1 / 64, 0.7 * root)
    if (hardwoodPilot !== undefined) expect(fraction(hardwoodPilot)).toBeWithin(1 / 64, 0.9 * root)
  },
)

test('the finer the screw, the finer its thread', () => {
  const threads = WOOD_SCREWS.flatMap(({ threadsPerInch }) => threadsPerInch ?? [])
  expect(threads.length).toBeGreaterThan(5)
  expect([...threads].sort((a, b) => b - a)).toEqual(threads)
})

test('a clearance drill lets the shank through: where the printed one does not, the next 1/64 in does', () => {
  for (const screw of WOOD_SCREWS) {
    const drill = clearanceDrill(screw)
    if (screw.clearance === undefined || drill === undefined) continue
    expect(fraction(drill)).toBeGreaterThanOrEqual(screw.diameter)
    if (fraction(screw.clearance) >= screw.diameter) expect(drill).toBe(screw.clearance)
    else expect(fraction(drill)).toBe(fraction(screw.clearance) + 1 / 64)
  }
  const drills = WOOD_SCREWS.filter(({ gauge }) => gauge === 4 || gauge === 10).map(clearanceDrill)
  expect(drills).toEqual(['1/8', '13/64'])
})

// engineeringtoolbox.com, allowable withdrawal of wood screws: printed without its decimals.
test('a No. 10 screw in wood of 0.45 holds 109 lbf for each inch of thread', () => {
  expect(Math.floor(withdrawalPerInch(0.45, 0.19))).toBe(109)
})
