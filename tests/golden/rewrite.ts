import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'
import { injectionOf } from '#tests/support/operations.ts'

/*
 * Writes the answers of `openapi/examples/` anew, from the requests in them. Read the difference before you commit it:
 * an example is a promise to callers.
 */
const FOLDER = join(import.meta.dirname, '../../openapi/examples')

const app = await buildApp({ documented: true, config: { ...DEFAULTS, logLevel: 'silent' } })
await app.ready()
for (const file of readdirSync(FOLDER)) {
  const { summary, request }: { summary: string; request: object } = JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))
  const answer = await app.inject(injectionOf(app.swagger(), file, request))
  const status = answer.statusCode === 200 ? {} : { status: answer.statusCode }
  const example = { summary, request, ...status, response: answer.json<unknown>() }
  writeFileSync(join(FOLDER, file), `${JSON.stringify(example, null, 2)}\n`)
}
await app.close()
