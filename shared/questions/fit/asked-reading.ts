import type { Fit } from './fit.ts'
import type { FittedPart } from './fit-setup.ts'
import type { AskedReading } from './reading.ts'

/** What the advice hangs on, of a fit. */
type Advised = { readonly ring: FittedPart; readonly fit: Fit }

/**
 * The reading that the advice asks for: now where it says to measure, else the one after its cut, or the one that a stop without a verdict
 * still needs. The sentence names it, and whoever offers a form for readings opens that one. Undefined where nothing is left to read.
 */
export function askedReading({ ring, fit }: Advised): AskedReading | undefined {
  const mistaken = fit.disagreements.find((each) => each.mistakenFor !== undefined)?.mistakenFor
  return mistaken ?? ofAdvice(ring, fit)
}

function ofAdvice(ring: FittedPart, fit: Fit): AskedReading | undefined {
  switch (fit.action) {
    case 'measure': {
      const { kind, ballsLeftOut, count, expected } = fit.nextReading
      return {
        kind,
        ...(ballsLeftOut === undefined ? {} : { ballsLeftOut }),
        ...(count === undefined ? {} : { count }),
        ...(expected === undefined ? {} : { expected }),
      }
    }
    case 'cut':
      return ofFigure(ring, fit.isLastBallIn)
    case 'stop':
      return fit.reason === 'cannot-be-told' ? ofUndecided(ring, fit) : undefined
    default:
      return fit satisfies never
  }
}

/** The figure that the groove is cut to: without the last ball there is no gap to measure. */
const ofFigure = (ring: FittedPart, isLastBallIn: boolean): AskedReading =>
  ring === 'inner' ? { kind: 'radial-play' } : isLastBallIn ? { kind: 'ball-gap' } : opening(1)

const opening = (ballsLeftOut: number): AskedReading => ({ kind: 'last-ball-opening', ballsLeftOut })

/** Whether more wood must come off, more likely than not. */
export const isProbablyShort = ({ probability: { tooTight, inBand, tooDeep } }: Fit): boolean =>
  tooTight > inBand + tooDeep

function ofUndecided(ring: FittedPart, fit: Fit): AskedReading | undefined {
  if (isProbablyShort(fit)) {
    if (fit.isFigureRead) return undefined
    return ring === 'inner' ? { kind: 'groove-bottom-diameter' } : ofFigure(ring, fit.isLastBallIn)
  }
  if (ring !== 'inner' && !fit.isLastBallIn) return { kind: 'ball-gap' }
  return fit.isFigureRead ? undefined : ofFigure(ring, true)
}
