import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fragmentOf, readAddress } from '#src/kiosk/job/address.ts'
import { EXAMPLE_JOB, type Job, STAGES } from '#src/kiosk/job/job.ts'
import { kindsOf, PLUG_FITS, READING_FIELDS, type Reading } from '#src/kiosk/job/reading.ts'

const size = fc.constantFrom('5/8', '1 3/16', '16', '0.75', '16 mm', '1-3/16"', '⅝″', '0.001')
const reading = (ring: 'outer' | 'inner'): fc.Arbitrary<Reading> =>
  fc
    .tuple(
      fc.constantFrom(...kindsOf(ring, 'radial')),
      size,
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom(...PLUG_FITS),
    )
    .map(([kind, value, count, result]) => {
      const fields = READING_FIELDS[kind]
      return {
        kind,
        ...(fields.value !== undefined && { value }),
        ...(fields.second !== undefined && { second: fields.second.kind === 'count' ? String(count) : value }),
        ...(fields.hasResult && { result }),
      }
    })
const states = (ring: 'outer' | 'inner') =>
  fc
    .tuple(
      fc.array(
        fc.record({
          readings: fc.array(reading(ring), { maxLength: 3 }),
          cut: fc.oneof(
            fc.record({ with: fc.constant('sharp-tool' as const), radial: size }),
            fc.record(
              { with: fc.constant('abrasive' as const), radial: size, strokes: fc.integer({ min: 1, max: 900 }) },
              { requiredKeys: ['with', 'radial'] },
            ),
          ),
        }),
        { maxLength: 4 },
      ),
      fc.array(reading(ring), { maxLength: 3 }),
    )
    .map(([earlier, now]) => [...earlier, { readings: now }])
const job: fc.Arbitrary<Job> = fc.record({
  stage: fc.constantFrom(...STAGES),
  ring: fc.constantFrom('outer' as const, 'inner' as const),
  bearing: fc
    .record({ 'balls.count': fc.constantFrom('12', '300', 'x'), 'balls.diameter': size, bore: size, ballGap: size })
    .map((texts) => ({ units: 'in', ...texts })),
  outer: states('outer'),
  inner: states('inner'),
  lot: fc.array(size, { maxLength: 20 }),
  choices: fc.record({ load: fc.constantFrom('20', ''), paper: fc.constant('letter') }, { requiredKeys: [] }),
})

test('a job comes back from its address as it was', () => {
  fc.assert(
    fc.property(job, (each) => {
      expect(readAddress(fragmentOf(each))).toEqual({ job: each, lost: [] })
    }),
  )
})

test('an ordinary job, ten states with two readings each at both rings, takes at most 2 kB', () => {
  const read: Reading[] = [
    { kind: 'last-ball-opening', value: '13.5', second: '1' },
    { kind: 'groove-bottom-diameter', value: '77.15' },
  ]
  const cut = { with: 'abrasive', radial: '0.25', strokes: 40 } as const
  const ring = [...Array.from({ length: 9 }, () => ({ readings: read, cut })), { readings: read }]
  const lot = Array.from({ length: 40 }, () => '15.95')
  expect(fragmentOf({ ...EXAMPLE_JOB, stage: 'lathe', outer: ring, inner: ring, lot }).length).toBeLessThanOrEqual(2000)
})

test.each(['', 'units=mm', 'v=2&units=mm', 'top'])('%j is the address of no job', (fragment) => {
  expect(readAddress(fragment)).toBeUndefined()
})

test('any text gives a job, and says where it lost something', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 300 }), fc.string({ maxLength: 100 }), (any, ring) => {
      const read = readAddress(`v=1&${any}&outer=${encodeURIComponent(ring)}`)
      expect(read?.job.outer.at(-1)?.cut).toBeUndefined()
    }),
  )
  expect(readAddress('v=1&units=mm&outer=o12,zz')).toMatchObject({
    lost: [{ text: 'zz' }],
    job: { outer: [{ readings: [{}] }] },
  })
  expect(readAddress('v=1&units=mm&outer=oNaN')?.lost).toEqual([{ text: 'oNaN' }])
  expect(readAddress('v=1&units=cm')).toMatchObject({
    lost: [{ name: 'units', text: 'cm' }],
    job: { bearing: { units: 'mm' } },
  })
  expect(readAddress('v=1&arrangement=tilted')?.lost).toEqual([{ name: 'arrangement', text: 'tilted' }])
  expect(readAddress('v=1&units=mm&outer=o12~s-1')?.lost).toEqual([{ text: 's-1' }])
})
