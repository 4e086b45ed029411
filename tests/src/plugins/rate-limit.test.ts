import { describe, expect, test } from 'vitest'
import { ask, post, problemIn } from '#tests/support/ask.ts'
import { startedApp } from '#tests/support/started-app.ts'

const DESIGN = { units: 'mm', balls: { count: 12, diameter: 16 }, bore: 12 }

async function statusesOf(count: number, at: string, from?: string): Promise<readonly number[]> {
  const statuses: number[] = []
  const headers = from === undefined ? {} : { 'x-forwarded-for': from }
  for (let sent = 0; sent < count; sent += 1) statuses.push((await post(`${at}/v1/design`, DESIGN, headers)).status)
  return statuses
}

test('nothing is counted unless it is asked for', async () => {
  const at = await startedApp()
  const answer = await post(`${at}/v1/design`, DESIGN)
  expect(Object.keys(answer.headers).filter((name) => /rate/.test(name))).toEqual([])
})

test('so many a minute from one address, whatever they ask; then 429, which says when to come back', async () => {
  const at = await startedApp({ config: { rateLimitPerMinute: 3 } })
  const first = await post(`${at}/v1/design`, DESIGN)
  expect(first.headers).toMatchObject({
    'x-ratelimit-limit': '3',
    'x-ratelimit-remaining': '2',
    'ratelimit-policy': '"minute";q=3;w=60',
    ratelimit: `"minute";r=2;t=${first.headers['x-ratelimit-reset']}`,
  })
  expect(first.headers).not.toHaveProperty('retry-after')
  expect(first.headers['access-control-expose-headers']).toMatch(/X-RateLimit-Remaining/)
  expect((await ask(`${at}/v1/size-table?units=mm&diameters=16&counts=12`)).status).toBe(200)
  expect((await post(`${at}/v1/design`, {})).status).toBe(400)

  const refused = await post(`${at}/v1/design`, DESIGN)
  expect(problemIn(refused, 429).detail).toMatch(/^This address sent more than 3 requests in a minute/)
  expect(refused.headers).toMatchObject({ 'x-ratelimit-limit': '3', 'x-ratelimit-remaining': '0' })
  expect(refused.headers['ratelimit']).toMatch(/^"minute";r=0;t=\d+$/)
  const seconds = Number(refused.headers['retry-after'])
  expect(seconds).toBeGreaterThan(1)
  expect(seconds).toBeLessThanOrEqual(60)
  expect(refused.headers['access-control-allow-origin']).toBe('*')
})

test('what the service says about itself is not counted', async () => {
  const at = await startedApp({ config: { rateLimitPerMinute: 1 } })
  for (const path of ['/health/live', '/health/ready', '/openapi.json', '/docs'])
    for (const turn of [1, 2]) expect((await ask(`${at}${path}`)).status, `${path}, ${turn}`).toBe(200)
  expect(await statusesOf(2, at)).toEqual([200, 429])
})

describe('an address is', () => {
  test('what a proxy says that is trusted', async () => {
    const at = await startedApp({ config: { rateLimitPerMinute: 2, trustProxy: ['127.0.0.1'] } })
    expect(await statusesOf(3, at, '192.0.2.1')).toEqual([200, 200, 429])
    expect(await statusesOf(1, at, '192.0.2.2')).toEqual([200])
  })

  test('without the port that some proxies add, and with brackets or without', async () => {
    const at = await startedApp({ config: { rateLimitPerMinute: 2, trustProxy: ['127.0.0.1', '10.0.0.0/8'] } })
    expect(await statusesOf(1, at, '192.0.2.1:1024')).toEqual([200])
    expect(await statusesOf(1, at, '192.0.2.1:1025, 10.0.0.7:80')).toEqual([200])
    expect(await statusesOf(1, at, '192.0.2.1:1026')).toEqual([429])
    expect(await statusesOf(1, at, '[2001:db8::1]:1024')).toEqual([200])
    expect(await statusesOf(1, at, '"[2001:db8::2]:1025"')).toEqual([200])
    expect(await statusesOf(1, at, '2001:db8::3')).toEqual([429])
  })

  test('not what just anyone says', async () => {
    const at = await startedApp({ config: { rateLimitPerMinute: 2 } })
    expect(await statusesOf(2, at, '192.0.2.1')).toEqual([200, 200])
    expect(await statusesOf(1, at, '192.0.2.2')).toEqual([429])
  })

  test('a whole network of IPv6, of which every house has one', async () => {
    const at = await startedApp({ config: { rateLimitPerMinute: 1, trustProxy: true } })
    expect(await statusesOf(1, at, '2001:db8:0:1::a')).toEqual([200])
    expect(await statusesOf(1, at, '2001:db8:0:1:ffff::b')).toEqual([429])
    expect(await statusesOf(1, at, '2001:db8:0:2::a')).toEqual([200])
  })
})
