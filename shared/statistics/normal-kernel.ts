import type { Arena, KernelSource } from '#shared/wasm/arena.ts'
import { type Code, double, i32, moduleOf, repeatWhile, when, whole } from '#shared/wasm/assembler.ts'
import * as cells from './normal-cells.ts'
import type { Random } from './random.ts'

/*
 * `drawNormals` with `drawWords` in one loop: the same numbers to the last bit, and neither waits for the other. The generator's
 * step stands here a second time, for WebAssembly; the tests hold it to the first.
 */

const WORD = 4
const DOUBLE = 8

/** Addresses of the generator's state, of the cells, of mean and deviation and of the numbers to be drawn, and these' bytes. */
const PARAMETERS = ['state', 'table', 'shape', 'out', 'bytes'] as const

const normalKernel: KernelSource = () =>
  moduleOf(PARAMETERS, ({ parameters, wholeNumber, double: newDouble }) => {
    const { state, table, shape, out, bytes } = parameters
    const [a, b, c, d] = [wholeNumber(), wholeNumber(), wholeNumber(), wholeNumber()]
    const words = [a, b, c, d]
    const [end, word, shifted, cell, place] = [
      wholeNumber(),
      wholeNumber(),
      wholeNumber(),
      wholeNumber(),
      wholeNumber(),
    ]
    const [mean, deviation, grain] = [newDouble(), newDouble(), newDouble()]
    const { add, xor, shiftLeft, shiftRight, turnLeft, and, isBelow } = i32
    const rest = and(word.get, whole(cells.LEFT_MASK))
    const entry = (offset: number): Code => double.load(add(table.get, shiftLeft(cell.get, whole(4))), offset)
    return {
      statements: [
        ...words.map((each, index) => each.set(i32.load(state.get, index * WORD))),
        mean.set(double.load(shape.get)),
        deviation.set(double.load(shape.get, DOUBLE)),
        end.set(add(out.get, bytes.get)),
        repeatWhile(
          [
            word.set(add(turnLeft(add(a.get, d.get), whole(7)), a.get)),
            shifted.set(shiftLeft(b.get, whole(9))),
            c.set(xor(c.get, a.get)),
            d.set(xor(d.get, b.get)),
            b.set(xor(b.get, c.get)),
            a.set(xor(a.get, d.get)),
            c.set(xor(c.get, shifted.get)),
            d.set(turnLeft(d.get, whole(11))),
            cell.set(shiftRight(word.get, whole(cells.LEFT))),
            place.set(rest),
            grain.set(double.of(2 ** -cells.LEFT)),
            // The first and the last cell, 0 and all ones: one more is 1 or, cut to its bits, 0.
            when(isBelow(and(add(cell.get, whole(1)), whole(cells.LAST)), whole(2)), [
              cell.set(
                add(
                  i32.select(whole(cells.LOWER_TAIL), whole(cells.UPPER_TAIL), i32.isZero(cell.get)),
                  shiftRight(rest, whole(cells.FINER_LEFT)),
                ),
              ),
              place.set(and(word.get, whole(cells.FINER_MASK))),
              grain.set(double.of(2 ** -cells.FINER_LEFT)),
            ]),
            double.store(
              out.get,
              double.add(
                mean.get,
                double.mul(
                  deviation.get,
                  double.add(entry(0), double.mul(entry(DOUBLE), double.mul(double.from(place.get), grain.get))),
                ),
              ),
            ),
            out.set(add(out.get, whole(DOUBLE))),
          ],
          isBelow(out.get, end.get),
        ),
        ...words.map((each, index) => i32.store(state.get, each.get, index * WORD)),
      ],
      answer: whole(0),
    }
  })

/** Doubles and arrays that it takes of an arena. */
export const NORMAL_ROOM = { doubles: cells.TABLE_LENGTH + 4, arrays: 3 } as const

/** Draws independent normal numbers, one or more, into an array of the arena: those that `drawNormals` draws. */
type DrawInArena = (
  normal: { readonly mean: number; readonly standardDeviation: number },
  random: Random,
  out: Float64Array,
) => void

export function normalsIn(arena: Arena): DrawInArena {
  const run = arena.start(normalKernel)
  const table = arena.array(cells.TABLE_LENGTH)
  table.set(cells.normalCells())
  const shape = arena.array(2)
  const room = arena.array(2)
  const state = new Int32Array(room.buffer, room.byteOffset, 4)
  return ({ mean, standardDeviation }, random, out) => {
    state.set(random.state)
    shape[0] = mean
    shape[1] = standardDeviation
    run(state.byteOffset, table.byteOffset, shape.byteOffset, out.byteOffset, out.byteLength)
    random.state.set(state)
  }
}
