import { type Fault, MOST_FAULTS } from './problem.ts'

/**
 * The faults of one input. The first fifty are put into words when they are asked for; of the others only the number is
 * kept, so that an input full of faults costs no more than reading it.
 */
export class FaultList {
  readonly #room: number
  readonly #of: string
  readonly #kept: (() => Fault)[] = []
  #more = 0
  #inside = false

  /** @param of the pointer to the value whose faults these are: the whole input where it is not said */
  constructor(room: number = MOST_FAULTS, of = '') {
    this.#room = room
    this.#of = of
  }

  /** @param whole the pointer to the value that is wrong as a whole; not said where a name in an object is */
  add(tell: () => Fault, whole?: string): void {
    if (this.#kept.length < this.#room) this.#kept.push(tell)
    else this.#more += 1
    this.#inside ||= whole !== this.#of
  }

  /** An empty list for a value that may be read in several ways; it keeps no more than this one has room for. */
  branch(of: string): FaultList {
    return new FaultList(this.#room - this.#kept.length, of)
  }

  addAll(branch: FaultList): void {
    this.#kept.push(...branch.#kept)
    this.#more += branch.#more
    this.#inside = true
  }

  get isEmpty(): boolean {
    return this.#kept.length + this.#more === 0
  }

  /** Whether a part of the value has a fault, and not only the whole of it. */
  get isInside(): boolean {
    return this.#inside
  }

  /** How many faults there are beside those that are told. */
  get more(): number {
    return this.#more
  }

  told(): readonly Fault[] {
    return this.#kept.map((tell) => tell())
  }
}
