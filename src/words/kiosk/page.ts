import { capitalised } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'

/** The words of `page.html`, each where its name stands in double braces. The rest is said while the page is used. */
export const PAGE = {
  noScript: 'This page works out the bearing in your browser. Switch scripts on to use it.',
} as const

/** The steps of a job. */
export const STAGE_NAMES = {
  bearing: 'Bearing',
  place: 'Wood and place',
  balls: 'Balls on hand',
  run: 'Will it run?',
  sheets: 'Sheets',
  lathe: 'At the lathe',
  assembly: 'Put together',
  care: 'Care',
} as const

/** One sentence a stage: what is decided here, and what comes next. */
const STAGE_LEADS: Readonly<Record<keyof typeof STAGE_NAMES, string | ((terms: Terms) => string)>> = {
  bearing: ({ element }) =>
    `Choose the ${element.many} and the bore: every size follows. Next, say which wood it is and where it will live.`,
  place: ({ element }) =>
    `Choose the wood and the air that it will live in: they decide how much play the year needs. Next, measure the ${element.many}.`,
  balls: ({ element }) =>
    `Measure your ${element.many}, and see which to use and in what order. Next, see how often such a bearing runs.`,
  run: ({ element }) =>
    `See how often such a bearing runs when cuts and ${element.many} are not perfect, and what it carries. Next, print the sheets.`,
  sheets: ({ raceway }) => `Print what you take to the bench. Next, cut the ${raceway.many} and measure as you go.`,
  lathe: ({ part }) => `Cut, measure, and do what the large line says. The job is done when both ${part.many} fit.`,
  assembly: 'Make what is left, finish the bearing and put it together, in this order. Next, look after it.',
  care: 'See in which air it runs and what it carries, and look after it.',
}

const CAGED_RUN = 'See what it carries. Next, print the sheets.'

export const SHELL = {
  lead: 'Design a wooden ball bearing: its sizes follow while you choose.',
  stages: 'Steps of the job',
  undo: 'Undo',
  copy: 'Copy link',
  copied: 'Copied: the link holds the whole job.',
  copyByHand: 'Copy this link:',
  example: 'Show an example: the tide clock of Larkmoor',
  exampleNote: 'Larkmoor is an invented makerspace.',
  replaces: 'This replaces the job on the page. Undo brings it back.',
  otherTab: 'Another tab of this browser has changed its job. Go on with this one, or take over the other.',
  takeOther: 'Take over the job of the other tab',
  previous: 'Back',
  next: 'Next',
  correct: 'Correct the bearing',
  waiting: 'Working it out …',
  unreached: 'The service cannot be reached, so there is no answer here now. Try again when the network is back.',
  here: 'The service cannot be reached. This browser worked the answer out by itself.',
  refused: 'There is no answer yet:',
  more: 'More choices',
  notToScale: 'Not to scale: printed from a screen. Print its PDF.',
  warnings: 'Warnings',
  notes: 'Good to know',
  cautions: 'Take care',
  insecure:
    'This page came over plain HTTP, so the browser keeps nothing of it: without the network it is gone. Your job stays in the link. Ask whoever runs the service for an https address.',
} as const

/** Why a step has nothing to show: the steps at which to correct it. */
export const noBearing = (steps: readonly (keyof typeof STAGE_NAMES)[]): string =>
  `Correct this at ${steps.map((step) => `“${STAGE_NAMES[step]}”`).join(' and ')}: until then there is nothing to show here.`

/** A step of the job, for what rolls in this bearing. */
export const stageName = (stage: keyof typeof STAGE_NAMES, { element }: Terms): string =>
  stage === 'balls' ? `${capitalised(element.many)} on hand` : STAGE_NAMES[stage]

/** @param isCaged then nothing is known of how often it runs: no gap must fit */
export const stageLead = (stage: keyof typeof STAGE_NAMES, terms: Terms, isCaged: boolean): string => {
  const lead = isCaged && stage === 'run' ? CAGED_RUN : STAGE_LEADS[stage]
  return typeof lead === 'string' ? lead : lead(terms)
}

/** A field with the unit of what is entered. */
export const inUnit = (label: string, unit: string): string => `${label} (${unit})`

export const numbered = (number: number, name: string): string => `${number} ${name}`
