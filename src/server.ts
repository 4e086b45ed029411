import closeWithGrace from 'close-with-grace'
import { buildApp } from './app.ts'
import { type Config, misspelt, readConfig } from './config.ts'

const config = readConfig(process.env)
if (config.ok) {
  start(config.value).catch((error: Error) => complain([error.message]))
} else {
  complain(config.error)
}

async function start(config: Config): Promise<void> {
  const app = await buildApp({ config })
  const ignored = misspelt(process.env)
  if (ignored.length > 0) app.log.warn({ ignored }, 'ignored environment variables whose names look misspelled')
  // Not at beforeExit: a service that could not listen ends by itself, and its exit code must say so.
  closeWithGrace({ delay: config.shutdownGraceMs, logger: app.log, skip: ['beforeExit'] }, async ({ err, signal }) => {
    if (err !== undefined) app.log.fatal({ err }, 'stopping because of a bug')
    else app.log.info({ signal }, 'stopping')
    await app.close()
  })
  await app.serve()
}

/** A wrong setting: whoever starts the service needs the sentence, not the stack. */
function complain(sentences: readonly string[]): void {
  process.stderr.write(`Racewright did not start.\n${sentences.map((sentence) => `  ${sentence}\n`).join('')}`)
  process.exitCode = 1
}
