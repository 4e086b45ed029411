import { requireWithin } from '#shared/precondition.ts'
import { itemAt } from './item-at.ts'

/*
 * Choosing so many of some values that a figure of the choice comes nearest to 0. The figure may be anything that falls
 * as the values chosen grow, and nearly follows their sum.
 */

/** Places in the list of values, ascending. */
export type Places = readonly number[]

/** How far a choice misses, signed. It must not rise when a value chosen is put in place of a smaller one. */
export type Miss = (places: Places) => number

export interface Choice {
  readonly places: Places
  readonly miss: number
}

/** How many choices of `count` there are among `among`, or Infinity beyond `most`. */
export function countChoices(among: number, count: number, most: number): number {
  requireWithin('count', count, 0, among)
  let choices = 1
  for (let step = 1; step <= Math.min(count, among - count); step++) {
    choices = (choices * (among - step + 1)) / step
    if (choices > most) return Number.POSITIVE_INFINITY
  }
  return Math.round(choices)
}

/** Every choice of `count` places among so many, in the order of a dictionary. */
export function* everyChoice(among: number, count: number): Generator<Places> {
  requireWithin('count', count, 0, among)
  const places = Array.from({ length: count }, (_, place) => place)
  for (;;) {
    yield [...places]
    let moved = count - 1
    while (moved >= 0 && places[moved] === among - count + moved) moved--
    if (moved < 0) return
    const next = itemAt(places, moved) + 1
    for (let later = moved; later < count; later++) places[later] = next + later - moved
  }
}

/** The nearest of all choices, the first of them where several are: by trying each. */
export function nearestOfAll(among: number, count: number, miss: Miss): Choice {
  let best: Choice | undefined
  for (const places of everyChoice(among, count)) best = nearer(best, { places, miss: miss(places) })
  if (best === undefined) throw new RangeError(`count must be from 0 to ${among}, got ${count}`)
  return best
}

const nearer = (best: Choice | undefined, next: Choice): Choice =>
  best === undefined || Math.abs(next.miss) < Math.abs(best.miss) ? next : best

/** Exchanges worth trying in a round, and rounds: more of either hardly finds a nearer one. */
const TRIED_A_ROUND = 24
const MOST_ROUNDS = 16
/** Above so many, pairs are not exchanged: single ones are then so many that they come as near. */
const MOST_PAIRS = 1_000_000

/**
 * A choice that comes near, by exchange: from the neighbours in the list that come nearest, values are put in place of
 * others, one or two at a time, whose sum makes up most nearly for the miss; the nearest is kept until none comes
 * nearer. It need not be the nearest of all. Where even the smallest or the largest values miss on the same side, they
 * are the nearest, exactly.
 *
 * @param values ascending
 * @param count from 1 to as many as there are
 */
export function nearestByExchange(values: readonly number[], count: number, miss: Miss): Choice {
  requireWithin('count', count, 1, values.length)
  const runs = (start: number): Choice => {
    const places = Array.from({ length: count }, (_, place) => start + place)
    return { places, miss: miss(places) }
  }
  const smallest = runs(0)
  const largest = runs(values.length - count)
  if (!(smallest.miss > 0)) return smallest
  if (!(largest.miss < 0)) return largest
  let best = nearestRun(runs, values.length - count)
  // How far the miss falls per sum of the values, over the whole list: near enough to know which exchanges to try.
  const fall = (smallest.miss - largest.miss) / (sumAt(values, largest.places) - sumAt(values, smallest.places))
  for (let round = 0; round < MOST_ROUNDS && best.miss !== 0; round++) {
    const tried = exchanges(values, best.places, best.miss / fall).map((places) => ({ places, miss: miss(places) }))
    const found = tried.reduce(nearer, best)
    if (found === best) return best
    best = found
  }
  return best
}

/** The run of neighbours that misses least: the miss falls from the first to the last, so by halving. */
function nearestRun(runs: (start: number) => Choice, lastStart: number): Choice {
  let [low, high] = [0, lastStart]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (runs(middle).miss > 0) low = middle
    else high = middle
  }
  return nearer(runs(low), runs(high))
}

const sumAt = (values: readonly number[], places: Places): number =>
  places.reduce((sum, place) => sum + itemAt(values, place), 0)

/** One or two places out, as many in, and by how much the sum then still misses. */
interface Exchange {
  readonly out: Places
  readonly into: Places
  readonly off: number
}

/** The exchanges that come nearest to adding `wanted` to the sum, as new choices. */
function exchanges(values: readonly number[], chosen: Places, wanted: number): readonly Places[] {
  const isChosen = new Set(chosen)
  const rest = values.flatMap((_, place) => (isChosen.has(place) ? [] : [place]))
  const found = new Nearest()
  for (const out of chosen) {
    const aim = wanted + at(values, out)
    for (const into of aroundIn(values, rest, aim)) found.add([out], [into], at(values, into) - aim)
  }
  const pairs = (chosen.length * (chosen.length - 1)) / 2
  if (pairs * rest.length <= MOST_PAIRS) {
    chosen.forEach((one, index) => {
      for (const other of chosen.slice(index + 1)) {
        addPairs(values, rest, { out: [one, other], aim: wanted + at(values, one) + at(values, other), found })
      }
    })
  }
  return found.exchanges.map(({ out, into }) =>
    [...chosen.filter((place) => !out.includes(place)), ...into].sort((one, other) => one - other),
  )
}

const at = (values: readonly number[], place: number | undefined): number => values[place ?? -1] ?? Number.NaN

/** The places of the rest whose values lie next to `aim`, below and above. */
function aroundIn(values: readonly number[], rest: Places, aim: number): Places {
  let [low, high] = [0, rest.length]
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if (at(values, rest[middle]) < aim) low = middle + 1
    else high = middle
  }
  return rest.slice(Math.max(0, low - 1), low + 1)
}

/** For two that go out, the two of the rest that make up for them best: from both ends of the list inwards. */
function addPairs(
  values: readonly number[],
  rest: Places,
  { out, aim, found }: { readonly out: Places; readonly aim: number; readonly found: Nearest },
): void {
  let [low, high] = [0, rest.length - 1]
  let best: Exchange | undefined
  while (low < high) {
    const [one, other] = [itemAt(rest, low), itemAt(rest, high)]
    const off = at(values, one) + at(values, other) - aim
    if (best === undefined || Math.abs(off) < Math.abs(best.off)) best = { out, into: [one, other], off }
    if (off < 0) low++
    else high--
  }
  if (best !== undefined) found.add(best.out, best.into, best.off)
}

/** So many exchanges as are tried, the nearest first; of equal ones the earlier. */
class Nearest {
  readonly exchanges: Exchange[] = []

  add(out: Places, into: Places, off: number): void {
    const last = this.exchanges.at(-1)
    const full = this.exchanges.length === TRIED_A_ROUND
    if (full && last !== undefined && !(Math.abs(off) < Math.abs(last.off))) return
    if (full) this.exchanges.pop()
    const after = this.exchanges.findIndex((each) => Math.abs(off) < Math.abs(each.off))
    this.exchanges.splice(after < 0 ? this.exchanges.length : after, 0, { out, into, off })
  }
}
