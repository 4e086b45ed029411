import { expect, test } from 'vitest'
import { nameInSentence } from '#src/words/wood-name.ts'

test.each([
  ['Maple, sugar', 'sugar maple'],
  ['Spruce, Engelmann', 'Engelmann spruce'],
  ['Douglas-fir, coast', 'coast Douglas-fir'],
  ['Khaya', 'khaya'],
])('%s is %s in a sentence', (name, words) => {
  expect(nameInSentence(name)).toBe(words)
})
