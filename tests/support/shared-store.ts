import { once } from 'node:events'
import { type AddressInfo, createServer, type Socket } from 'node:net'
import { onTestFinished } from 'vitest'
import type { StoreAddress } from '#src/config.ts'

/** A store that counts, as far as the service asks it to: it reads RESP and knows `AUTH` and the one script. */
export async function startedStore(password?: string) {
  const counts = new Map<string, number>()
  const asked: string[][] = []
  const sockets = new Set<Socket>()
  const server = createServer((socket) => {
    sockets.add(socket)
    let isKnown = password === undefined
    let text = ''
    socket.on('error', () => {})
    socket.on('data', (chunk) => {
      text += chunk.toString('latin1')
      for (let command = next(); command !== undefined; command = next()) {
        asked.push(command)
        socket.write(answerTo(command))
      }
    })
    const next = (): string[] | undefined => {
      const [head = '', ...lines] = text.split('\r\n')
      const count = Number(head.slice(1))
      if (!head.startsWith('*') || lines.length <= 2 * count) return undefined
      text = lines.slice(2 * count).join('\r\n')
      return lines.slice(0, 2 * count).filter((_line, index) => index % 2 === 1)
    }
    const answerTo = ([name, ...rest]: string[]): string => {
      if (name === 'AUTH') isKnown = rest.at(-1) === password
      if (!isKnown) return '-NOAUTH who are you\r\n'
      if (name === 'AUTH') return '+OK\r\n'
      const [, , key = '', windowMs = ''] = rest
      counts.set(key, (counts.get(key) ?? 0) + 1)
      return `*2\r\n:${counts.get(key)}\r\n:${windowMs}\r\n`
    }
  }).listen(0, '127.0.0.1')
  await once(server, 'listening')
  const stop = (): void => {
    server.close()
    for (const socket of sockets) socket.destroy()
  }
  onTestFinished(stop)
  const address: StoreAddress = {
    host: '127.0.0.1',
    port: (server.address() as AddressInfo).port,
    login: password === undefined ? [] : [password],
  }
  return { address, asked, stop }
}
