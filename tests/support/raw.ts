import { connect } from 'node:net'

/** What a server answers to bytes that no HTTP client would send. */
export async function raw(address: string, ...pieces: string[]): Promise<string> {
  const { hostname, port } = new URL(address)
  const socket = connect(Number(port), hostname)
  let answer = ''
  socket.on('data', (chunk) => {
    answer += chunk.toString()
  })
  // A server that closes while we still write resets the connection; what it said before has been read.
  socket.on('error', () => {})
  for (const piece of pieces) socket.write(piece)
  return new Promise((resolve) => socket.on('close', () => resolve(answer)))
}
