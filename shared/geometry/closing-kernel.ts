import type { KernelSource } from '#shared/wasm/arena.ts'
import { type Code, i32, type Local, moduleOf, pair, repeatWhile, whole } from '#shared/wasm/assembler.ts'

/*
 * The inner loop of `unequal-balls-in-blocks.ts`, two rings in each vector and two vectors beside one another: what one has to
 * wait for, the other has not.
 */

/** Rings that are closed at the same time; a block must have as many or more. */
export const RINGS_AT_ONCE = 4

const { add, sub, mul, div, root, both } = pair
const DOUBLE = 8
const VECTOR = 16
const ONE = both(1)
const TWO = both(2)

/** Two rings on their way round. */
interface Lane {
  /** From its rings' first address on, where its vector lies. */
  readonly offset: number
  readonly scale: Local
  readonly larger: Local
  readonly first: Local
  readonly real: Local
  readonly imaginary: Local
  readonly size: Local
  readonly last: Local
  readonly sum: Local
  readonly own: Local
  readonly product: Local
  readonly room: Local
  readonly cosine: Local
  readonly sine: Local
  readonly lastSquare: Local
}

/** Number of balls, bytes of a row of all rings, and addresses of arrays. */
const PARAMETERS = ['balls', 'row', 'bottomRadii', 'diameters', 'larger', 'gaps', 'sums'] as const

/**
 * Gaps, and sums of scaled diameters. Gaps of rows that have gone round more than once, or hardly begun to, are no numbers;
 * the answer is not 0 where there are such.
 */
export const closingKernel: KernelSource = () =>
  moduleOf(PARAMETERS, ({ parameters, wholeNumber, pair: newPair }) => {
    const { balls, row, bottomRadii, diameters, larger, gaps, sums } = parameters
    const [at, ball, end, untold] = [wholeNumber(), wholeNumber(), wholeNumber(), wholeNumber()]
    const lanes = [0, VECTOR].map((offset) => laneAt(offset, newPair))
    const here = (array: Local): Code => i32.add(array.get, at.get)
    const lastStart = i32.sub(row.get, whole(RINGS_AT_ONCE * DOUBLE))

    const begin = ({ offset, scale, larger: more, first, last, sum, real, imaginary, size }: Lane): Code => [
      ...scale.set(div(both(0.5), pair.load(here(bottomRadii), offset))),
      ...more.set(pair.load(here(larger), offset)),
      ...first.set(mul(add(pair.load(here(diameters), offset), more.get), scale.get)),
      ...last.set(first.get),
      ...sum.set(first.get),
      ...real.set(ONE),
      ...imaginary.set(both(0)),
      ...size.set(ONE),
    ]
    const layBall: readonly ((lane: Lane) => Code)[] = [
      ({ offset, own, larger: more, scale }) => own.set(mul(add(pair.load(ball.get, offset), more.get), scale.get)),
      ({ product, own, last }) => product.set(mul(own.get, last.get)),
      ({ room, own, last }) => room.set(sub(sub(ONE, own.get), last.get)),
      ({ size, own }) => size.set(mul(size.get, sub(ONE, own.get))),
      ({ cosine, room, product }) => cosine.set(sub(room.get, product.get)),
      ({ sine, room, product }) => sine.set(mul(TWO, root(mul(room.get, product.get)))),
      // The old real part is still needed for the new imaginary one.
      ({ product, real, cosine, imaginary, sine }) =>
        product.set(sub(mul(real.get, cosine.get), mul(imaginary.get, sine.get))),
      ({ imaginary, real, sine, cosine }) =>
        imaginary.set(add(mul(real.get, sine.get), mul(imaginary.get, cosine.get))),
      ({ real, product }) => real.set(product.get),
      ({ last, own }) => last.set(own.get),
      ({ sum, own }) => sum.set(add(sum.get, own.get)),
    ]
    const close = ({ offset, first, last, lastSquare, real, imaginary, size, sum, own, room }: Lane): Code => [
      ...pair.store(here(sums), sum.get, offset),
      ...lastSquare.set(mul(sub(ONE, last.get), sub(ONE, last.get))),
      ...own.set(mul(sub(ONE, first.get), sub(ONE, first.get))),
      ...own.set(
        sub(add(own.get, lastSquare.get), div(mul(mul(TWO, real.get), lastSquare.get), mul(size.get, size.get))),
      ),
      ...own.set(mul(sub(sub(root(own.get), first.get), last.get), pair.load(here(bottomRadii), offset))),
      // In the first quadrant the cosine of the whole angle does not tell.
      ...room.set(pair.and(pair.isAbove(real.get, both(0)), pair.isAbove(imaginary.get, both(0)))),
      ...untold.set(i32.or(untold.get, pair.anySet(room.get))),
      ...pair.store(here(gaps), pair.choose(both(Number.NaN), own.get, room.get), offset),
    ]
    const next = i32.add(at.get, whole(RINGS_AT_ONCE * DOUBLE))
    return {
      statements: [
        // From the last start but one it goes on to the last, which may be less than a whole step further.
        at.set(whole(-RINGS_AT_ONCE * DOUBLE)),
        repeatWhile(
          [
            at.set(i32.select(next, lastStart, i32.isBelow(next, lastStart))),
            ...lanes.map(begin),
            ball.set(i32.add(here(diameters), row.get)),
            end.set(i32.add(here(diameters), i32.mul(balls.get, row.get))),
            repeatWhile(
              [...layBall.flatMap((step) => lanes.map(step)), ball.set(i32.add(ball.get, row.get))],
              i32.isBelow(ball.get, end.get),
            ),
            ...lanes.map(close),
          ],
          i32.isBelow(at.get, lastStart),
        ),
      ],
      answer: untold.get,
    }
  })

const laneAt = (offset: number, newPair: () => Local): Lane => ({
  offset,
  scale: newPair(),
  larger: newPair(),
  first: newPair(),
  real: newPair(),
  imaginary: newPair(),
  size: newPair(),
  last: newPair(),
  sum: newPair(),
  own: newPair(),
  product: newPair(),
  room: newPair(),
  cosine: newPair(),
  sine: newPair(),
  lastSquare: newPair(),
})
