import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildApp } from '#src/app.ts'
import { DEFAULTS } from '#src/config.ts'

const FILE = join(import.meta.dirname, '../../openapi/openapi.json')

const app = await buildApp({ config: { ...DEFAULTS, logLevel: 'silent' } })
await app.ready()
writeFileSync(FILE, `${JSON.stringify(app.swagger(), null, 2)}\n`)
await app.close()
