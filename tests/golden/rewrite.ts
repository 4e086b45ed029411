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

const app = await buildApp({ config: { ...DEFAULTS, logLevel: 'silent' } })
await app.ready()
for (const file of readdirSync(FOLDER)) {
  const { summary, request }: { summary: string; request: object } = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
  const answer = await app.inject(injectionOf(app.swagger(), file, request))
  const status = answer.statusCode === 200 ? {} : { status: answer.statusCode }
  const example = { summary, request, ...status, response: answer.json<unknown>() }
  writeFileSync(join(FOLDER, file), `${JSON.stringify(example, null, 2)}\n`)
}
await app.close()

const DRAWINGS = join(import.meta.dirname, 'drawings')
mkdirSync(DRAWINGS, { recursive: true })
for (const { name, text } of goldenDrawings()) writeFileSync(join(DRAWINGS, name), text)
