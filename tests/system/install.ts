import { spawnSync } from 'node:child_process'
import { missingOf } from './found.ts'
import { PROGRAMS, type Program } from './programs.ts'

/*
 * Installs what the tests in this folder need, on a system of Debian's kind, as root. For a machine that tests for others. An
 * engine for containers is not installed: whether one may run is up to the machine.
 */

const wanted = (Object.keys(PROGRAMS) as Program[]).filter((program) => program !== 'docker')
const packages = new Set(missingOf(wanted).map((program) => PROGRAMS[program].package))

const apt = (...args: readonly string[]) =>
  spawnSync('apt-get', ['-qq', ...args], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  })

if (packages.size > 0) {
  console.log(`Installing ${[...packages].join(', ')}`)
  apt('update')
  process.exitCode = apt('install', '-y', '--no-install-recommends', ...packages).status ?? 1
}
