import { missingOf } from './found.ts'
import { PROGRAMS, type Program } from './programs.ts'

/** Once before all tests: names what is missing, for whose want tests in this folder are skipped. Installs nothing. */
export function setup(): void {
  for (const program of missingOf(Object.keys(PROGRAMS) as Program[]))
    console.log(`skipped: needs ${program} (apt-get install ${PROGRAMS[program].package})`)
}
