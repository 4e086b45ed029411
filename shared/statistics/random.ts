import { requireWhole } from '#shared/precondition.ts'

/*
 * xoshiro128++ 1.0 of D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM Transactions on
 * Mathematical Software 47 (2021); the reference code is at prng.di.unimi.it. Period 2^128 − 1, every 32-bit word equally
 * often, no failure known in BigCrush; on 32-bit integers alone, so that every engine gives the same bits at full speed.
 * Fit for trials, and for nothing that must stay secret.
 *
 * A stream is started by SplitMix64 (G. Steele, D. Lea and C. Flood, Fast splittable pseudorandom number generators,
 * OOPSLA 2014), which the authors of xoshiro name for that. Two streams start at two of 2^128 places that have nothing to
 * do with one another: that any of a million streams of a million words meet has a chance below 2^-67.
 */

/** A stream of random words: its state, which moves on as it is drawn from, and room for what was drawn last. */
export interface Random {
  readonly state: Int32Array
  words: Uint32Array
}

const WORD = 0xffffffffn
const DOUBLE_WORD = 0xffffffffffffffffn
/** SplitMix64's step, the golden ratio. */
const GOLDEN = 0x9e3779b97f4a7c15n

/** Seeds and stream numbers are whole and below this. */
export const SEEDS = 4_294_967_296

/**
 * SplitMix64's output function on a state of 64 bits; the generator's n-th word is that of seed + n × the golden ratio.
 */
export function splitMix64(state: bigint): bigint {
  let word = state & DOUBLE_WORD
  word = ((word ^ (word >> 30n)) * 0xbf58476d1ce4e5b9n) & DOUBLE_WORD
  word = ((word ^ (word >> 27n)) * 0x94d049bb133111ebn) & DOUBLE_WORD
  return word ^ (word >> 31n)
}

/**
 * The stream that belongs to a seed and a number of its own: the same whoever draws it and when.
 *
 * @param seed whole, from 0 to 2^32 − 1
 * @param stream whole, from 0 to 2^32 − 1
 */
export function randomStream(seed: number, stream: number): Random {
  requireWhole('seed', seed, 0)
  requireWhole('stream', stream, 0)
  if (!(seed < SEEDS && stream < SEEDS)) throw new RangeError(`seed and stream must be below 2^32`)
  // The seed is mixed before it is counted on from: seeds that follow one another are not streams that do.
  const start = splitMix64(BigInt(seed) + GOLDEN)
  const word = (step: bigint): bigint => splitMix64(start + (2n * BigInt(stream) + step) * GOLDEN)
  const [low, high] = [word(1n), word(2n)]
  return randomFrom([low, low >> 32n, high, high >> 32n].map((half) => Number(half & WORD)))
}

/** A stream at a given state: four words of 32 bits, not all 0. */
export function randomFrom(state: readonly number[]): Random {
  if (state.length !== 4 || state.every((word) => word === 0)) {
    throw new RangeError(`state must be four words, not all 0, got ${state.join(', ')}`)
  }
  return { state: Int32Array.from(state, (word) => word | 0), words: new Uint32Array(0) }
}

/**
 * The stream's next words of 32 bits.
 *
 * @returns at least `count` long; good until more are drawn
 */
export function drawWords(random: Random, count: number): Uint32Array {
  if (random.words.length < count) random.words = new Uint32Array(count)
  const { state, words } = random
  let [a = 0, b = 0, c = 0, d = 0] = state
  for (let index = 0; index < count; index++) {
    const sum = (a + d) | 0
    words[index] = ((sum << 7) | (sum >>> 25)) + a
    const shifted = b << 9
    c ^= a
    d ^= b
    b ^= c
    a ^= d
    c ^= shifted
    d = (d << 11) | (d >>> 21)
  }
  state[0] = a
  state[1] = b
  state[2] = c
  state[3] = d
  return words
}
