import { expect, test } from 'vitest'
import { storeAddress } from '#src/store-address.ts'

const PLAIN = { login: {}, isEncrypted: false }

test.each([
  ['redis://store.lan', { ...PLAIN, kind: 'server', hosts: [{ host: 'store.lan', port: 6379 }] }],
  [
    'redis://counter:a%40b@[::1]:7000/',
    {
      ...PLAIN,
      kind: 'server',
      hosts: [{ host: '::1', port: 7000 }],
      login: { username: 'counter', password: 'a@b' },
    },
  ],
  [
    'rediss://:open%20sesame@store.lan:6380',
    {
      kind: 'server',
      hosts: [{ host: 'store.lan', port: 6380 }],
      login: { password: 'open sesame' },
      isEncrypted: true,
    },
  ],
  [
    'redis+cluster://one.lan,two.lan:7000',
    {
      ...PLAIN,
      kind: 'cluster',
      hosts: [
        { host: 'one.lan', port: 6379 },
        { host: 'two.lan', port: 7000 },
      ],
    },
  ],
  [
    'rediss+sentinel://:secret@one.lan,[2001:db8::2]:5000/counts-1',
    {
      kind: 'sentinel',
      primary: 'counts-1',
      hosts: [
        { host: 'one.lan', port: 26_379 },
        { host: '2001:db8::2', port: 5000 },
      ],
      login: { password: 'secret' },
      isEncrypted: true,
    },
  ],
])('%s', (text, address) => {
  expect(storeAddress(text)).toEqual(address)
})

test.each([
  '',
  'redis',
  'memory',
  'http://store.lan',
  'redis://',
  'redis://a b',
  'redis://name@host', // a name alone: whoever writes it means a password
  'redis://:secret@host/1',
  'redis://:secret@host?db=1',
  'redis://:secret@host:99999',
  'redis://:secret@host:0',
  'redis://:%zz@host',
  'redis://one,two',
  'redis+cluster://one,,two',
  'redis+cluster://one/name',
  'redis+sentinel://one',
  'redis+sentinel://one/',
  'redis+mirror://one',
])('%s is no address', (text) => {
  expect(storeAddress(text)).toBeUndefined()
})
