import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { injectionOf } from '#tests/support/operations.ts'
import { goldenDrawings } from './drawings.ts'

/*
 * Writes the answers of `openapi/examples/` anew, from the requests in them, and the drawings beside this file. Read the
 * difference, and look at every drawing that changed, before you commit it: both are promises to callers.
 */
const FOLDER = join(import.meta.dirname, '../../openapi/examples')

// However busy this machine is: that it takes too long is no answer to keep.
const app = await buildApp({ config: { ...DEFAULTS, logLevel: 'silent', taskDeadlineMs: 600_000 } })
await app.ready()
for (const file of readdirSync(FOLDER)) {
  const { summary, request }: { summary: string; request: object } = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
  const answer = await app.inject(injectionOf(app.swagger(), file, request))
  if (answer.statusCode >= 500) throw new Error(`${file} must not fail the service: ${answer.body}`)
  const status = answer.statusCode === 200 ? {} : { status: answer.statusCode }
  const example = { summary, request, ...status, response: answer.json<unknown>() }
  writeFileSync(join(FOLDER, file), `${JSON.stringify(example, null, 2)}\n`)
}
await app.close()

const DRAWINGS = join(import.meta.dirname, 'drawings')
mkdirSync(DRAWINGS, { recursive: true })
for (const { name, text } of goldenDrawings()) writeFileSync(join(DRAWINGS, name), text)
