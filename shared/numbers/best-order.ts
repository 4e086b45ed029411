import { drawWords, randomStream } from '#shared/statistics/random.ts'
import { itemAt } from './item-at.ts'

/** An order round a ring: for each place, the item that lies there. */
export type Order = readonly number[]

/** The judgement of an order, and the places that decide it: the search exchanges those first. */
export interface Judged {
  readonly decisive: readonly number[]
}

/** The task of a search: every order is judged; the higher its `worth` the better. */
interface OrderSearch<J extends Judged> {
  readonly count: number
  /** Must not change when the order is turned round the ring or mirrored, but for ties. May give the same object each time. */
  readonly judge: (order: Order) => J
  readonly worth: (judged: J) => number
  /** Orders to begin with. */
  readonly starts: readonly Order[]
  /** The most orders that are looked at, where not all are. */
  readonly evaluations: number
}

export interface BestOrder {
  /** Item 0 first, and of the two ways round that with the smaller item second: so is every order that is judged. */
  readonly order: Order
  /** Whether every order was tried. Otherwise it is the best of a search, which promises nothing. */
  readonly exhaustive: boolean
}

/** Up to here every order is tried: of eight items there are 2520, of nine 20160. */
const MOST_TRIED_THROUGH = 8
/** How many orders are judged: all that there are, or as many as a search may. */
export function ordersJudged(count: number, evaluations: number): number {
  if (count > MOST_TRIED_THROUGH) return evaluations
  let orders = 0.5
  for (let factor = 2; factor < count; factor++) orders *= factor
  return Math.ceil(orders)
}

/** So that of many items more than one start is tried. */
const MOST_OF_ONE_START = 0.25

/**
 * The order of items round a ring that is worth most. Of up to eight items every order is tried. Of more, the starts and
 * then drawn orders are bettered by exchanging two items at a time as long as that helps, until so many orders have been
 * looked at. The same search gives the same order.
 */
export function bestOrder<J extends Judged>(search: OrderSearch<J>): BestOrder {
  const exhaustive = search.count <= MOST_TRIED_THROUGH
  return { order: exhaustive ? bestOfAll(search) : bestOfSearch(search), exhaustive }
}

/** Item 0 first, then the way round that has the smaller item second. */
function turnInto(order: Order, turned: number[]): number[] {
  const count = order.length
  const first = order.indexOf(0)
  const step = itemAt(order, (first + 1) % count) < itemAt(order, (first + count - 1) % count) ? 1 : count - 1
  for (let place = 0, from = first; place < count; place++, from = (from + step) % count)
    turned[place] = itemAt(order, from)
  return turned
}

function bestOfAll<J extends Judged>({ count, judge, worth }: OrderSearch<J>): Order {
  const order = Array.from({ length: count }, (_, item) => item)
  let best: Order = [...order]
  let highest = Number.NEGATIVE_INFINITY
  const permute = (from: number): void => {
    if (from === count) {
      if (itemAt(order, 1) > itemAt(order, count - 1)) return
      const own = worth(judge(order))
      if (own > highest) {
        highest = own
        best = [...order]
      }
      return
    }
    for (let place = from; place < count; place++) {
      exchange(order, from, place)
      permute(from + 1)
      exchange(order, from, place)
    }
  }
  permute(1)
  return best
}

function exchange(order: number[], one: number, other: number): void {
  const kept = itemAt(order, one)
  order[one] = itemAt(order, other)
  order[other] = kept
}

function bestOfSearch<J extends Judged>(search: OrderSearch<J>): Order {
  const { count, starts, evaluations } = search
  let [best, highest, left]: [Order, number, number] = [[], Number.NEGATIVE_INFINITY, evaluations]
  for (let start = 0; left > 0; start++) {
    const begin = turnInto(starts[start] ?? shuffled(count, start), [])
    const { order, worth, spent } = bettered(search, begin, Math.min(left, Math.ceil(evaluations * MOST_OF_ONE_START)))
    left -= spent
    if (worth > highest) [best, highest] = [order, worth]
  }
  return best
}

/** Exchanges two items of an order as long as that makes it better: first those at the places that decide, then any. */
function bettered<J extends Judged>({ count, judge, worth }: OrderSearch<J>, begin: Order, evaluations: number) {
  const places = Array.from({ length: count }, (_, place) => place)
  // Thousands of orders are judged, so that no room is taken for each.
  const exchanged = [...begin]
  const order = [...begin]
  const first = judge(begin)
  let best = { order: begin, worth: worth(first), decisive: [...first.decisive] }
  let spent = 1
  const isBetter = (one: number, other: number): boolean => {
    if (one === other || spent >= evaluations) return false
    for (const place of places) exchanged[place] = itemAt(best.order, place)
    exchange(exchanged, one, other)
    const judged = judge(turnInto(exchanged, order))
    spent++
    const next = worth(judged)
    if (!(next > best.worth)) return false
    best = { order: [...order], worth: next, decisive: [...judged.decisive] }
    return true
  }
  const decisiveBettered = (): boolean => best.decisive.some((one) => places.some((other) => isBetter(one, other)))
  const anyBettered = (): boolean => places.some((one) => places.some((other) => one < other && isBetter(one, other)))
  while (spent < evaluations) if (!decisiveBettered() && !anyBettered()) break
  return { ...best, spent }
}

/** Fisher and Yates; the seed is fixed, so that the same items are always searched in the same way. */
function shuffled(count: number, stream: number): Order {
  const order = Array.from({ length: count }, (_, item) => item)
  const words = drawWords(randomStream(1, stream), count)
  for (let last = count - 1; last > 0; last--)
    exchange(order, last, Math.floor((itemAt(words, last) / 2 ** 32) * (last + 1)))
  return order
}
