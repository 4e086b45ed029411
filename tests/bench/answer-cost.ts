import { readFileSync } from 'node:fs'
import { request } from 'undici'
import { cpuSeconds, type Started } from './started.ts'

/* Processor time of an answer, threads and all, in that of designs: what a person waits for, whatever the machine. */

const exampleOf = (file: string): unknown => JSON.parse(readFileSync(`openapi/examples/${file}`, 'utf8')).request

const normalScatter = (standardDeviation: number) => ({ kind: 'normal', standardDeviation })
const BEARING = {
  units: 'mm',
  balls: { count: 12, diameter: 16, material: 'glass', standardDeviation: 0.1 },
  bore: 12,
}
const PLY = { construction: 'cross-laminated-ply' }
const PIECES = { construction: 'segmented', species: 'maple-sugar' }
const BOARD = { construction: 'flat-sawn', species: 'maple-sugar' }
const CHECK = {
  design: BEARING,
  contributors: {
    ballDiameter: normalScatter(0.1),
    ballLotMean: normalScatter(0.05),
    outerGrooveBottomRadius: normalScatter(0.1),
    innerGrooveBottomRadius: normalScatter(0.05),
  },
}
const LOBED = { ...CHECK, contributors: { ...CHECK.contributors, outOfRound: normalScatter(0.05) } }
const CLIMATE = { relativeHumidity: { min: 35, max: 60 }, today: { relativeHumidity: 50 } }
const checkOf = (ring: object) => ({
  ...CHECK,
  design: { ...BEARING, making: { woods: { outerRing: ring, innerRing: ring }, climate: CLIMATE } },
})
const QUERY = 'units=mm&balls.count=12&balls.diameter=16&bore=12'

/** What is asked: a body to post, or an address alone. */
type Asked = { readonly path: string; readonly body?: unknown }
type Answer = Asked & { readonly what: string; readonly mark: number }

const ANSWERS: readonly Answer[] = [
  { what: 'tolerance check without trials', mark: 100, path: '/v1/tolerance-check', body: CHECK },
  { what: 'the same out of round', mark: 100, path: '/v1/tolerance-check', body: LOBED },
  { what: 'the same in a year, of ply', mark: 300, path: '/v1/tolerance-check', body: checkOf(PLY) },
  { what: 'the same in a year, of segments', mark: 300, path: '/v1/tolerance-check', body: checkOf(PIECES) },
  { what: 'the same in a year, of boards', mark: 300, path: '/v1/tolerance-check', body: checkOf(BOARD) },
  {
    what: 'seasonal fit, a year in months',
    mark: 200,
    path: '/v1/seasonal-fit',
    body: exampleOf('seasonalFit-months.json'),
  },
  ...['assembly', 'templates', 'gauges'].map((view) => ({
    what: `${view} as PDF`,
    mark: 100,
    path: `/v1/drawings/${view}.pdf?${QUERY}`,
  })),
  { what: 'job sheet as PDF', mark: 100, path: `/v1/job-sheet?${QUERY}&format=pdf` },
]
const WARM_UP = 30
const MEASURED = 100
/** Of designs, which are so short that a hundredth of a second, in which processor time is told, is many. */
const DESIGNS = 2_000

export type Cost = { readonly what: string; readonly mark: number; readonly us: number; readonly designUs: number }

/** @param started a server that is warm for designs */
export async function answerCosts(started: Started): Promise<readonly Cost[]> {
  const designUs = await usOf(started, { path: '/v1/design', body: BEARING }, DESIGNS)
  const costs: Cost[] = []
  for (const { what, mark, ...asked } of ANSWERS) costs.push({ what, mark, us: await usOf(started, asked), designUs })
  return costs
}

const PLAY_TURNS = 9

/** Processor time of a design with its default play and of the same design with the play stated, taking turns. */
export async function playCost(started: Started): Promise<{ readonly byDefault: number; readonly stated: number }> {
  const design = { path: '/v1/design', body: BEARING }
  const { radialInternalClearance } = JSON.parse(await answerTo(started, design))
  const asked = { byDefault: design, stated: { ...design, body: { ...BEARING, radialInternalClearance } } }
  const us = { byDefault: [] as number[], stated: [] as number[] }
  for (let turn = 0; turn < PLAY_TURNS; turn += 1) {
    us.byDefault.push(await usOf(started, asked.byDefault, DESIGNS))
    us.stated.push(await usOf(started, asked.stated, DESIGNS))
  }
  return { byDefault: middle(us.byDefault), stated: middle(us.stated) }
}

const middle = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN

async function usOf(started: Started, asked: Asked, count = MEASURED): Promise<number> {
  await send(started, asked, WARM_UP)
  const before = cpuSeconds(started)
  await send(started, asked, count)
  return ((cpuSeconds(started) - before) / count) * 1e6
}

async function send(started: Started, asked: Asked, count: number): Promise<void> {
  for (let sent = 0; sent < count; sent += 1) await answerTo(started, asked)
}

async function answerTo({ address }: Started, { path, body }: Asked): Promise<string> {
  const answer = await request(address + path, {
    ...(body !== undefined && {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    }),
  })
  const text = await answer.body.text()
  if (answer.statusCode !== 200) throw new Error(`${path} answered ${answer.statusCode}: ${text}`)
  return text
}
