/** Words of the last step. */
export const CARE = {
  air: 'The air in which it runs',
  noAir: 'State at “Wood and place” where it will live: then this says in which humidity it runs.',
  load: 'What it carries',
  noLoad: 'Enter a load at “Will it run?”: then this says whether the bearing carries it, and how much it may carry.',
  rest: 'Look after it',
  standing: 'Common practice, no source.',
} as const
