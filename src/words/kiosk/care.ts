import type { Terms } from '#src/words/terms.ts'

/** Words of the last step. */
export const CARE = {
  air: 'The air that it stands',
  noAir: 'Say at the step “Wood and place” where it lives: then the humidity in which it runs stands here.',
  load: 'What it carries',
  noLoad: 'Enter the load at the step “Will it run?”: then what the bearing carries stands here.',
  rest: 'Look after it',
  habits: ({ element, raceway, gap, play }: Terms) => [
    'Turn it by hand now and then. When it is stiff twice a turn, the wood has moved: wait for drier or damper air.',
    `Brush dust and crumbs of wax out of the ${raceway.many}. Never oil wood that ${element.many} run on: it swells.`,
    `Measure the ${gap} and the ${play} after the first season, and write them on the job sheet.`,
  ],
  standing: 'Common practice, no source.',
} as const
