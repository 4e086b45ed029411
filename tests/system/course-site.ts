import { readFileSync } from 'node:fs'
import { createServer, type RequestListener } from 'node:http'
import { createServer as createSecureServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { ENGINE } from '#src/engine.ts'

const PAGE = readFileSync(join(import.meta.dirname, 'larkmoor-course.html'), 'utf8')
const BEARING = 'units=mm&amp;balls.count=14&amp;balls.diameter=14&amp;balls.material=glass&amp;bore=10&amp;ballGap=0.7'

/**
 * The course page of Larkmoor on an origin of its own, embedding what a service draws, which is started once that origin
 * is known. With a certificate it is served by HTTPS.
 */
export async function courseSite(
  serviceFor: (origin: string) => Promise<string>,
  certificate?: { readonly key: Buffer; readonly cert: Buffer },
): Promise<string> {
  let page = ''
  const answer: RequestListener = (_request, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8')
    response.end(page)
  }
  const server = certificate === undefined ? createServer(answer) : createSecureServer(certificate, answer)
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => void server.close())
  // By another name, so that it is another site and not only another port.
  const origin = `${certificate === undefined ? 'http' : 'https'}://localhost:${(server.address() as AddressInfo).port}`
  const service = await serviceFor(origin)
  page = PAGE.replaceAll('SERVICE', service).replaceAll('BEARING', BEARING).replaceAll('ENGINE', ENGINE)
  return `${origin}/`
}
