import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { namesIn, withValue } from '#shared/bearing/field.ts'
import { ask, post } from './support/ask.ts'
import { HABITS, LEAST_GOOD, MOST_CHECKS } from './support/fit-workshop.ts'
import { sharedApp } from './support/started-app.ts'

const README = readFileSync(join(import.meta.dirname, '../README.md'), 'utf8')

/** The code blocks of the README in one language, in their order. */
const blocks = (language: string): readonly string[] =>
  [...README.matchAll(new RegExp(`\`\`\`${language}\\n(.*?)\`\`\``, 'gs'))].map(([, text = '']) => text)

const [shownAnswer = '', shownProblem = ''] = blocks('json')
/** Path and body of a call as the README writes it. */
const CALL = /http:\/\/127\.0\.0\.1:8080(\S+) .*-d '(.*)'/s
const [call = '', fitCall = '', seasonCall = ''] = blocks('sh').filter((text) => text.startsWith('curl'))

test('the worked call gives the answer that the README shows', async () => {
  const [, path = '', body = ''] = CALL.exec(call) ?? []
  const answer = await post(`${await sharedApp()}${path}`, body)
  expect(answer.status).toBe(200)
  expect(JSON.parse(answer.text)).toMatchObject(JSON.parse(shownAnswer))
})

test('what it says for the lathe are the figures of that answer, rounded', async () => {
  const [, path = '', body = ''] = CALL.exec(call) ?? []
  const { outerRing, closedPitchRadius, gapPerGrooveDepth, gapPerBallDiameter, ballGap, ...answer } = JSON.parse(
    (await post(`${await sharedApp()}${path}`, body)).text,
  )
  const words = README.replace(/\s+/g, ' ')
  for (const sentence of [
    `Turn it to ${outerRing.outsideDiameter} mm and open the hole to ${outerRing.landDiameter.toFixed(1)} mm.`,
    `Cut a groove of ${outerRing.grooveRadius.toFixed(1)} mm radius until it measures ${outerRing.grooveBottomDiameter.toFixed(1)} mm across the bottoms, ${outerRing.grooveDepth.toFixed(1)} mm below the land.`,
    `each tenth of a millimetre of depth opens the gap by ${(gapPerGrooveDepth / 10).toFixed(1)} mm`,
    `At a pitch radius of ${closedPitchRadius.toFixed(3)} mm the balls close with no gap at all.`,
    `a tenth larger than 14 mm, the gap shrinks by ${(-gapPerBallDiameter / 10).toFixed(1)} mm`,
    `With rigid balls that takes a gap of ${answer.assemblyGap.toFixed(2)} mm`,
    `Cut both rings from ${answer.input.making.woods.outerRing.construction} boards: the gap of ${ballGap} mm and the play of ${answer.radialInternalClearance} mm are then what the year needs`,
    `Marbles that differ by ${answer.input.balls.standardDeviation} mm leave less room inside, so here go enters only at a gap of about ${answer.gauge.ballGapWhenGoEnters.mean.toFixed(1)} mm, give or take ${answer.gauge.ballGapWhenGoEnters.standardDeviation.toFixed(2)} mm`,
  ])
    expect(words).toContain(sentence)
  // "and the ring does not close"; "from the side, over the land"; "comes apart at mid groove"
  expect(ballGap + gapPerBallDiameter / 10).toBeLessThan(0)
  expect(answer.assembly).toMatchObject({ easiestWay: expect.stringMatching(/land/) })
  expect(answer.input.split).toBe('inner-ring')
})

test('what it says of the simulated workshop are the marks that the workshop holds', () => {
  const words = README.replace(/\s+/g, ' ')
  const lenient = new Set(HABITS.flatMap(({ least }) => least ?? []))
  expect(words).toContain(`at least ${100 * LEAST_GOOD} of 100 rings`)
  expect([...lenient].map((least) => words.includes(`at least ${100 * least} where`))).toEqual([true])
  expect(words).toContain(`more than ${MOST_CHECKS} checks`)
})

test('the groove that it shows gets a next cut', async () => {
  const [, path = '', body = ''] = CALL.exec(fitCall) ?? []
  const answer = await post(`${await sharedApp()}${path}`, body)
  expect(JSON.parse(answer.text)).toMatchObject({ state: 'more-to-remove', nextStep: { radial: expect.any(Number) } })
})

test('the year that it shows stops the bearing, and the answer says what to build in', async () => {
  const [, path = '', body = ''] = CALL.exec(seasonCall) ?? []
  const answer = await post(`${await sharedApp()}${path}`, body)
  expect(JSON.parse(answer.text)).toMatchObject({
    runsAllYear: false,
    today: { troubles: [] },
    states: [{ troubles: ['balls-bind', 'rings-bind'] }, {}],
    band: expect.any(Object),
    buildIn: { action: expect.any(String), changes: expect.any(Array) },
  })
})

test('with the changes in its input, as it says, the bearing has the chances that were promised', async () => {
  const [, path = '', body = ''] = CALL.exec(seasonCall) ?? []
  const asked = async (request: string) => JSON.parse((await post(`${await sharedApp()}${path}`, request)).text)
  const { input, buildIn } = await asked(body)
  type Change = { readonly path: string; readonly value: unknown }
  const changed = buildIn.changes.reduce(
    (whole: object, { path: at, value }: Change) => withValue(whole, namesIn(at), value),
    input,
  )
  expect(await asked(JSON.stringify(changed))).toMatchObject({ runsAllYear: true, probability: buildIn.probability })
})

test('the query that it shows is a bearing', async () => {
  const [query = ''] = /\/v1\/design\?[^`]+/.exec(README) ?? []
  expect(await ask(`${await sharedApp()}${query}`)).toMatchObject({ status: 200 })
})

test('the problem that it shows is what a bad bore gets', async () => {
  const answer = await post(`${await sharedApp()}/v1/design`, {
    units: 'in',
    balls: { count: 10, diameter: '5/8' },
    bore: '3/0',
  })
  expect(JSON.parse(answer.text)).toEqual(JSON.parse(shownProblem))
})
