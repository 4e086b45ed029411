import { spawnSync } from 'node:child_process'

/** Programs that read our drawings or stand before or beside our replicas, none of them ours, with the packages of Debian that bring them. */
const TOOLS = [
  { found: ['pdftoppm', '-v'], package: 'poppler-utils' },
  { found: ['qpdf', '--version'], package: 'qpdf' },
  { found: ['/usr/bin/python3', '-c', 'import ezdxf'], package: 'python3-ezdxf' },
  { found: ['chromium', '--version'], package: 'chromium' },
  { found: ['haproxy', '-v'], package: 'haproxy' },
  { found: ['redis-server', '-v'], package: 'redis-server' },
  { found: ['openssl', 'version'], package: 'openssl' },
] as const

const runs = ([program, ...args]: readonly [string, ...string[]]): boolean => {
  const { error, status } = spawnSync(program, args, { stdio: 'ignore' })
  return error === undefined && status === 0
}

/**
 * Once before all tests: installs what is missing, where the system takes packages and we may (a container as root). Where
 * not, the tests that need one of them fail, each with a line that says what to install.
 */
export function setup(): void {
  const missing = TOOLS.filter(({ found }) => !runs(found)).map((tool) => tool.package)
  if (missing.length === 0) return
  const mayInstall = process.getuid?.() === 0 && runs(['apt-get', '--version'])
  if (!mayInstall) return
  const apt = (...args: readonly string[]) =>
    spawnSync('apt-get', ['-qq', ...args], {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
  console.log(`Installing what the tests need: ${missing.join(', ')}`)
  apt('update')
  apt('install', '-y', '--no-install-recommends', ...missing)
}
