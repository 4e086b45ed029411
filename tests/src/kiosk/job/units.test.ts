import { expect, test } from 'vitest'
import { scopeOf } from '#src/kiosk/job/bearing.ts'
import { FIRST_JOB, type Job, withBearing } from '#src/kiosk/job/job.ts'
import { inOtherUnits } from '#src/kiosk/job/units.ts'

const SCOPE = scopeOf('radial')

/* An invented job in the middle of its work. */
const JOB: Job = {
  ...withBearing(FIRST_JOB, { ballGap: '1,2', 'balls.diameters': '16.1,15.9', width: '1 in' }),
  outer: [
    { readings: [{ kind: 'last-ball-opening', value: '13', second: '1' }], cut: { with: 'abrasive', radial: '0.4' } },
    { readings: [{ kind: 'groove-depth', value: '3.1', second: '72' }] },
  ],
  lot: ['16.1', '15.9'],
  choices: { load: '44.5', grooveScatter: '0.1', findSizes: '14; 16', onHand: '16.5 x 12; 17 × 20', paper: 'a4' },
}

test('what was stated and measured stays what it is when the units change', () => {
  const inches = inOtherUnits(JOB, 'in', { bore: '1/2' }, SCOPE)
  expect(inches.bearing).toMatchObject({
    units: 'in',
    bore: '1/2',
    ballGap: '1.2 mm',
    width: '1',
    'balls.diameters': '16.1 mm,15.9 mm',
    'balls.count': '12',
    'making.climate.today.relativeHumidity': '50',
  })
  expect(inches.outer[0]).toEqual({
    readings: [{ kind: 'last-ball-opening', value: '13 mm', second: '1' }],
    cut: { with: 'abrasive', radial: '0.4 mm' },
  })
  expect(inches.outer[1]?.readings[0]).toMatchObject({ value: '3.1 mm', second: '72 mm' })
  expect(inches.lot).toEqual(['16.1 mm', '15.9 mm'])
  // A pound-force is 4.4482216152605 N, by its definition.
  expect(inches.choices).toEqual({
    load: '10',
    grooveScatter: '0.1 mm',
    findSizes: '14 mm; 16 mm',
    onHand: '16.5 mm x 12; 17 mm × 20',
    paper: 'a4',
  })
})

test('and back again it is as it was typed', () => {
  const back = inOtherUnits(inOtherUnits(JOB, 'in', {}, SCOPE), 'mm', {}, SCOPE)
  expect(back.outer).toEqual(JOB.outer)
  expect(back.lot).toEqual(JOB.lot)
  expect(back.choices).toEqual(JOB.choices)
  expect(back.bearing).toEqual({ ...JOB.bearing, ballGap: '1.2', width: '1 in' })
})
