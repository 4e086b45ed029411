import { describe, expect, test } from 'vitest'
import { type KernelSource, withArena } from '#shared/wasm/arena.ts'
import { type Code, double, i32, moduleOf, pair, repeatWhile, when, whole } from '#shared/wasm/assembler.ts'

/** What an expression of two whole numbers comes to. */
function worked(expression: (one: Code, other: Code) => Code) {
  const source: KernelSource = () =>
    moduleOf(['one', 'other'], ({ parameters: { one, other } }) => ({
      statements: [],
      answer: expression(one.get, other.get),
    }))
  return (...numbers: readonly number[]) => withArena(0, 1, (arena) => arena.start(source)(...numbers))
}

describe('whole numbers', () => {
  test.each([0, 1, 63, 64, 127, 128, -1, -64, -65, 300, 65_535, 1_000_000, 2 ** 31 - 1, -(2 ** 31)])(
    '%i is written so that it is read again',
    (value) => {
      expect(worked(() => whole(value))()).toBe(value)
    },
  )

  test.each<[string, (one: Code, other: Code) => Code, (one: number, other: number) => number]>([
    ['add', i32.add, (one, other) => (one + other) | 0],
    ['sub', i32.sub, (one, other) => (one - other) | 0],
    ['mul', i32.mul, Math.imul],
    ['and', i32.and, (one, other) => one & other],
    ['or', i32.or, (one, other) => one | other],
    ['xor', i32.xor, (one, other) => one ^ other],
    ['shiftLeft', i32.shiftLeft, (one, other) => one << other],
    ['shiftRight', i32.shiftRight, (one, other) => (one >>> other) | 0],
    ['turnLeft', i32.turnLeft, (one, other) => (one << (other & 31)) | (other & 31 ? one >>> (32 - (other & 31)) : 0)],
    ['isBelow', i32.isBelow, (one, other) => Number(one >>> 0 < other >>> 0)],
    ['select', (one, other) => i32.select(one, other, i32.isZero(other)), (one, other) => (other === 0 ? one : other)],
  ])('%s', (_, code, plain) => {
    const run = worked(code)
    for (const one of [0, 1, 5, -7, 123_456_789, -(2 ** 31)]) {
      for (const other of [0, 1, 3, 31, -2, 987_654_321]) expect(run(one, other)).toBe(plain(one, other))
    }
  })
})

describe('arrays', () => {
  /** Each element of an array made another by an expression. */
  const changed = (values: readonly number[], write: (value: Code) => Code): readonly number[] => {
    return withArena(values.length, 1, (arena) => {
      const array = arena.array(values.length)
      array.set(values)
      const source: KernelSource = () =>
        moduleOf(['at', 'end'], ({ parameters: { at, end } }) => {
          const step = pair.store(at.get, write(pair.load(at.get)))
          return {
            statements: [repeatWhile([step, at.set(i32.add(at.get, whole(16)))], i32.isBelow(at.get, end.get))],
            answer: whole(0),
          }
        })
      arena.start(source)(array.byteOffset, array.byteOffset + array.byteLength)
      return Array.from(array)
    })
  }
  const VALUES = [1, 2.5, -3, 0.1, 1e300, 7]

  test('pairs of doubles: the bits of the language itself', () => {
    const three = pair.both(3)
    expect(changed(VALUES, (x) => pair.add(x, three))).toEqual(VALUES.map((x) => x + 3))
    expect(changed(VALUES, (x) => pair.sub(three, x))).toEqual(VALUES.map((x) => 3 - x))
    expect(changed(VALUES, (x) => pair.mul(x, pair.both(0.1)))).toEqual(VALUES.map((x) => x * 0.1))
    expect(changed(VALUES, (x) => pair.div(three, x))).toEqual(VALUES.map((x) => 3 / x))
    expect(changed(VALUES, pair.root)).toEqual(VALUES.map(Math.sqrt))
    const clipped = changed(VALUES, (x) => pair.choose(three, x, pair.isAbove(x, three)))
    expect(clipped).toEqual(VALUES.map((x) => Math.min(x, 3)))
  })

  test('one double, a condition and what is set', () => {
    withArena(2, 1, (arena) => {
      const array = arena.array(2)
      array.set([1.5, 0])
      const source: KernelSource = () =>
        moduleOf(['at', 'count'], ({ parameters: { at, count }, double: newDouble, pair: newPair }) => {
          const [sum, both] = [newDouble(), newPair()]
          return {
            statements: [
              sum.set(double.load(at.get)),
              when(i32.isZero(count.get), [sum.set(double.of(-1))]),
              double.store(i32.add(at.get, whole(8)), double.mul(double.add(sum.get, double.from(count.get)), sum.get)),
              both.set(pair.load(at.get)),
            ],
            answer: pair.anySet(pair.and(both.get, both.get)),
          }
        })
      const run = arena.start(source)
      expect(run(array.byteOffset, 4)).toBe(1)
      expect(array[1]).toBe(5.5 * 1.5)
      run(array.byteOffset, 0)
      expect(array[1]).toBe(1)
    })
  })
})

describe('an arena', () => {
  test('gives arrays that do not overlap, empty whatever was in them, and no more than it has', () => {
    for (let time = 0; time < 3; time++) {
      withArena(3 * 100, 3, (arena) => {
        const arrays = [arena.array(100), arena.array(100), arena.array(100)]
        expect(arrays.every((array) => array.every((value) => value === 0))).toBe(true)
        arrays.forEach((array, place) => {
          array.fill(place + 1)
        })
        expect(arrays.map((array) => array.every((value, _, all) => value === all[0]))).toEqual([true, true, true])
        expect(arrays.map((array) => array[0])).toEqual([1, 2, 3])
        expect(() => arena.array(1_000_000)).toThrow(RangeError)
      })
    }
  })

  test('inside another is another', () => {
    withArena(10, 1, (outer) => {
      const array = outer.array(10).fill(1)
      withArena(10, 1, (inner) => inner.array(10).fill(2))
      expect(array.every((value) => value === 1)).toBe(true)
    })
  })

  test('is free again after what threw in it', () => {
    const buffer = () => withArena(10, 1, (arena) => arena.array(1).buffer)
    const before = buffer()
    expect(() =>
      withArena(10, 1, () => {
        throw new Error('midway')
      }),
    ).toThrow('midway')
    expect(buffer()).toBe(before)
  })
})
