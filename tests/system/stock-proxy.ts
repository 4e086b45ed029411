import { spawn } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { onTestFinished } from 'vitest'
import { emptyFolder } from '#tests/support/empty-folder.ts'
import { freePort } from '#tests/support/free-port.ts'
import { SYSTEM_ENVIRONMENT } from './programs.ts'

/**
 * HAProxy before replicas, as Debian has it: requests by turns, to those that say they are ready; and what one replica did not
 * answer, whatever its method, is asked of another.
 *
 * @returns its address
 */
export async function proxyBefore(ports: readonly number[]): Promise<string> {
  const port = await freePort()
  const file = join(emptyFolder(), 'haproxy.cfg')
  writeFileSync(file, configuration(port, ports))
  const proxy = spawn('haproxy', ['-db', '-f', file], {
    env: SYSTEM_ENVIRONMENT,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  onTestFinished(() => void proxy.kill('SIGKILL'))
  const said: string[] = []
  proxy.stderr.on('data', (chunk) => said.push(String(chunk)))
  const address = `http://127.0.0.1:${port}`
  while (!(await answers(address))) {
    if (proxy.exitCode !== null) throw new Error(`HAProxy ended: ${said.join('')}`)
    await sleep(50)
  }
  return address
}

const answers = (address: string): Promise<boolean> =>
  fetch(`${address}/health/ready`).then(
    ({ ok }) => ok,
    () => false,
  )

const configuration = (port: number, ports: readonly number[]): string => `
global
  maxconn 512
defaults
  mode http
  timeout connect 1s
  timeout client 30s
  timeout server 30s
  timeout check 5s
  option http-buffer-request
  option redispatch 1
  retries 10
  retry-on conn-failure empty-response 503
frontend callers
  bind 127.0.0.1:${port}
  default_backend replicas
backend replicas
  balance roundrobin
  option httpchk GET /health/ready
  default-server check inter 200ms fall 1 rise 1
${ports.map((replica) => `  server r${replica} 127.0.0.1:${replica}\n`).join('')}`
