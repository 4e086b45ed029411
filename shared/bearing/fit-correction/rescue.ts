import {
  ballGap as gapOfRing,
  gapPerBallDiameterAtPitchRadius,
  pitchRadiusForGap,
} from '#shared/geometry/ring-of-balls.ts'
import { bracketedRoot } from '#shared/numbers/bracketed-root.ts'
import { type Mm, mm } from '#shared/units/length.ts'
import type { GapModel } from './gap-model.ts'
import type { GrooveUnderWay } from './groove-under-way.ts'
import type { BallsOnHand } from './input.ts'
import type { RescueName } from './names.ts'

import { bandOf, type SettledTarget } from './target.ts'

/** A way out of a groove that is too deep, with its figures: all lengths in millimetres. */
export interface Rescue {
  readonly option: RescueName
  readonly possible: boolean
  /** What gap it leaves; left out where there is nothing to say. */
  readonly ballGap?: Mm
  readonly lengths: Readonly<Record<string, Mm>>
  readonly counts: Readonly<Record<string, number>>
}

/** A groove that is too deep, as it is believed to be. */
interface SpoiltGroove {
  readonly groove: GrooveUnderWay
  readonly model: GapModel
  readonly target: SettledTarget
  readonly ballsOnHand: readonly BallsOnHand[]
  readonly x: Mm
  /** Mean of the balls in it. */
  readonly ballDiameter: Mm
}

interface Spoilt extends SpoiltGroove {
  readonly ballCount: number
  readonly pitchRadius: Mm
  readonly gapWith: (ballDiameter: number) => number
}

/**
 * Every way out of a groove that is too deep, from least to most work. Each is reckoned at the best estimate of
 * the groove and of the balls, and each that makes a new bearing goes through the design core.
 */
export function rescues(spoiltGroove: SpoiltGroove): readonly Rescue[] {
  const { groove, model, target, x, ballDiameter } = spoiltGroove
  const spoilt: Spoilt = {
    ...spoiltGroove,
    ballCount: groove.settled.input.balls.count,
    pitchRadius: mm(model.pitchRadius(x, ballDiameter)),
    gapWith: (diameter) => model.figure(x, diameter),
  }
  return [
    accepted(spoilt),
    betterBalls(spoilt),
    largerBalls(spoilt),
    mixedBalls(spoilt),
    spacers(spoilt),
    ...lining(spoilt),
    oneBallMore(spoilt),
    { option: 'new-blank', possible: true, ballGap: target.aim, lengths: {}, counts: {} },
  ]
}

const inBand = (gap: number, { min, max }: SettledTarget): boolean => gap >= min && gap <= max

function accepted({ target, ballDiameter, gapWith }: Spoilt): Rescue {
  const gap = mm(gapWith(ballDiameter))
  return {
    option: 'accept',
    possible: true,
    ballGap: gap,
    lengths: { overMaxBallGap: mm(gap - target.max) },
    counts: {},
  }
}

const nothing = (option: RescueName): Rescue => ({ option, possible: false, lengths: {}, counts: {} })

function betterBalls({ ballsOnHand, ballCount, target, gapWith }: Spoilt): Rescue {
  const enough = ballsOnHand.filter(({ quantity }) => quantity >= ballCount)
  const best = nearest(enough, ({ diameter }) => Math.abs(gapWith(diameter) - target.aim))
  if (best === undefined) return nothing('better-balls')
  const gap = mm(gapWith(best.diameter))
  return {
    option: 'better-balls',
    possible: inBand(gap, target),
    ballGap: gap,
    lengths: { diameter: best.diameter },
    counts: { ballCount },
  }
}

function nearest<T>(candidates: readonly T[], distance: (candidate: T) => number): T | undefined {
  return candidates.reduce<T | undefined>(
    (best, each) => (best === undefined || distance(each) < distance(best) ? each : best),
    undefined,
  )
}

/** No bag of balls runs further off than this from what the ring was designed for. */
const LARGEST_BALL = 1.25

function largerBalls({ groove, target, ballDiameter, x, gapWith }: Spoilt): Rescue {
  const option = 'larger-balls'
  const most = ballDiameter * LARGEST_BALL
  if (gapWith(most) > target.aim || gapWith(ballDiameter) < target.aim) return nothing(option)
  const slope = (diameter: number): number => {
    const step = 1e-6 * diameter
    return (gapWith(diameter + step) - gapWith(diameter - step)) / (2 * step)
  }
  // The gap falls as the balls grow; the root is found of a function that rises.
  const diameter = mm(bracketedRoot((size) => [target.aim - gapWith(size), -slope(size)], ballDiameter, most))
  const { count, material, length } = groove.settled.input.balls
  const balls = {
    count,
    diameter,
    ...(length === undefined ? {} : { length }),
    ...(material === undefined ? {} : { material }),
  }
  const made = groove.remade({ balls, x, band: bandOf(target), keepsCutter: true })
  const lengths = { diameter, largerBy: mm(diameter - ballDiameter) }
  return {
    option,
    possible: made !== undefined,
    ballGap: target.aim,
    lengths: { ...lengths, ...made?.sizes },
    counts: {},
  }
}

