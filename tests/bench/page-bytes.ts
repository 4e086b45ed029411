import { request } from 'undici'

const IMPORT = /(?:import|from)\s*["']([^"']+)["']/g
const SCRIPT = /<script[^>]*\ssrc="([^"]+)"/g
/** A script that stands in the page holds text that a course pastes into a page of its own. */
const INLINE = /(<script[^>]*>)[\s\S]*?<\/script>/g

/**
 * How many bytes a browser is sent for the page until its first drawing [compressed, without headers]: the page with the
 * scripts that stand in it, those that it names, and what they import without being asked to.
 */
export async function pageBytes(address: string): Promise<number> {
  const compressed = { 'accept-encoding': 'br', accept: '*/*' }
  const bytesOf = async (url: string): Promise<number> => {
    const { body, statusCode } = await request(url, { headers: compressed })
    if (statusCode !== 200) throw new Error(`${url} answered ${statusCode}`)
    return (await body.arrayBuffer()).byteLength
  }
  const textOf = async (url: string): Promise<string> => (await request(url)).body.text()
  const named = (text: string, pattern: RegExp, base: string): readonly string[] =>
    Array.from(text.matchAll(pattern), ([, path = '']) => new URL(path, base).href)
  const waiting = [...named((await textOf(address)).replaceAll(INLINE, '$1'), SCRIPT, address)]
  const seen = new Set<string>()
  let bytes = await bytesOf(address)
  for (let url = waiting.pop(); url !== undefined; url = waiting.pop()) {
    if (seen.has(url)) continue
    seen.add(url)
    bytes += await bytesOf(url)
    waiting.push(...named(await textOf(url), IMPORT, url))
  }
  return bytes
}
