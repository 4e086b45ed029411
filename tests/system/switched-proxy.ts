import { createServer, request, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { onTestFinished } from 'vitest'

/**
 * What stands between a workshop and the service: it passes requests on, answers for the service that it is down, sends
 * everything to a page of its own, never answers, or stops in the middle of an answer. A slow one says that all its
 * answers are ten days old, as a cache would that kept them so long: a browser asks for them anew at every visit.
 */
export type Way = 'through' | 'slow' | 'down' | 'sign-in' | 'silent' | 'half'

const TEN_DAYS_S = 864_000

export type SwitchedProxy = {
  readonly address: string
  readonly go: (way: Way) => void
  /** What the service answered, as `304 /path`. */
  readonly answers: readonly string[]
}

/**
 * A proxy before a service, whose way can be changed at any time.
 *
 * @param service the address to pass on to, asked for anew at every request
 */
export async function switchedProxy(service: () => string): Promise<SwitchedProxy> {
  let way: Way = 'through'
  const answers: string[] = []
  const server: Server = createServer((incoming, answer) => {
    if (way === 'silent') return
    if (way === 'down')
      return void answer.writeHead(502, { 'content-type': 'text/html' }).end('<h1>502 Bad Gateway</h1>')
    if (way === 'sign-in') return void answer.writeHead(200, { 'content-type': 'text/html' }).end('<h1>Sign in</h1>')
    const isCut = way === 'half'
    const { method, headers, url } = incoming
    const onward = request(service() + url, { method, headers, agent: false }, (answered) => {
      answers.push(`${answered.statusCode} ${url?.split('?', 1)[0]}`)
      const age = way === 'slow' ? { age: String(TEN_DAYS_S) } : {}
      answer.writeHead(answered.statusCode ?? 500, { ...answered.headers, ...age })
      if (!isCut) answered.pipe(answer)
      else answered.once('data', (first: Buffer) => answer.write(first.subarray(0, 2_000)))
    })
    onward.on('error', () => answer.destroy())
    incoming.pipe(onward)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.close()
    server.closeAllConnections()
  })
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    answers,
    go: (next) => {
      way = next
    },
  }
}