/** Larger ones meet over a small ball between them. */
const MOST_MIXED = 1.5

function mixedBalls({ groove, ballsOnHand, ballCount, ballDiameter, x, target }: Spoilt): Rescue {
  const larger = ballsOnHand.filter(({ diameter }) => diameter > ballDiameter && diameter <= MOST_MIXED * ballDiameter)
  const mixes = larger.flatMap(({ diameter, quantity }) =>
    Array.from({ length: Math.min(quantity, ballCount - 1) }, (_, index) => index + 1).flatMap((replaced) => {
      const balls = mixed(ballCount, replaced, ballDiameter, diameter)
      if (x < groove.tightest(balls)) return []
      return [{ diameter, replaced, gap: groove.unequalGap(x, balls) }]
    }),
  )
  const good = mixes.filter(({ gap }) => inBand(gap, target))
  const best = nearest(good.length > 0 ? good : mixes, ({ gap }) => Math.abs(gap - target.aim))
  if (best === undefined) return nothing('mixed-balls')
  return {
    option: 'mixed-balls',
    possible: good.length > 0,
    ballGap: best.gap,
    lengths: { diameter: best.diameter },
    counts: { replacedCount: best.replaced },
  }
}

/** The larger balls spread evenly round the ring, so that no side of it stands out. */
const mixed = (count: number, replaced: number, small: number, large: number): readonly number[] =>
  Array.from({ length: count }, (_, index) =>
    Math.floor(((index + 1) * replaced) / count) > Math.floor((index * replaced) / count) ? large : small,
  )

/** Thinner by this than what closes the ring outright, a spacer would leave a gap below 0 in rounding only. */
const CLOSED_WITHIN = 1e-9

/**
 * Spacers of thickness t between all neighbours are a ring of balls larger by t on the same pitch circle, of which the
 * last gap is the one aimed at. A single spacer takes all that the gap has too much.
 */
function spacers({ ballCount, ballDiameter, pitchRadius: radius, target, gapWith }: Spoilt): Rescue {
  const gap = gapWith(ballDiameter)
  // Of even balls, too: the gap that is believed has the balls' scatter in it.
  if (!(gap >= target.aim && gapOfRing(radius, ballDiameter, ballCount) >= target.aim)) return nothing('spacers')
  const closing = 2 * radius * Math.sin(Math.PI / ballCount) * (1 + CLOSED_WITHIN)
  const each = bracketedRoot(
    (size) => [
      target.aim - gapOfRing(radius, mm(size), ballCount),
      -gapPerBallDiameterAtPitchRadius(radius, mm(size), ballCount),
    ],
    ballDiameter,
    closing,
  )
  return {
    option: 'spacers',
    possible: each > ballDiameter,
    ballGap: target.aim,
    lengths: { eachThickness: mm(each - ballDiameter), singleThickness: mm(gap - target.aim) },
    counts: { spacerCount: ballCount },
  }
}

function lining({ groove, model, x, ballDiameter, target }: Spoilt): readonly Rescue[] {
  const thickness = mm(x - model.xFor(target.aim, ballDiameter))
  const lined = groove.lined(thickness)
  if (lined === undefined) return []
  const { grooveRadius } = lined
  const arc =
    grooveRadius === undefined
      ? { isLeft: true, lengths: {}, counts: {} }
      : {
          isLeft: grooveRadius > 0,
          lengths: { grooveRadius },
          counts: { tighterThanBallCount: grooveRadius < ballDiameter / 2 ? 1 : 0 },
        }
  return [
    {
      option: 'lining',
      possible: thickness > 0 && arc.isLeft,
      ballGap: target.aim,
      lengths: { thickness, ...arc.lengths },
      counts: arc.counts,
    },
  ]
}

/** Deeper for one ball more; where that goes past the middle of the ball, the land is opened with it. */
function oneBallMore({ groove, ballCount, ballDiameter, x, pitchRadius, target }: Spoilt): Rescue {
  const count = ballCount + 1
  const deeper = mm(pitchRadiusForGap(target.aim, ballDiameter, count) - pitchRadius)
  const { diameters: _measured, ...balls } = groove.settled.input.balls
  const made = groove.remade({
    balls: { ...balls, count, diameter: ballDiameter },
    x: mm(x + deeper),
    band: bandOf(target),
    keepsCutter: false,
  })
  if (made === undefined || !(deeper > 0)) {
    return { ...nothing('one-ball-more'), lengths: { deeper }, counts: { ballCount: count } }
  }
  return {
    option: 'one-ball-more',
    possible: true,
    ballGap: target.aim,
    lengths: { deeper, ...made.groove, ...made.sizes },
    counts: { ballCount: count, engagement: made.engagement },
  }
}
