import { fail, ok } from '#shared/result.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import * as defaults from './defaults.ts'
import type { Split } from './fields.ts'
import { playForScatter } from './play-for-scatter.ts'
import {
  type AnyInput,
  ballsInput,
  ballsOf,
  denominatorInput,
  depthInput,
  faultsOfMeasured,
  grooveOf,
  type InnerRingInput,
  type OuterRingInput,
  outsideInput,
  type Resolution,
  type ResolvedRings,
  type RingsInput,
  sharedGrooveInput,
  undercut,
} from './resolve.ts'

/** The input of two rings with a groove each. */
export interface GroovedRingsInput extends Omit<RingsInput, 'outerRing'> {
  readonly outerRing?: OuterRingInput
  readonly split?: Split
}

/** A whole input of two rings with a groove each: what both arrangements of them echo. */
type WholeInput = AnyInput &
  Required<Pick<GroovedRingsInput, 'radialInternalClearance' | 'finishAllowance' | 'width' | 'split'>> &
  Pick<GroovedRingsInput, 'groove' | 'shopDenominator'> & {
    readonly outerRing: OuterRingInput
    readonly innerRing: InnerRingInput
  }

/** Defaults of an arrangement of grooved rings. */
export interface GroovedDefaults {
  /** In ball diameters. */
  readonly engagement: ResolvedRings['usualEngagement']
  readonly split: Split
}

/** Resolves what grooved rings share, whatever keeps the balls apart. */
export function resolveGroovedRings(
  input: GroovedRingsInput,
  { engagement, split: usualSplit }: GroovedDefaults,
): Resolution<Omit<ResolvedRings, 'assumed' | 'input' | 'traits'> & { readonly input: WholeInput }> {
  const { outerRing, innerRing, units } = input
  const { ballDiameter, ballScatter } = ballsOf(input, defaults.BALL_SCATTER)
  const outerGroove = grooveOf(outerRing, outerRing?.groove ?? input.groove, ballDiameter, engagement.outerRing)
  const innerGroove = grooveOf(innerRing, innerRing?.groove ?? input.groove, ballDiameter, engagement.innerRing)
  const faults = [
    ...faultsOfMeasured(input),
    ...undercut(input, 'outerRing', outerGroove),
    ...undercut(input, 'innerRing', innerGroove),
  ]
  if (faults.length > 0) return fail(faults)
  const width = input.width ?? usualWidth(ballDiameter, units)
  const split = input.split ?? usualSplit
  const radialInternalClearance = input.radialInternalClearance ?? usualPlay(ballDiameter, ballScatter, input)
  const finishAllowance = input.finishAllowance ?? defaults.FINISH_ALLOWANCE
  const outside = outsideInput(outerRing, units, usualWall(ballDiameter, units))
  return ok({
    input: {
      units,
      balls: ballsInput(input, ballScatter),
      bore: input.bore,
      outerRing: { ...depthInput(outerRing, engagement.outerRing), ...outside },
      innerRing: depthInput(innerRing, engagement.innerRing),
      ...sharedGrooveInput(input),
      radialInternalClearance,
      finishAllowance,
      width,
      split,
      ...denominatorInput(input),
    },
    ballDiameter,
    ballScatter,
    outerGroove,
    innerGroove,
    split,
    outside,
    radialInternalClearance,
    finishAllowance,
    width,
    usualEngagement: engagement,
  })
}

/** Sizes that nobody stated, as an answer states them. */
const usualWidth = (ballDiameter: Mm, units: Units): Mm => rounded(mm(defaults.GROOVED_WIDTH * ballDiameter), units)
const usualWall = (ballDiameter: Mm, units: Units): Mm => rounded(mm(defaults.OUTER_WALL * ballDiameter), units)
export const usualPlay = (ballDiameter: Mm, scatter: Mm, { balls, units }: Pick<AnyInput, 'balls' | 'units'>): Mm =>
  rounded(playForScatter({ ballDiameter, scatter, ballCount: balls.count }), units)
