import { brotliCompressSync } from 'node:zlib'
import { request } from 'undici'

const IMPORT = /(?:import|from)\s*["']([^"']+)["']/g
const SCRIPT = /<script[^>]*\ssrc="([^"]+)"/g
/** A script that stands in the page holds text that a course pastes into a page of its own. */
const INLINE = /(<script[^>]*>)[\s\S]*?<\/script>/g
/** The second script of the page, for which the first drawing does not wait: all before it has come when that is drawn. */
const SECOND_SCRIPT = '<script type="module">'

/**
 * How many bytes a browser is sent for the page until its first drawing [compressed, without headers]: the page up to its
 * second script, the scripts that it names before, and what they import without being asked to.
 *
 * @throws Error where the page has no second script
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
  const page = await textOf(address)
  const end = page.indexOf(SECOND_SCRIPT)
  if (end < 0) throw new Error(`${address} has no second script`)
  const first = page.slice(0, end)
  const waiting = [...named(first.replaceAll(INLINE, '$1'), SCRIPT, address)]
  const seen = new Set<string>()
  let bytes = brotliCompressSync(first).length
  for (let url = waiting.pop(); url !== undefined; url = waiting.pop()) {
    if (seen.has(url)) continue
    seen.add(url)
    bytes += await bytesOf(url)
    waiting.push(...named(await textOf(url), IMPORT, url))
  }
  return bytes
}
