import { traitsOf } from '#shared/bearing/arrangement.ts'
import { bearingFor } from '#shared/bearing/bearing.ts'
import { cagedBearingFor } from '#shared/bearing/caged.ts'
import type { DesignInput } from '#shared/bearing/design-input.ts'
import { thrustBearingFor } from '#shared/bearing/plates.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { SettledBalls } from '#shared/bearing/settle.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { readingDeviation } from '#shared/statistics/likelihood.ts'
import * as defaults from './defaults.ts'
import { type Fit, type FitFault, fitOf } from './fit.ts'
import { cagedInnerSubject, innerSubject, outerSubject, plateSubject } from './from-bearing.ts'
import type { EarlierState, Reading, ReadingKind, ToolError } from './reading.ts'
import { usualError } from './reading-errors.ts'
import { type BallsOnHand, type Rescue, rescues, type Workpiece } from './rescue.ts'
import { gapSlope, pitchRadius } from './ring-law.ts'
import { type CountedRemoval, type Stroke, strokeOf } from './stroke.ts'
import type { Subject, Target } from './subject.ts'
import { plateWorkpiece, ringWorkpiece } from './workpiece-of.ts'

/* Fit correction asked of a design: what a route calls. */

export interface FitCorrectionInput {
  readonly design: DesignInput
  /** `plate` for a design of plates, and for no other. */
  readonly ring: 'outer' | 'inner' | 'plate'
  readonly readings: readonly Reading[]
  readonly earlier: readonly EarlierState[]
  readonly target: Partial<Target>
  readonly tools: { readonly sharpTool?: ToolError; readonly abrasive?: ToolError }
  readonly removalHistory: readonly CountedRemoval[]
  readonly ballsOnHand: readonly BallsOnHand[]
}

/** Why there is nothing to say about a fit. */
export type FitRefusal =
  | { readonly code: 'design'; readonly refusals: readonly Refusal[] }
  | { readonly code: 'no-gap-in-cage'; readonly path: string }
  | { readonly code: 'reading-of-other-ring'; readonly path: string; readonly kind: ReadingKind }
  | { readonly code: 'too-many-left-out'; readonly path: string; readonly given: number; readonly most: number }
  | { readonly code: 'target-band-empty'; readonly path: string; readonly min: number; readonly max: number }
  | {
      readonly code: 'aim-outside-band'
      readonly path: string
      readonly aim: number
      readonly min: number
      readonly max: number
    }
  | { readonly code: FitFault; readonly path: string }

export interface FitCorrection {
  readonly settled: SettledBalls
  readonly target: Target
  readonly fit: Fit
  readonly stroke?: Stroke
  /** Of an outer groove, or plates, that are too deep. */
  readonly rescue?: readonly Rescue[]
}

/** What is cut, and what the design says of where to end. */
interface Ground {
  readonly settled: SettledBalls
  readonly subject: Subject
  readonly workpiece?: Workpiece
  readonly band: Pick<Target, 'aim' | 'min' | 'max'>
}

/** Cut, measure or stop, of any arrangement and either ring. */
export function fitCorrection(input: FitCorrectionInput): Result<FitCorrection, readonly FitRefusal[]> {
  const found = groundOf(input)
  if (!found.ok) return found
  const { settled, subject, workpiece, band } = found.value
  const target = targetOf(input.target, band, settled)
  const refusals = [...bandRefusals(target), ...readingRefusals(input, subject)]
  if (refusals.length > 0) return fail(refusals)
  const stroke = strokeOf(input.removalHistory, figurePerDepth(subject), checkDeviation(input))
  const answer = fitOf({
    subject,
    target,
    readings: input.readings,
    earlier: input.earlier,
    tools: {
      'sharp-tool': input.tools.sharpTool ?? defaults.SHARP_TOOL,
      abrasive: input.tools.abrasive ?? defaults.ABRASIVE,
    },
    ...(stroke === undefined ? {} : { stroke }),
    errorToCome: (kind) => errorToCome(input, kind),
  })
  if (!answer.ok) {
    const path = answer.error === 'readings-contradict' ? '/readings' : '/target'
    return fail([{ code: answer.error, path }])
  }
  const said = { settled, target, fit: answer.value, ...(stroke === undefined ? {} : { stroke }) }
  if (answer.value.state !== 'too-deep' || workpiece === undefined || subject.cuts !== 'outer') return ok(said)
  const { ballsOnHand } = input
  const x = answer.value.grooveRadius.value
  const ballDiameter = answer.value.ballDiameter.value
  return ok({ ...said, rescue: rescues({ subject, target, workpiece, ballsOnHand, x, ballDiameter }) })
}

