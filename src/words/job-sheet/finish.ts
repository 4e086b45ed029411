import type { ArrangementName } from '#shared/bearing/arrangements.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from '#src/words/figure.ts'
import { TERMS, type Terms, WOODEN_PARTS } from '#src/words/terms.ts'
import { gluedShut } from './joints.ts'
import type { OperationWords } from './operation.ts'

/* The last operations: finish, grain, wax, running in. */

/** The check when the finish is dry. */
const WHEN_DRY: Readonly<Record<ArrangementName, string>> = {
  radial: 'When it is dry, measure the gap and the play again.',
  roller: 'When it is dry, measure the gap and the play again.',
  thrust: 'When it is dry, measure the gap again.',
  caged: 'When it is dry, measure the play again, on three balls as before.',
}

/** @param film on each surface; 0 for bare wood */
export function finish(
  arrangement: ArrangementName,
  { film, units }: { readonly film: Mm; readonly units: Units },
): OperationWords {
  const { element, raceway } = TERMS[arrangement]
  const isBare = film === 0
  return {
    title: isBare ? `Leave it bare, or finish only outside the ${raceway.many}` : 'Put on the finish',
    tool: 'cloth, thin finish',
    how: isBare
      ? `Take it apart. The sizes are for bare wood. Finish only the outsides and the faces, keep the finish out of the ${raceway.many}, and leave bare what will be glued.`
      : `Take it apart. Put thin, even coats on every turned surface but where it will be glued: leave that bare, for glue holds on wood and not on a film. The sizes leave ${figure(film, units)} for the finish on each surface.`,
    check: WHEN_DRY[arrangement],
    mistake: {
      looksLike: isBare ? `Finish has run into a ${raceway.one}.` : `Finish has gathered in a ${raceway.one}.`,
      costs: `It dries to a bump that every ${element.one} climbs.`,
      remedy: 'Scrape it out before it hardens.',
    },
  }
}

/** Effects of too much sanding. */
const SANDED_ON: Readonly<Record<ArrangementName, string>> = {
  radial: 'The grooves get deeper, and the gap opens again.',
  roller: 'The track gets wider, and the gap opens again.',
  thrust: 'The grooves get deeper, and the plates come nearer to each other.',
  caged: 'The grooves get deeper, and the play grows again.',
}

/** @param isBare whether no finish comes into what it runs in: only damp air raises the fibres there */
export function grain(arrangement: ArrangementName, isBare: boolean): OperationWords {
  const { element, raceway } = TERMS[arrangement]
  return {
    title: 'Rub off the raised grain',
    tool: 'worn abrasive of a fine grit',
    how: `${isBare ? 'Damp air' : 'A first coat, or damp air,'} raises the fibres. When the wood is dry, rub them off with worn abrasive of a fine grit: two or three light strokes in each ${raceway.one}.`,
    check: `A cloth catches nowhere, and the ${element.many} run without a hiss.`,
    mistake: {
      looksLike: 'You sand on until it looks smooth.',
      costs: SANDED_ON[arrangement],
      remedy: 'Stop after three strokes.',
    },
  }
}

export function wax(arrangement: ArrangementName): OperationWords {
  const { raceway } = TERMS[arrangement]
  return {
    title: `Wax the ${raceway.many}`,
    tool: 'hard paste wax, soft cloth',
    how: `Put a thin coat in both ${raceway.many}, let it dry, and buff it off.`,
    check: 'Nothing comes off on a finger.',
    mistake: {
      looksLike: 'The wax is left thick.',
      costs: `It gathers dust into crumbs that feel like a rough ${raceway.one}.`,
      remedy: 'Buff it off with a clean cloth.',
    },
  }
}

interface RunInFacts {
  /** The least gap allowed; a cage leaves no gap. */
  readonly minGap: Mm
  /** The ring whose halves nothing but glue will hold. */
  readonly loose: RingName | undefined
  /** Whether a step that mounts the bearing follows: the halves are glued there. */
  readonly isMounted: boolean
  readonly units: Units
}

const gapStays = ({ minGap, units }: RunInFacts): string =>
  minGap > 0 ? `The gap still measures ${figure(minGap, units)} or more.` : 'The gap has not closed.'

/** The final readings, and the conditions that must hold. */
const AT_THE_END: Readonly<
  Record<
    ArrangementName,
    { readonly title: string; readonly measure: string; readonly holds: (facts: RunInFacts) => string }
  >
> = {
  radial: { title: 'Assemble it and run it in by hand', measure: 'the gap and the play', holds: gapStays },
  roller: { title: 'Assemble it and run it in by hand', measure: 'the gap and the play', holds: gapStays },
  thrust: { title: 'Assemble it and run it in by hand', measure: 'the gap', holds: gapStays },
  caged: { title: 'Run it in by hand', measure: 'the play', holds: () => 'The cage drags nowhere.' },
}

/** What holds halves together that are not glued yet: washers no wider than the land, or clamps outside the balls. */
const MEANWHILE: Readonly<Record<RingName, { readonly tool: string; readonly how: (terms: Terms) => string }>> = {
  innerRing: {
    tool: 'a bolt, two washers of wood',
    how: () =>
      'Until they are glued, clamp the halves of the inner ring between two washers of wood on a bolt through the bore: the washers must be smaller than the land, so that they clear all that rolls.',
  },
  outerRing: {
    tool: 'three small clamps',
    how: ({ element, raceway }) =>
      `Until they are glued, hold the halves of the outer ring with three small clamps, evenly round, on the wood outside the ${raceway.one}: nothing may press on the ${element.many} or the inner ring.`,
  },
}

/** Glue comes after the last cut: nobody can open the ring again to brush chips out or to ease a groove. */
function looseSentence(arrangement: ArrangementName, { loose, isMounted }: RunInFacts): string {
  if (loose === undefined) return ''
  return isMounted
    ? ` Do not glue the halves of the ${WOODEN_PARTS[loose]} yet, though no screw holds them: that comes when the seats are cut and tried.`
    : ` When it runs as it should, and every seat and hole is cut and tried, ${gluedShut(loose, TERMS[arrangement])}`
}

export function runIn(arrangement: ArrangementName, facts: RunInFacts): OperationWords {
  const { element, raceway } = TERMS[arrangement]
  const { title, measure, holds } = AT_THE_END[arrangement]
  const { loose } = facts
  const gluesHere = loose !== undefined && !facts.isMounted
  const held = loose && MEANWHILE[loose]
  return {
    title: gluesHere ? 'Assemble it, run it in by hand, and glue it shut' : title,
    tool: ['hands', ...(held ? [held.tool] : []), ...(gluesHere ? ['glue'] : [])].join(', '),
    how: `${held === undefined ? '' : `${held.how(TERMS[arrangement])} `}Turn it a few hundred times by hand, both ways, under a light load. Take it apart, wipe out the dust, look for shiny spots, and measure ${measure} once more.${looseSentence(arrangement, facts)}`,
    check: `It coasts, and is as quiet at the end of a turn as at the start. ${holds(facts)}`,
    mistake: {
      looksLike: `A ${raceway.one} has a shiny spot in one place: the wood is high there, or one ${element.one} is large.`,
      costs: 'Wear that grows.',
      remedy: 'Ease the spot with two strokes, no more.',
    },
  }
}
