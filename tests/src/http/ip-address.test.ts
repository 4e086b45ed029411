import { BlockList } from 'node:net'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { callerAt, forwardedAddress, trusts } from '#src/http/ip-address.ts'

describe('an entry of X-Forwarded-For is an address', () => {
  test.each([
    ['192.0.2.1', '192.0.2.1'],
    ['192.0.2.1:51234', '192.0.2.1'],
    ['"192.0.2.1:51234"', '192.0.2.1'],
    ['2001:db8::1', '2001:db8::1'],
    ['[2001:db8::1]', '2001:db8::1'],
    ['[2001:db8::1]:443', '2001:db8::1'],
    ['"[2001:db8::1]:443"', '2001:db8::1'],
    ['[fe80::1%eth0]:443', 'fe80::1'],
    ['fe80::1%eth0', 'fe80::1'],
    ['::ffff:192.0.2.1', '::ffff:192.0.2.1'],
  ])('%s', (entry, address) => {
    expect(forwardedAddress(entry)).toBe(address)
  })

  test.each(['', 'unknown', '_hidden', '192.0.2.1:', '192.0.2.300:80', '[192.0.2.1', '[x]:80', '192.0.2.1:80:80'])(
    'or stays what it is: %s',
    (entry) => {
      expect(forwardedAddress(entry)).toBe(entry)
    },
  )
})

describe('a caller is', () => {
  test('in IPv6 a network of 64 bits, by Node’s own list of networks', () => {
    fc.assert(
      fc.property(fc.ipV6(), fc.ipV6(), fc.boolean(), (one, other, nearby) => {
        const second = nearby ? sameNetwork(one, other) : other
        const network = new BlockList()
        network.addSubnet(one, 64, 'ipv6')
        fc.pre(![one, second].some((address) => /\./.test(address)))
        expect(callerAt(one) === callerAt(second), `${one} ${second}`).toBe(network.check(second, 'ipv6'))
      }),
    )
  })

  test.each([
    ['192.0.2.1', '192.0.2.1'],
    ['::ffff:192.0.2.1', '192.0.2.1'],
    ['fe80::1%eth0', 'fe80:0:0:0::/64'],
    ['2001:db8:0:1::a', '2001:db8:0:1::/64'],
    ['::1', '0:0:0:0::/64'],
  ])('%s: %s', (address, caller) => {
    expect(callerAt(address)).toBe(caller)
  })
})

/** The first half of one address before the second half of another. */
function sameNetwork(one: string, other: string): string {
  const groups = (address: string): readonly string[] => {
    const [head = '', tail = ''] = address.split('::')
    const [before, after] = [head.split(':').filter(Boolean), tail.split(':').filter(Boolean)]
    return [...before, ...Array<string>(8 - before.length - after.length).fill('0'), ...after]
  }
  if (/\./.test(one + other)) return one
  return [...groups(one).slice(0, 4), ...groups(other).slice(4)].join(':')
}

test('TRUST_PROXY names everyone, no one, or addresses and networks', () => {
  expect(trusts(true)('192.0.2.1')).toBe(true)
  expect(trusts(false)('127.0.0.1')).toBe(false)
  const isTrusted = trusts(['10.0.0.0/8', '::1', '2001:db8::/32'])
  for (const address of ['10.1.2.3', '::ffff:10.1.2.3', '::1', '2001:db8:1::1']) expect(isTrusted(address)).toBe(true)
  for (const address of ['11.1.2.3', '::2', '2001:db9::1', 'unknown', '']) expect(isTrusted(address)).toBe(false)
})
