import type { Assembly } from '#shared/bearing/assembly.ts'
import type { Split } from '#shared/bearing/fields.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from './figure.ts'
import { type PlugFacts, plugsTell } from './plugs.ts'
import type { Terms } from './terms.ts'

/** What holds two halves: only the plan of making knows whether a screw fits. */
const JOIN_THEM = 'join them with their screws, or with glue where no screw fits: the job sheet says which.'

/** How the balls of a full ring go in between two grooved rings. */
const FILLING: Readonly<Record<Assembly['easiestWay'], string>> = {
  'from-inside': 'Lay the balls in the outer groove and push the last one straight out from the middle.',
  'over-land': "Lay the balls in the outer groove and roll the last one in from the side, over the outer ring's land.",
  'open-side': 'Lay the balls round the inner ring and close the two halves of the outer ring over them.',
}

const CLOSING: Readonly<Record<Split, string>> = {
  'inner-ring': `Bring the two halves of the inner ring together inside the balls, one from each side, and ${JOIN_THEM}`,
  'outer-ring': `Bring the halves together, and ${JOIN_THEM}`,
  none: 'A one-piece inner ring cannot go inside a full ring of balls. Split one ring.',
}

/** How a full ring of balls goes together between two grooved rings, in order. */
export const radialSteps = (easiestWay: Assembly['easiestWay'], split: Split): string[] => [
  FILLING[easiestWay],
  CLOSING[split],
]

export const ROLLER_STEPS: readonly string[] = [
  'Screw one cheek on the outer ring.',
  'Lay the ring on that cheek, stand the inner ring in the middle and drop the rollers in round it.',
  'Screw on the other cheek, and check that the rollers and the inner ring run free between both.',
]

export const THRUST_STEPS: readonly string[] = [
  'Lay the lower plate flat, groove up.',
  'Lay the balls in its groove, push them together, and drop the last one in from above.',
  'Set the upper plate on the balls, groove down. It centres itself.',
]

export const CAGED_STEPS: Readonly<Record<Split, readonly string[]>> = {
  none: [
    'Lay the outer ring flat and push the inner ring inside it all the way to one side.',
    'Drop the balls into the wide side, push them together, and bring the inner ring to the middle.',
    'Spread the balls evenly and close the two halves of the cage over them from both sides. Hold the halves together with thin screws or pegs through the webs.',
  ],
  'inner-ring': [
    'Stand the cage in the middle of the outer ring and push a ball out through each pocket into the groove.',
    `Bring the two halves of the inner ring together inside the balls, one from each side, and ${JOIN_THEM}`,
  ],
  'outer-ring': [
    'Slip the cage over the inner ring and push a ball in through each pocket into the groove.',
    `Close the two halves of the outer ring over the balls, and ${JOIN_THEM}`,
  ],
}

/** What the plug gauge of a bearing is right for. */
export interface GaugeFacts {
  readonly ballDiameter: Mm
  /** d(gap) / d(mean diameter) at a fixed plug. */
  readonly gapPerBallDiameter: number
  /** How much larger the plug is before the finish goes on; left out where the finish does not change it. */
  readonly largerBeforeFinish?: Mm
  readonly plugs: PlugFacts
}

/** Joined, not concatenated: V8 writes JSON of a flat string at twice the speed of one that is still in pieces. */
export function gaugeNote(facts: GaugeFacts, units: Units, terms: Terms): string {
  const { element, raceway } = terms
  const { ballDiameter, gapPerBallDiameter, largerBeforeFinish: larger } = facts
  return [
    `The plug is right for ${element.many} of `,
    figure(ballDiameter, units),
    ' on average. If yours are larger, the same plug leaves a gap that is smaller by ',
    Math.abs(gapPerBallDiameter).toFixed(1),
    ` times the difference, so measure the ${element.many} first.`,
    larger === undefined
      ? ''
      : ` This plug is for the finished ${raceway.one}. Before the finish goes on, use one ${figure(larger, units)} larger.`,
    ' ',
    plugsTell(facts.plugs, units, terms),
  ].join('')
}
