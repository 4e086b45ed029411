import { expect, test } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { designHere, readBearing, scopeOf, statedBesides, statedIdly } from '#src/kiosk/job/bearing.ts'
import { FIRST_JOB, withBearing } from '#src/kiosk/job/job.ts'
import { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { lostLines } from '#src/words/kiosk/link.ts'
import { changedKind, idleLine } from '#src/words/kiosk/plan.ts'
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

test('what a link states of things that the bearing does not have is listed, and nothing is made of it', () => {
  const bearing = { ...FIRST_JOB.bearing, 'cage.web': '4', boer: '12' }
  expect(statedIdly(bearing, 'radial')).toEqual(['cage.web', 'boer'])
  expect(statedIdly(bearing, 'caged')).toEqual(['boer'])
  expect(idleLine('cage.web', '4', TERMS.radial)).toBe(
    'Wood between two pockets: 4 (a radial bearing does not have this, so it is not used)',
  )
})

test('a wood beside plywood is listed, so that it can be removed', () => {
  const ply = { ...FIRST_JOB.bearing, 'making.woods.outerRing.construction': 'cross-laminated-ply' }
  expect(statedBesides(ply, 'radial')).toEqual(['making.woods.outerRing.species'])
})

test('a link that has a text for a whole part, and the part as well, is still read', () => {
  for (const texts of [
    { 'making.woods': 'oak', ...FIRST_JOB.bearing },
    { ...FIRST_JOB.bearing, 'making.woods': 'oak' },
  ])
    expect(() => readBearing(texts)).not.toThrow()
})

test('a choice that there is not is answered with the choices in words', () => {
  const { faults } = readBearing({ ...FIRST_JOB.bearing, split: 'both' })
  expect(faults.get('split')).toBe('Choose one of: inner ring, outer ring, neither.')
})

test.each([
  [{ name: 'arrangement', text: 'tilted' }, /a kind of bearing, “tilted”, that this page does not know/],
  [{ name: 'units', text: 'cm' }, /units, “cm”/],
  [{ text: 'zz' }, /could not be read, “zz”/],
])('of what a link has lost the page names it: %o', (lost, words) => {
  expect(lostLines([lost])).toEqual([expect.stringMatching(words)])
})
