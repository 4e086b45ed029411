import { ballGap, pitchRadiusForGap } from '#shared/geometry/ring-of-balls.ts'
import { unequalBallGap } from '#shared/geometry/unequal-balls.ts'
import { mm } from '#shared/units/length.ts'
import { normals, uniforms } from './chance.ts'

/*
 * Simulated makers at simulated lathes: balls uneven, cuts that wander, rules that round, hands that misread. Some
 * follow the service's advice, others creep up by fixed steps. All sizes in inches; the bearing and the makers are
 * invented.
 */

export interface Maker {
  readonly ballDeviation: number
  /** How far the mean of the bought lot lies from nominal: a standard deviation. */
  readonly lotDeviation: number
  readonly graduation: number
  readonly hand: number
  readonly sharpTool: { readonly absolute: number; readonly relative: number }
  readonly abrasive: { readonly absolute: number; readonly relative: number }
}

/** The maker of the marks: a rule graduated in 1/32 in, read with 0.006 in of hand error. */
export const MAKER: Maker = {
  ballDeviation: 0.005,
  lotDeviation: 0.005,
  graduation: 1 / 32,
  hand: 0.006,
  sharpTool: { absolute: 0.008, relative: 0.1 },
  abrasive: { absolute: 0.002, relative: 0.05 },
}

const BEARING = {
  units: 'in',
  balls: { count: 12, diameter: 0.75, standardDeviation: 0.005 },
  bore: 0.5,
  ballGap: 1 / 32,
  minBallGap: 0,
  maxBallGap: 1 / 16,
} as const
const BAND = { min: 0, max: 1 / 16 } as const
const { count: COUNT, diameter: NOMINAL } = BEARING.balls

type WorkshopReading = {
  readonly kind: 'ball-gap' | 'last-ball-opening'
  readonly value: number
  readonly graduation: number
  readonly standardUncertainty: number
}

/** What a maker does after a reading: a cut, or nothing more. */
export type Deed =
  | { readonly do: 'cut'; readonly with: 'sharp-tool' | 'abrasive'; readonly radial: number }
  | { readonly do: 'read-again' }
  | { readonly do: 'stop' }

export type History = readonly {
  readonly reading: WorkshopReading
  readonly cut?: { readonly with: 'sharp-tool' | 'abrasive'; readonly radial: number }
}[]

export interface Outcome {
  readonly gap: number
  readonly checks: number
  readonly end: 'in-band' | 'too-deep' | 'too-tight'
}

const MOST_CHECKS = 12

/** One ring, from a groove cut well short of its depth to where its maker stops. */
export async function makeRing(
  seed: number,
  maker: Maker,
  decide: (history: History) => Promise<Deed>,
): Promise<Outcome> {
  const uniform = uniforms(seed)
  const normal = normals(uniform)
  const lot = NOMINAL + maker.lotDeviation * normal()
  const balls = Array.from({ length: COUNT }, () => lot + maker.ballDeviation * normal())
  const nominalBottom = pitchRadiusForGap(mm(BEARING.ballGap), mm(NOMINAL), COUNT) + NOMINAL / 2
  const goesInFrom = ASSEMBLY_GAP * uniform()
  let bottom = nominalBottom - 0.045 + 0.012 * normal()
  const history: { reading: WorkshopReading; cut?: { with: 'sharp-tool' | 'abrasive'; radial: number } }[] = []
  for (let check = 1; check <= MOST_CHECKS; check++) {
    const gap = unequalBallGap(mm(bottom), balls)
    history.push({ reading: read(gap, bottom, balls, { maker, normal, goesInFrom }) })
    const deed = await decide(history)
    if (deed.do === 'stop') return outcome(gap, check)
    if (deed.do === 'cut') {
      const error = maker[deed.with === 'abrasive' ? 'abrasive' : 'sharpTool']
      bottom += Math.max(0, deed.radial + Math.hypot(error.absolute, error.relative * deed.radial) * normal())
      const last = history.at(-1)
      if (last !== undefined) last.cut = { with: deed.with, radial: deed.radial }
    }
  }
  return outcome(unequalBallGap(mm(bottom), balls), MOST_CHECKS)
}

const outcome = (gap: number, checks: number): Outcome => ({
  gap,
  checks,
  end: gap > BAND.max ? 'too-deep' : gap < BAND.min ? 'too-tight' : 'in-band',
})

/** Rigid balls of this bearing need so much gap for the last one to go in; wood gives some of it, in each ring another part. */
const ASSEMBLY_GAP = 0.0224

interface AtTheRule {
  readonly maker: Maker
  readonly normal: () => number
  readonly goesInFrom: number
}

function read(
  gap: number,
  bottom: number,
  balls: readonly number[],
  { maker, normal, goesInFrom }: AtTheRule,
): WorkshopReading {
  const goesIn = gap >= goesInFrom
  const truth = goesIn ? gap : openingWithout(bottom, balls)
  const value = Math.max(0, Math.round((truth + maker.hand * normal()) / maker.graduation) * maker.graduation)
  return {
    kind: goesIn ? 'ball-gap' : 'last-ball-opening',
    value,
    graduation: maker.graduation,
    standardUncertainty: maker.hand,
  }
}

/** The opening that the last ball should fill: the gap of the others, in a groove of theirs. */
function openingWithout(bottom: number, balls: readonly number[]): number {
  return unequalBallGap(mm(bottom), balls.slice(0, -1))
}

/**
 * A maker without advice, who creeps up: while the last ball stays out a fixed depth with the tool, then a fixed depth
 * with the abrasive until the rule shows at least half of what is wanted.
 */
export const creeping =
  (step: number) =>
  async (history: History): Promise<Deed> => {
    const { reading } = history.at(-1) ?? {}
    if (reading === undefined) return { do: 'stop' }
    if (reading.kind === 'ball-gap' && reading.value >= BAND.max / 2) return { do: 'stop' }
    const far = reading.kind === 'last-ball-opening' && reading.value < closedOpening() - 0.1
    return { do: 'cut', with: far ? 'sharp-tool' : 'abrasive', radial: step }
  }

const closedOpening = (): number => ballGap(pitchRadiusForGap(mm(0), mm(NOMINAL), COUNT), mm(NOMINAL), COUNT - 1)

/** The part of the answer that a maker acts on. */
export interface Advice {
  readonly stop: boolean
  readonly nextStep?: { readonly with: 'sharp-tool' | 'abrasive'; readonly radial: number }
}

/** A maker who asks the service after every reading and does what it says. */
export const advised =
  (overshootRisk: number, maker: Maker, ask: (request: object) => Promise<Advice>) =>
  async (history: History): Promise<Deed> => {
    // Readings that no cut followed were read again, at the same groove.
    const states: { readings: WorkshopReading[]; thenRemoved?: object }[] = [{ readings: [] }]
    for (const { reading, cut } of history) {
      states.at(-1)?.readings.push(reading)
      if (cut !== undefined) {
        Object.assign(states.at(-1) ?? {}, { thenRemoved: cut })
        states.push({ readings: [] })
      }
    }
    const { stop, nextStep } = await ask({
      design: BEARING,
      ring: 'outer',
      readings: states.at(-1)?.readings,
      earlier: states.slice(0, -1),
      target: { overshootRisk },
      tools: { sharpTool: maker.sharpTool, abrasive: maker.abrasive },
    })
    if (nextStep !== undefined) return { do: 'cut', with: nextStep.with, radial: nextStep.radial }
    return { do: stop ? 'stop' : 'read-again' }
  }