function groundOf({ design, ring }: FitCorrectionInput): Result<Ground, readonly FitRefusal[]> {
  const { members, ballSet } = traitsOf(design)
  if ((ring === 'plate') !== (members === 'plates')) {
    throw new RangeError(`ring must be plate for plates and for nothing else, got ${ring}`)
  }
  const refused = (refusals: readonly Refusal[]) => fail([{ code: 'design', refusals } as const])
  if (ring === 'plate') {
    const made = thrustBearingFor(design, 'fit-correction')
    if (!made.ok) return refused(made.error)
    const { settled } = made.value
    return ok({
      settled,
      subject: plateSubject(made.value),
      workpiece: plateWorkpiece(made.value),
      band: gapBand(settled),
    })
  }
  if (ballSet === 'caged') {
    if (ring === 'outer') return fail([{ code: 'no-gap-in-cage', path: '/ring' }])
    const made = cagedBearingFor(design, 'fit-correction')
    if (!made.ok) return refused(made.error)
    const { settled } = made.value
    return ok({ settled, subject: cagedInnerSubject(made.value), band: playBand(settled.radialInternalClearance) })
  }
  const made = bearingFor(design, 'fit-correction')
  if (!made.ok) return refused(made.error)
  const { settled } = made.value
  return ring === 'outer'
    ? ok({ settled, subject: outerSubject(made.value), workpiece: ringWorkpiece(made.value), band: gapBand(settled) })
    : ok({ settled, subject: innerSubject(made.value), band: playBand(settled.radialInternalClearance) })
}

interface GapBand {
  readonly ballGap: number
  readonly minBallGap: number
  readonly maxBallGap: number
}

const gapBand = ({ ballGap: aim, minBallGap: min, maxBallGap: max }: GapBand): Ground['band'] => ({ aim, min, max })

/** A play from half to twice the design's still runs well: common practice, no source. */
const playBand = (aim: number): Ground['band'] => ({ aim, min: aim / 2, max: 2 * aim })

/** What the maker said, and for the rest what the design says. */
function targetOf(said: Partial<Target>, band: Ground['band'], { finishAllowance }: SettledBalls): Target {
  const min = said.min ?? band.min
  const max = said.max ?? band.max
  return {
    min,
    max,
    aim: said.aim ?? Math.min(Math.max(band.aim, min), max),
    overshootRisk: said.overshootRisk ?? defaults.OVERSHOOT_RISK,
    finishAllowance: said.finishAllowance ?? finishAllowance,
  }
}

function bandRefusals({ aim, min, max }: Target): readonly FitRefusal[] {
  if (!(min < max)) return [{ code: 'target-band-empty', path: '/target', min, max }]
  return aim >= min && aim <= max ? [] : [{ code: 'aim-outside-band', path: '/target', aim, min, max }]
}

/** Readings of a ring in which balls are closed without an inner ring. */
const OF_INNER_RINGS: readonly ReadingKind[] = ['radial-play', 'binds']
const OF_FULL_RINGS: readonly ReadingKind[] = ['ball-gap', 'last-ball-opening', 'last-ball-refused', 'last-ball-in']
const OF_BOTTOMS: readonly ReadingKind[] = ['groove-depth', 'plug']

function readingRefusals(
  { design, ring, readings, earlier }: FitCorrectionInput,
  subject: Subject,
): readonly FitRefusal[] {
  const { raceway } = traitsOf(design)
  const isCaged = subject.cuts === 'inner' && subject.outerKnown.by === 'groove'
  const isForeign = (kind: ReadingKind): boolean =>
    (ring !== 'inner' && OF_INNER_RINGS.includes(kind)) ||
    (isCaged && OF_FULL_RINGS.includes(kind)) ||
    (ring === 'plate' && OF_BOTTOMS.includes(kind)) ||
    (raceway === 'track' && kind === 'groove-depth')
  const most = subject.balls.count - FEWEST_IN_PLACE
  const judge = (reading: Reading, path: string): readonly FitRefusal[] => {
    const { kind } = reading
    if (isForeign(kind)) return [{ code: 'reading-of-other-ring', path, kind }]
    if (kind !== 'last-ball-opening' || reading.ballsLeftOut <= Math.max(most, 0)) return []
    return [{ code: 'too-many-left-out', path: `${path}/ballsLeftOut`, given: reading.ballsLeftOut, most }]
  }
  return [
    ...readings.flatMap((reading, index) => judge(reading, `/readings/${index}`)),
    ...earlier.flatMap((state, at) =>
      state.readings.flatMap((reading, index) => judge(reading, `/earlier/${at}/readings/${index}`)),
    ),
  ]
}

/** Two balls touch, whatever the groove: an opening takes three in place. */
const FEWEST_IN_PLACE = 3

/** How the figure moves with the depth of a cut, as designed. */
function figurePerDepth(subject: Subject): number {
  if (subject.cuts === 'inner') return 2
  const { balls, outer } = subject
  const step = 1e-4 * balls.diameter
  const at = (x: number): number => pitchRadius(outer.seat, x, balls.diameter)
  return (gapSlope(at(outer.x), balls.diameter, balls.count) * (at(outer.x + step) - at(outer.x - step))) / (2 * step)
}

/** A maker reads on with the same rule: the error of the latest such reading, and without one what is usual. */
function errorToCome({ readings, earlier, design }: FitCorrectionInput, kind: ReadingKind) {
  const latest = [...earlier.flatMap((state) => state.readings), ...readings].findLast((each) => each.kind === kind)
  if (latest !== undefined && 'error' in latest) return latest.error
  return usualError(kind, design.units) ?? { graduation: 0, standardUncertainty: defaults.BINDING_DOUBT }
}

const checkDeviation = (input: FitCorrectionInput): number =>
  readingDeviation(errorToCome(input, input.ring === 'inner' ? 'radial-play' : 'ball-gap'))
