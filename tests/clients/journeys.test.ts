import { expect, test } from 'vitest'
import { run } from '#tests/support/run.ts'
import { sharedApp } from '#tests/support/started-app.ts'

/** What can only be asked without holding answers to their schema: the tool takes every body for JSON. */
const ON_PAPER = ['--workflow', 'paper', '--severity', 'SCHEMA_CHECK=off']

test.each([
  ['each answer held to the document', ['--skip', 'paper'], 6],
  ['on paper', ON_PAPER, 1],
])('callers’ journeys, %s', async (_name, which, steps) => {
  const server = `racewright=${await sharedApp()}`
  const ran = await run('redocly', ['respect', 'openapi/journeys.arazzo.yaml', ...which, '--server', server])
  expect(ran?.code, ran?.out).toBe(0)
  expect(`${ran?.out}${ran?.err}`).toMatch(new RegExp(`Steps: ${steps} passed,.* ${steps} total`))
})
