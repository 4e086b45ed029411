import { expect, test } from 'vitest'
import { drawNormals, TABLE_LENGTH } from '#shared/statistics/normal-cells.ts'
import { NORMAL_ROOM, normalsIn } from '#shared/statistics/normal-kernel.ts'
import { randomStream } from '#shared/statistics/random.ts'
import { withArena } from '#shared/wasm/arena.ts'

const COUNT = 100_000

test.each([1, 2, 77])('seed %i: the numbers of the plain way and its state, to the last bit', (seed) => {
  withArena(COUNT + NORMAL_ROOM.doubles, 1 + NORMAL_ROOM.arrays, (arena) => {
    const draw = normalsIn(arena)
    const out = arena.array(COUNT)
    const [own, plain] = [randomStream(seed, 3), randomStream(seed, 3)]
    const expected = new Float64Array(COUNT)
    for (const shape of [
      { mean: 0, standardDeviation: 1 },
      { mean: 16, standardDeviation: 0.1 },
      { mean: -3, standardDeviation: 0 },
    ]) {
      draw(shape, own, out)
      drawNormals(shape, plain, expected, COUNT)
      expect(out).toEqual(expected)
      expect(own.state).toEqual(plain.state)
    }
    // Both tails are among them: one number in five hundred.
    draw({ mean: 0, standardDeviation: 1 }, own, out)
    expect(out.some((value) => value < -3.5)).toBe(true)
    expect(out.some((value) => value > 3.5)).toBe(true)
  })
})

test('any number of them, one at the least', () => {
  withArena(20 + NORMAL_ROOM.doubles, 6 + NORMAL_ROOM.arrays, (arena) => {
    const draw = normalsIn(arena)
    const random = randomStream(5, 0)
    const many = new Float64Array(6)
    drawNormals({ mean: 0, standardDeviation: 1 }, randomStream(5, 0), many, 6)
    for (let index = 0; index < 6; index++) {
      const one = arena.array(1)
      draw({ mean: 0, standardDeviation: 1 }, random, one)
      expect(one[0]).toBe(many[index])
    }
  })
})

test('the room that it takes is what it says', () => {
  expect(NORMAL_ROOM.doubles).toBeGreaterThanOrEqual(TABLE_LENGTH + 4)
})
