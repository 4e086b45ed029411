import { expect, test } from 'vitest'
import { storeFailures } from '#src/plugins/store-failures.ts'

test('each failure is counted; the log has a line at most once a minute, with how many there were since the last', () => {
  let now = 5
  const lines: unknown[] = []
  const failures = storeFailures({ warn: (line: unknown) => lines.push(line) }, () => now)
  for (let second = 0; second < 180; second += 1) {
    failures.uncounted(`second ${second}`)
    now += 1_000
  }
  expect(failures.total()).toBe(180)
  expect(lines).toEqual([
    { reason: 'second 0', uncounted: 1 },
    { reason: 'second 60', uncounted: 60 },
    { reason: 'second 120', uncounted: 60 },
  ])
})

test('trouble that costs no request its count shares the minute', () => {
  const lines: unknown[] = []
  const failures = storeFailures({ warn: (line: unknown) => lines.push(line) }, () => 0)
  failures.trouble('gone')
  failures.uncounted('still gone')
  expect(lines).toEqual([{ reason: 'gone', uncounted: 0 }])
  expect(failures.total()).toBe(1)
})
