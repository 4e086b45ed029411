/*
 * Starts the service, or says why it cannot. The one module in JavaScript: a Node.js that is too old for the others reads it.
 */
const NEEDED = '22.18'

if (process.features.typescript) {
  import('./server.ts').catch((error) => {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error
    complain(`A package is missing: ${error.message}`, 'Run `npm ci` first.')
  })
} else {
  complain(
    `It needs Node.js ${NEEDED} or later, and this is ${process.versions.node}.`,
    'Run `npm ci` without --ignore-scripts: it installs Node.js 26 for this project, which `npm start` then uses.',
  )
}

function complain(...sentences) {
  process.stderr.write(`Racewright did not start.\n${sentences.map((sentence) => `  ${sentence}\n`).join('')}`)
  process.exitCode = 1
}
