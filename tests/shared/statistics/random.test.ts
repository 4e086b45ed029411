import { describe, expect, test } from 'vitest'
import { drawWords, randomFrom, randomStream } from '#shared/statistics/random.ts'

const drawn = (seed: number, stream: number, count: number): readonly number[] =>
  Array.from(drawWords(randomStream(seed, stream), count))

test('a stream goes on where it was left, however it is drawn', () => {
  const random = randomStream(7, 3)
  const pieces = [1, 2, 3].flatMap((count) => Array.from(drawWords(random, count).subarray(0, count)))
  expect(pieces).toEqual(drawn(7, 3, 6))
})

test('other seeds and other streams of a seed are other words', () => {
  const firsts = new Set<number>()
  for (let seed = 0; seed < 100; seed++) {
    for (let stream = 0; stream < 100; stream++) firsts.add(drawn(seed, stream, 1)[0] ?? Number.NaN)
  }
  // Of 10 000 words of 32 bits two are the same with a chance of 1 in 86.
  expect(firsts.size).toBeGreaterThanOrEqual(9_999)
})

test('every bit is set half the time, and neighbouring streams agree in half of their bits', () => {
  const [one, other] = [drawn(1, 0, 100_000), drawn(1, 1, 100_000)]
  for (let bit = 0; bit < 32; bit++) {
    const isSet = (word: number | undefined) => (((word ?? 0) >>> bit) & 1) === 1
    expect(one.filter(isSet).length).toBeWithin(4 * Math.sqrt(25_000), 50_000)
    expect(one.filter((word, index) => isSet(word) === isSet(other[index])).length).toBeWithin(
      4 * Math.sqrt(25_000),
      50_000,
    )
  }
})

describe('misuse is a throw', () => {
  test.each([
    [-1, 0],
    [0.5, 0],
    [Number.NaN, 0],
    [4_294_967_296, 0],
    [0, -1],
    [0, 4_294_967_296],
  ])('seed %d, stream %d', (seed, stream) => expect(() => randomStream(seed, stream)).toThrow(RangeError))
  test('a state of four zeros, which would stay so, or of three words', () => {
    expect(() => randomFrom([0, 0, 0, 0])).toThrow(RangeError)
    expect(() => randomFrom([1, 2, 3])).toThrow(RangeError)
  })
})
