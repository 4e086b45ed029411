import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** Packages that do not go with ours, each set in a folder with a lock file of its own. */
const FOLDERS = ['tests/clients/hey-api']

/** Whether a folder has the packages of its lock file: npm leaves a copy of that among them. */
function isInstalled(folder: string): boolean {
  const installed = join(folder, 'node_modules/.package-lock.json')
  return existsSync(installed) && statSync(installed).mtimeMs >= statSync(join(folder, 'package-lock.json')).mtimeMs
}

/** Once before all tests: installs what is missing. Where that fails, the tests that need it fail and say so. */
export function setup(): void {
  for (const folder of FOLDERS.filter((each) => !isInstalled(each))) {
    console.log(`Installing the packages of ${folder}`)
    spawnSync('npm', ['ci', '--prefix', folder, '--no-audit', '--no-fund'], { stdio: ['ignore', 'ignore', 'inherit'] })
  }
}
