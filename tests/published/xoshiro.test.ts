import { expect, test } from 'vitest'
import { drawWords, randomFrom, splitMix64 } from '#shared/statistics/random.ts'

// Blackman and Vigna, xoshiro128plusplus.c (prng.di.unimi.it): its first words from the state 1, 2, 3, 4, as the tests of
// the Rust library rand_xoshiro carry them ("produced with the reference implementation"). Exact.
const REFERENCE = [
  641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011, 621204420,
]

test('xoshiro128++ 1.0 from the state 1, 2, 3, 4: the words of the reference implementation', () => {
  const words = drawWords(randomFrom([1, 2, 3, 4]), REFERENCE.length)
  expect(Array.from(words)).toEqual(REFERENCE)
})

/** The published algorithm again, on whole numbers without end: nothing can overflow or turn negative. */
function* algorithm([s0, s1, s2, s3]: readonly [bigint, bigint, bigint, bigint]): Generator<number> {
  const cut = (word: bigint) => word & 0xffffffffn
  const turned = (word: bigint, by: bigint) => cut((word << by) | (word >> (32n - by)))
  let [a, b, c, d] = [s0, s1, s2, s3]
  while (true) {
    yield Number(cut(turned(cut(a + d), 7n) + a))
    const shifted = cut(b << 9n)
    ;[c, d] = [c ^ a, d ^ b]
    ;[b, a] = [b ^ c, a ^ d]
    ;[c, d] = [c ^ shifted, turned(d, 11n)]
  }
}

test('xoshiro128++ from a state with every top bit set: the published algorithm in whole numbers', () => {
  const state = [0xdeadbeef, 0xffffffff, 0x80000000, 0xcafebabe] as const
  const words = drawWords(randomFrom(state), 10_000)
  const expected = algorithm([BigInt(state[0]), BigInt(state[1]), BigInt(state[2]), BigInt(state[3])])
  for (const word of words) expect(word).toBe(expected.next().value)
})

// SplitMix64 with the seed 1234567, as Rosetta Code gives it ("Pseudo-random numbers/Splitmix64"). Exact.
test('SplitMix64 from the seed 1234567', () => {
  const step = 0x9e3779b97f4a7c15n
  expect([1n, 2n, 3n, 4n, 5n].map((count) => splitMix64(1234567n + count * step))).toEqual([
    6457827717110365317n,
    3203168211198807973n,
    9817491932198370423n,
    4593380528125082431n,
    16408922859458223821n,
  ])
})
