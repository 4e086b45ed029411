import type { Method } from '#shared/bearing/method.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { STOP_ANY_MACHINE } from '#src/words/caution.ts'
import { figure, giveOrTake } from '#src/words/figure.ts'
import type { PlugFacts } from '#src/words/plugs.ts'
import {
  type GapFacts,
  LAYOUT_CHECK,
  LAYOUT_TOOL,
  layTemplate,
  type MandrelFacts,
  type OperationWords,
  plateOnLathe,
  TURNED_BORE_TOOLS,
  turnBore,
} from './operation.ts'

/* Making the two plates of a turntable. */

export const plateLayout = (isSegmented: boolean): OperationWords => ({
  title: 'Lay out both plates',
  tool: LAYOUT_TOOL,
  how: layTemplate(isSegmented, 'Punch the centre deep: everything turns about it.', 2),
  check: LAYOUT_CHECK,
  mistake: {
    looksLike: 'A face is not flat: a straightedge rocks on it.',
    costs: 'The turntable wobbles.',
    remedy: 'Plane the faces before you cut anything into them.',
  },
})

/** With what a bored plate is made round, and how. */
const ROUND_BY: Readonly<Record<Method, Pick<OperationWords, 'tool' | 'how'>>> = {
  'saw-and-lathe': {
    tool: 'band saw or scroll saw, lathe',
    how: 'Then saw it out along the dashed line, and turn its outside true to the bore.',
  },
  'lathe-only': {
    tool: 'lathe',
    how: 'Then knock its corners off by hand, and turn its outside true to the bore.',
  },
  'router-and-lathe': {
    tool: 'router on a circle jig',
    how: 'Then rout its outside true to the bore.',
  },
}

export function plateShape(
  machines: Method,
  { mandrel, isBored, isSegmented }: Omit<MandrelFacts, 'units'> & { readonly isSegmented: boolean },
): OperationWords {
  const { tool, how } = ROUND_BY[machines]
  const held = machines === 'router-and-lathe' ? undefined : plateOnLathe({ mandrel, isBored })
  const bored = ['drill press', 'a bit as wide as the bore', tool, ...(held?.tools ?? [])].join(', ')
  return {
    title: 'Bore the plates and make them round',
    tool: isBored ? bored : [...new Set(`${tool}, ${TURNED_BORE_TOOLS}`.split(', '))].join(', '),
    how: `${isBored ? 'Bore the centre square to the face while you can still clamp the blank.' : turnBore('each blank', isSegmented)} ${how}${held === undefined ? '' : ` ${held.how}`}`,
    check: 'Turn the plate about a pin in its bore: neither its rim nor its face may run out.',
    mistake: {
      looksLike: 'The bore is not square to the face.',
      costs: 'The plate tilts, and the balls on one side carry all the load.',
      remedy: 'Turn the face true to the bore before you cut the groove.',
    },
  }
}

/** The tool that cuts the groove of a plate, and the setting of its circle. */
const GROOVED_BY: Readonly<Record<Method, { readonly tool: string; readonly setting: string }>> = {
  'saw-and-lathe': { tool: 'lathe, scraper ground to the groove radius', setting: 'of the tool' },
  'lathe-only': { tool: 'lathe, scraper ground to the groove radius', setting: 'of the tool' },
  'router-and-lathe': { tool: 'router on a circle jig, round-nose bit', setting: 'of the jig' },
}

export const trialGroove = (machines: Method, facts: GapFacts): OperationWords => ({
  title: 'Cut the first groove shallow',
  tool: GROOVED_BY[machines].tool,
  how: `Set the tool by the circle gauge, held against the wall of the bore. Cut the groove on that circle, to a third of its depth. The balls lie over the lowest line of the groove however deep it is, so a shallow groove already shows whether the circle is right. ${STOP_ANY_MACHINE}`,
  check: 'Measure across the lowest line of the groove, in two directions.',
  mistake: {
    looksLike: `A circle whose radius is ${figure(facts.over, facts.units)} too large opens the gap by ${figure(facts.opens, facts.units)}.`,
    costs: 'Little while the groove is shallow. If it is deep, you lose the plate.',
    remedy: 'While it is shallow, cut the whole groove on the right circle.',
  },
})

export const tryInPlate = (facts: {
  readonly count: number
  /** A gap too small by this … */
  readonly lacking: Mm
  /** … needs the circle's radius so much larger. */
  readonly wider: Mm
  readonly units: Units
}): OperationWords => ({
  title: 'Try the balls',
  tool: 'the balls, a rule or feelers',
  how: `Lay the plate flat on the bench. Lay in all ${facts.count} balls, push them together along the groove, and measure the gap between the last and the first. For each ${figure(facts.lacking, facts.units)} that the gap is too small, make the radius of the circle ${figure(facts.wider, facts.units)} larger; for each that it is too large, as much smaller.`,
  check: 'Measure the gap three times, the balls pushed together anew each time: the figures agree.',
  mistake: {
    looksLike: 'A ball rests on the side of its neighbour instead of in the groove: the gap reads too large.',
    costs: 'The circle is set wrong.',
    remedy: 'Press every ball down with a finger before you measure.',
  },
})

export const plateGroove = (machines: Method, plugs: PlugFacts, units: Units): OperationWords => ({
  title: 'Cut the groove to its depth',
  tool: GROOVED_BY[machines].tool,
  how: `Cut it on the circle that the balls have shown, in passes, the last one light. ${STOP_ANY_MACHINE} Write down the setting ${GROOVED_BY[machines].setting}.`,
  check: `Hold the profile of the gauge sheet in the groove: its shoulders must meet the face all the way round. Measure the depth with the rod of the caliper, set by the depth block. Then ${
    plugs.decides
      ? 'try the balls and the plugs once more.'
      : `lay the balls in and measure the gap once more. The plugs cannot tell you that it is right: with these balls the go plug just enters at a gap of ${giveOrTake(plugs.whenGoEnters, units)}.`
  }`,
  mistake: {
    looksLike: 'The groove is deeper on one side.',
    costs: 'The turntable leans as it turns.',
    remedy: 'Depth moves the plates, not the gap: deepen the other side to match.',
  },
})

export const SECOND_PLATE: OperationWords = {
  title: 'Cut the groove of the other plate, at the same setting',
  tool: 'the same tool, a rule or feelers',
  how: 'Do not touch the setting, whatever circle it came to: if the two circles differ, the balls climb from one groove into the other. Then lay the plates together, with the balls between them.',
  check: 'Measure the space between the plates with feelers, at four places. Turn the plate by hand: you feel no bump.',
  mistake: {
    looksLike: 'It turns now hard, now easily: the two circles differ, or one ball is large.',
    costs: 'It runs roughly, and wears where it is tight.',
    remedy: 'Find the ball first. Then ease the flank that shines with two strokes.',
  },
}
