import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ARRANGEMENT_NAMES, design } from '#shared/bearing/arrangements.ts'
import { bearingAddress } from '#src/api/bearing-address.ts'
import { toDesignInput } from '#src/api/design-input.ts'
import { sheetMark } from '#src/drawings/sheet-mark.ts'
import { readAddress } from '#src/kiosk/job/address.ts'
import { readBearing } from '#src/kiosk/job/bearing.ts'
import { anyDesigned } from '#tests/support/designed.ts'
import { PLAIN } from '#tests/support/inputs.ts'

const PUBLIC_URL = 'https://bearings.example.org'

/** The bearing that the page has at an address, read by its own code. */
function bearingAt(address: string) {
  const [url, fragment = ''] = address.split('/#', 2)
  expect(url).toBe(PUBLIC_URL)
  const read = readAddress(fragment)
  expect(read?.lost).toEqual([])
  return readBearing(read?.job.bearing ?? {}).request ?? {}
}

const size = (...texts: readonly string[]) => fc.constantFrom(...texts)
const texts = fc.record(
  {
    units: fc.constant('mm'),
    'balls.count': size('8', '12', '15', '20'),
    'balls.diameter': size('5/8 in', '16', '12.7', '⅝″'),
    bore: size('8', '1/4 in', '10.5'),
    'making.name': size('Uhr & "Werk"', 'Tide clock, hour wheel', 'a=b#c', '%'),
    'making.screws.count': size('3', '6'),
    'balls.material': size('glass', 'steel'),
    'balls.standardDeviation': size('0.05'),
    minBallGap: size('0.2'),
    finishAllowance: size('0.03'),
  },
  { requiredKeys: ['units', 'balls.count', 'balls.diameter', 'bore'] },
)

test.each(ARRANGEMENT_NAMES)('%s: the page at the address has the bearing whose code stands on the sheet', (name) => {
  fc.assert(
    fc.property(texts, ({ 'making.screws.count': screws, ...stated }) => {
      // The rings of a cage stay whole where nobody says else, and have no screws.
      const isSplit = name !== 'caged'
      const screwed = isSplit && screws !== undefined ? { 'making.screws.count': screws } : {}
      const { request = {} } = readBearing({ ...stated, ...screwed, arrangement: name })
      const made = design(toDesignInput(request as never))
      fc.pre(made.ok)
      const address = bearingAddress(PUBLIC_URL, request, made.value) ?? ''
      expect(address.length).toBeLessThanOrEqual(300)
      const there = design(toDesignInput(bearingAt(address) as never))
      expect(there.ok && sheetMark(there.value)).toEqual(sheetMark(made.value))
    }),
    { numRuns: 60 },
  )
})

describe('of an address', () => {
  const made = anyDesigned(PLAIN)
  const request = { units: 'mm', balls: { count: 12, diameter: '5/8 in' }, bore: '1/2"' }

  test('there is none where nobody has said where the service is', () => {
    expect(bearingAddress(null, request, made)).toBeUndefined()
  })

  test('the bearing alone is in it, as it was written: nothing of the sheet', () => {
    expect(bearingAddress(PUBLIC_URL, { ...request, paper: 'a4', format: 'pdf', engine: '0.1.0' }, made)).toBe(
      `${PUBLIC_URL}/#v=1&units=mm&balls.count=12&balls.diameter=5/8+in&bore=1/2%22`,
    )
  })

  test.each([
    ['with so many measured balls that no code holds them', { diameters: Array.from({ length: 90 }, () => 15.95) }],
  ])('there is none %s', (_name, balls) => {
    expect(
      bearingAddress(PUBLIC_URL, { ...request, balls: { count: 12, diameter: 16, ...balls } }, made),
    ).toBeUndefined()
  })
})
