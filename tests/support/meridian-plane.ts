import { distance, type Point } from './ball-centres.ts'

/** Room is not measured beyond this. */
export const CLEAR = 0.5

const BALL_RADIUS = 0.5
const STEP = 0.005

/**
 * The half plane through a ring's axis and the middle of the gap, for balls of diameter 1: where in it may the centre
 * of the last ball be, the outer ring's groove and land and all other balls in place? Distances only: to an arc, two
 * edges, two lands and the centres of balls in space.
 */
export class MeridianPlane {
  readonly seatHeight: number
  readonly #others: readonly Point[]
  readonly #land: number
  readonly #halfWidth: number
  readonly #arcRadius: number
  readonly #arcHeight: number

  constructor(ring: {
    readonly conformity: number
    readonly engagement: number
    readonly pitchRadius: number
    readonly others: readonly Point[]
  }) {
    const { conformity, engagement } = ring
    this.seatHeight = ring.pitchRadius
    this.#others = ring.others
    this.#arcRadius = conformity
    this.#halfWidth = Math.sqrt(conformity ** 2 - (conformity - engagement) ** 2)
    // From the seat outward to the land: a ball on the bottom, or on both edges.
    this.#land =
      conformity < BALL_RADIUS
        ? ring.pitchRadius + Math.sqrt(BALL_RADIUS ** 2 - this.#halfWidth ** 2)
        : ring.pitchRadius + BALL_RADIUS - engagement
    this.#arcHeight = this.#land + engagement - conformity
  }

  /** Signed room of a ball with its centre at x along the axis and y from it: below 0 it cuts into something. */
  room(x: number, y: number): number {
    return Math.min(this.#roomFromWood(Math.abs(x), y), this.#roomFromBalls(x, y), CLEAR)
  }

  #roomFromBalls(x: number, y: number): number {
    let least = CLEAR
    for (const other of this.#others) least = Math.min(least, distance([x, y, 0], other) - 2 * BALL_RADIUS)
    return least
  }

  #roomFromWood(x: number, y: number): number {
    const overLand = x >= this.#halfWidth
    const inGroove = !overLand && y > this.#land
    const across = Math.hypot(x, y - this.#arcHeight)
    if (overLand ? y >= this.#land : inGroove && across >= this.#arcRadius) return -CLEAR
    const edge = Math.hypot(x - this.#halfWidth, y - this.#land)
    const land = overLand ? this.#land - y : edge
    return Math.min(edge, land, this.#fromArc(x, y, across)) - BALL_RADIUS
  }

  /** From inside the circle the nearest point of it, where that point is of the arc that was cut. */
  #fromArc(x: number, y: number, across: number): number {
    if (across === 0) return this.#arcRadius
    const up = this.#arcHeight + ((y - this.#arcHeight) * this.#arcRadius) / across
    const aside = (x * this.#arcRadius) / across
    return up >= this.#land && aside <= this.#halfWidth ? this.#arcRadius - across : Number.POSITIVE_INFINITY
  }

  /** Least room from the other balls on the way out from the seat: along the groove, round its edge, under the land. */
  leastRoomRolling(): number {
    let least = CLEAR
    for (const [x, y] of this.#rolling()) least = Math.min(least, this.#roomFromBalls(x, y))
    return least
  }

  *#rolling(): Generator<readonly [x: number, y: number]> {
    const LOOKS = 400
    const lean = Math.atan2(this.#halfWidth, this.#land - this.#arcHeight)
    const onArc = this.#arcRadius - BALL_RADIUS
    if (onArc >= 0) {
      for (let i = 0; i <= LOOKS; i++) {
        const angle = (lean * i) / LOOKS
        yield [onArc * Math.sin(angle), this.#arcHeight + onArc * Math.cos(angle)]
      }
    }
    // Round the edge, from where the arc (or the seat on the edges) let the ball go to straight under the land.
    const from = onArc >= 0 ? lean : Math.asin(this.#halfWidth / BALL_RADIUS)
    for (let i = 0; i <= LOOKS; i++) {
      const angle = from * (1 - i / LOOKS)
      yield [this.#halfWidth - BALL_RADIUS * Math.sin(angle), this.#land - BALL_RADIUS * Math.cos(angle)]
    }
    for (let i = 0; i <= LOOKS; i++) yield [this.#halfWidth + (2 * i) / LOOKS, this.#land - BALL_RADIUS]
  }

  /** Whether any way leads from beside the ring to the seat, by flooding the half plane in steps of 0.005. */
  hasPath(): boolean {
    const columns = Math.ceil((this.#halfWidth + 1.2) / STEP)
    const bottom = this.seatHeight + 0.02
    const rows = Math.ceil(Math.min(2.2, bottom) / STEP)
    const seen = new Uint8Array(columns * rows)
    const isFree = (column: number, row: number) => this.room(column * STEP, bottom - row * STEP) >= -STEP
    const seat = Math.round((bottom - this.seatHeight) / STEP) * columns
    const open = [seat]
    seen[seat] = 1
    for (let cell = open.pop(); cell !== undefined; cell = open.pop()) {
      const [row, column] = [Math.floor(cell / columns), cell % columns]
      if (column === columns - 1) return true
      for (const [right, down] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        const [nextColumn, nextRow] = [column + right, row + down]
        const next = nextRow * columns + nextColumn
        if (nextColumn < 0 || nextRow < 0 || nextRow >= rows || seen[next] === 1) continue
        seen[next] = 1
        if (isFree(nextColumn, nextRow)) open.push(next)
      }
    }
    return false
  }
}
