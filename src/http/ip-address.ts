import { BlockList, isIP, isIPv6 } from 'node:net'

const GROUPS = 8
/** A house or an office has a network of 2^64 addresses of IPv6, so only its prefix tells callers apart. */
const PREFIX_GROUPS = 4

/**
 * The caller that an address stands for: itself, or with IPv6 the network of 64 bits that it is in. An address of IPv4 that
 * is written as one of IPv6 (RFC 4291 §2.5.5.2) is that of IPv4.
 *
 * @param address as the operating system writes it
 */
export function callerAt(address: string): string {
  const plain = plainAddress(address)
  if (!isIPv6(plain)) return plain
  const [head = '', tail] = plain.split('::').map((half) => half.split(':').filter(Boolean))
  const missing = tail === undefined ? 0 : GROUPS - head.length - tail.length
  const groups = [...head, ...Array<string>(missing).fill('0'), ...(tail ?? [])]
  return `${groups.slice(0, PREFIX_GROUPS).join(':')}::/64`
}

/** Without the name of the network card, and in IPv4 where it is an address of that. */
function plainAddress(address: string): string {
  return address.replace(/%.*$/, '').replace(/^::ffff:(?=\d+\.)/i, '')
}

/**
 * The address in an entry of `X-Forwarded-For`. Some proxies add the port of the caller (`192.0.2.1:51234`), some write an
 * address of IPv6 in brackets; what is no address is given back as it is.
 */
export function forwardedAddress(entry: string): string {
  const [, bracketed, withPort] =
    /^"?(?:\[([\da-f:.]+)(?:%[^\]]*)?\](?::\d+)?|(\d+\.\d+\.\d+\.\d+)(?::\d+)?)"?$/i.exec(entry) ?? []
  const address = bracketed ?? withPort ?? entry.replace(/%.*$/, '')
  return isIP(address) === 0 ? entry : address
}

/** Whether `TRUST_PROXY` names an address. */
export function trusts(trustProxy: boolean | readonly string[]): (address: string) => boolean {
  if (typeof trustProxy === 'boolean') return () => trustProxy
  const trusted = new BlockList()
  for (const network of trustProxy) {
    const [address = '', prefix] = network.split('/')
    if (prefix === undefined) trusted.addAddress(address, family(address))
    else trusted.addSubnet(address, Number(prefix), family(address))
  }
  return (address) => {
    const plain = plainAddress(address)
    return isIP(plain) !== 0 && trusted.check(plain, family(plain))
  }
}

const family = (address: string): 'ipv4' | 'ipv6' => (isIPv6(address) ? 'ipv6' : 'ipv4')
