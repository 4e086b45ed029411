/*
 * A turntable stepped through time, for comparison: balls, plate and load as bodies with mass, each ball pressed by a spring square to
 * either groove wherever it touches it, and all of it spun up slowly in the frame that turns with the load. Nothing is shared with the
 * statics of the service: there is no energy, no equation is solved, and heights and angles come from where the bodies are.
 * Millimetres, newtons, seconds; masses in tonnes, so that F = m a.
 */

export interface Bodies {
  readonly count: number
  readonly pitchRadius: number
  readonly ballRadius: number
  readonly grooveRadius: number
  /** Q / δ^1.5 of one ball between both grooves. */
  readonly stiffness: number
  readonly edgeAngle: number
  /** [kg] */
  readonly ballMass: number
  readonly load: number
  readonly offset: number
  readonly height: number
  readonly turnsWithPlate: boolean
  readonly phase: 0 | 0.5
}

/** One ball, or the two that stand alike on either side of the load: they do the same. */
interface Ball {
  readonly cosine: number
  readonly alike: 1 | 2
  x: number
  y: number
  vx: number
  vy: number
}

const GRAVITY = 9806.65
const STEP = 2e-5
const SPIN_UP = 1.2
const HOLD = 0.4
/** Drag on a ball and on the plate: enough to come to rest, too little to hold anything up. */
const BALL_DRAG = 1.5e-3
const PLATE_DRAG = 0.2

/** Whether all balls and the plate are still in their places once the speed is reached and held for a while. */
export function staysTogether(bodies: Bodies, speed: number): boolean {
  const { count, pitchRadius, ballRadius, grooveRadius, stiffness, edgeAngle, load, offset, height } = bodies
  // two springs, one behind the other, each giving half
  const spring = stiffness * 2 ** 1.5
  const mass = bodies.ballMass / 1000
  const plateMass = load / GRAVITY
  const sink = (load / (count * stiffness)) ** (2 / 3)
  const plate = { z: sink, lean: 0, shift: 0, vz: 0, vLean: 0, vShift: 0 }
  const places = Array.from({ length: count }, (_, index) => index + bodies.phase).filter((place) => 2 * place <= count)
  const balls: Ball[] = places.map((place) => ({
    cosine: Math.cos((2 * Math.PI * place) / count),
    alike: place === 0 || 2 * place === count ? 1 : 2,
    x: 0,
    y: ballRadius - sink / 2,
    vx: 0,
    vy: 0,
  }))
  const top = (2 * Math.PI * speed) / 60
  for (let time = 0; time < SPIN_UP + HOLD; time += STEP) {
    const turn = top * Math.min(1, time / SPIN_UP)
    const pull = bodies.turnsWithPlate ? plateMass * turn * turn * offset : 0
    const outward = mass * (turn / 2) ** 2 * pitchRadius
    let [lift, moment, aside] = [0, 0, 0]
    for (const ball of balls) {
      // the lower groove's centre lies straight above its bottom; the upper one's below its own, wherever the plate is
      const [lowX, lowY] = [ball.x, ball.y - grooveRadius]
      const upX = ball.x - plate.shift * ball.cosine
      const upY = ball.y - (2 * ballRadius - grooveRadius - plate.z - plate.lean * ball.cosine)
      const [low, up] = [Math.hypot(lowX, lowY), Math.hypot(upX, upY)]
      const [pressLow, pressUp] = [low + ballRadius - grooveRadius, up + ballRadius - grooveRadius]
      const forceLow = pressLow > 0 ? spring * pressLow ** 1.5 : 0
      const forceUp = pressUp > 0 ? spring * pressUp ** 1.5 : 0
      const [sideLow, sideUp] = [(forceLow * lowX) / low, (forceUp * upX) / up]
      const [heightLow, heightUp] = [(forceLow * lowY) / low, (forceUp * upY) / up]
      ball.vx += (STEP * (outward - sideLow - sideUp - BALL_DRAG * ball.vx)) / mass
      ball.vy += (STEP * (-heightLow - heightUp - BALL_DRAG * ball.vy)) / mass
      ball.x += STEP * ball.vx
      ball.y += STEP * ball.vy
      lift += ball.alike * heightUp
      moment += ball.alike * heightUp * ball.cosine
      aside += ball.alike * sideUp * ball.cosine
      const angles = [Math.atan2(Math.abs(lowX), -lowY), Math.atan2(Math.abs(upX), upY)]
      if (angles.some((angle) => !(angle < edgeAngle))) return false
    }
    // z is downward: the balls push the plate up by what they are pushed down with
    plate.vz += (STEP * (load - lift - PLATE_DRAG * plate.vz)) / plateMass
    plate.vLean +=
      (STEP * ((load * offset + pull * height) / pitchRadius - moment - PLATE_DRAG * plate.vLean)) / plateMass
    plate.vShift += (STEP * (pull + aside - PLATE_DRAG * plate.vShift)) / plateMass
    plate.z += STEP * plate.vz
    plate.lean += STEP * plate.vLean
    plate.shift += STEP * plate.vShift
    if (!(Math.abs(plate.z) + Math.abs(plate.lean) < pitchRadius)) return false
  }
  return true
}
