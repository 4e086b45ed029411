import { randomInt } from 'node:crypto'
import { once } from 'node:events'
import { createServer } from 'node:net'

/** Below those that a system gives to connections on their way out (Linux from 32768): one of these could be taken again at once. */
const [FROM, BELOW] = [20_000, 32_000]

/** A port on which nothing listens, as far as one can know. */
export async function freePort(): Promise<number> {
  const port = randomInt(FROM, BELOW)
  const server = createServer().listen(port, '127.0.0.1')
  try {
    await once(server, 'listening')
  } catch {
    return freePort()
  }
  server.close()
  await once(server, 'close')
  return port
}
