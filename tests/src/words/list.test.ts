import { describe, expect, test } from 'vitest'
import { inList } from '#src/words/list.ts'

describe('several things in one sentence', () => {
  const things = ['gap', 'play', 'land', 'groove', 'bore']

  test.each([0, 1, 2, 3, 5])('%i of them, as Unicode CLDR writes a list in English', (count) => {
    const list = new Intl.ListFormat('en', { type: 'conjunction' })
    expect(inList(things.slice(0, count))).toBe(list.format(things.slice(0, count)))
  })
})
