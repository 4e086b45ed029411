import { connect, type Socket } from 'node:net'
import { setTimeout } from 'node:timers/promises'

const PAUSE_MS = 2
const DRIP_MS = 20

/** The request that somebody hid behind another; its answer says so, for its id comes back. */
export const HIDDEN = 'GET /health/live HTTP/1.1\r\nhost: a\r\nx-request-id: hidden\r\nconnection: close\r\n\r\n'

/** What a server answers to bytes that no HTTP client would send. */
export async function raw(address: string, ...pieces: string[]): Promise<string> {
  const { socket, answer } = opened(address)
  for (const piece of pieces) socket.write(piece)
  return answer
}

/** The same, with a while between the pieces, so that each comes in a packet of its own. */
export async function inPackets(address: string, pieces: readonly string[]): Promise<string> {
  const { socket, answer } = opened(address)
  socket.setNoDelay()
  for (const piece of pieces) {
    if (socket.destroyed) break
    socket.write(piece)
    await setTimeout(PAUSE_MS)
  }
  return answer
}

/** Sends the beginning, then the same bytes again every so often, until the connection is closed. */
export async function dripping(address: string, begin: string, bytes: string): Promise<string> {
  const { socket, answer } = opened(address)
  socket.write(begin)
  const timer = setInterval(() => socket.write(bytes), DRIP_MS)
  return answer.finally(() => clearInterval(timer))
}

function opened(address: string): { readonly socket: Socket; readonly answer: Promise<string> } {
  const { hostname, port } = new URL(address)
  const socket = connect(Number(port), hostname)
  let text = ''
  socket.on('data', (chunk) => {
    text += chunk.toString()
  })
  // A server that closes while we still write resets the connection; what it said before has been read.
  socket.on('error', () => {})
  return { socket, answer: new Promise((resolve) => socket.on('close', () => resolve(text))) }
}
