import { expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { designHere, readBearing, scopeOf, statedBesides } from '#src/kiosk/job/bearing.ts'
import { FIRST_JOB, withBearing } from '#src/kiosk/job/job.ts'
import { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { changedKind } from '#src/words/kiosk/plan.ts'
import { TERMS } from '#src/words/terms.ts'

/* The bearings are invented. */

const HALL = withBearing(FIRST_JOB, {
  'making.name': 'Tide clock',
  'making.woods.innerRing.species': 'cherry-black',
  'outerRing.grooveDepth': '3.5',
  'outerRing.engagement': '',
  ballGap: '1.2',
})

test.each(ARRANGEMENT_NAMES)('a bearing as %s keeps its name, air, woods and whatever that one has too', (to) => {
  const { bearing } = withBearing(HALL, asArrangement(HALL.bearing, scopeOf('radial'), scopeOf(to)).changes)
  for (const [name, text] of Object.entries(HALL.bearing))
    if (/^(units|bore|balls\.|making\.(name|climate|woods\.balls))/.test(name)) expect(bearing[name], name).toBe(text)
  expect(bearing['ballGap']).toBe(to === 'caged' ? undefined : '1.2')
  // No part is without a wood, so the year is still worked out.
  expect(readBearing(bearing).faults).toEqual(new Map())
  expect(designHere(readBearing(bearing))).toMatchObject({ ok: true })
})

test('what a turntable does not have is named once, and its plates are of the wood of the rings', () => {
  const { changes, dropped, isWoodTaken } = asArrangement(HALL.bearing, scopeOf('radial'), scopeOf('thrust'))
  expect(changes).toMatchObject({ 'making.woods.plates.species': 'maple-sugar', 'outerRing.grooveDepth': '' })
  // The usual depth of the inner groove, which the first job states, is nothing that a maker would miss.
  expect(dropped).toEqual(['outerRing.grooveDepth', 'making.woods.innerRing.species'])
  expect(changedKind({ terms: TERMS.thrust, from: TERMS.radial, dropped, isWoodTaken })).toBe(
    'A turntable does not have these, so they are gone: Depth of the outer groove; Wood of the inner ring. Its other parts are of the wood that you chose: see “Wood and place”.',
  )
})

test('where nothing is lost, nothing is said', () => {
  const { dropped, isWoodTaken } = asArrangement(FIRST_JOB.bearing, scopeOf('radial'), scopeOf('roller'))
  expect(changedKind({ terms: TERMS.roller, from: TERMS.radial, dropped, isWoodTaken })).toBeUndefined()
})

test.each([
  [{ 'making.climate.relativeHumidity.min': '70' }, 'making.climate.relativeHumidity.min', /above that of the dampest/],
  [{ 'making.climate.today.relativeHumidity': 'x' }, 'making.climate.today.relativeHumidity', /from 0 to 100/],
  [{ 'making.woods.innerRing.species': '' }, 'making.woods.innerRing.species', /Choose a wood/],
])('a year that cannot be is a fault of its field: %o', (changes, name, words) => {
  expect(readBearing(withBearing(FIRST_JOB, changes).bearing).faults.get(name)).toMatch(words)
})

test('the wood of a part that the bearing lacks is in no form, so it is listed and can be removed', () => {
  const cage = 'making.woods.cage.species'
  const balls = 'making.woods.balls.species'
  const bearing = { ...HALL.bearing, [cage]: 'beech-european', [balls]: 'birch-yellow' }
  expect(statedBesides(bearing, 'radial')).toEqual([cage])
  expect(statedBesides(bearing, 'caged')).toEqual([])
  expect(statedBesides({ ...bearing, 'balls.material': 'glass' }, 'caged')).toEqual([balls])
})
