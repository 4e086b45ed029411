/** Words of the last step. */
export const CARE = {
  air: 'The air that it stands',
  noAir: 'Say at the step “Wood and place” where it lives: then the humidity in which it runs stands here.',
  load: 'What it carries',
  noLoad: 'Enter the load at the step “Will it run?”: then what the bearing carries stands here.',
  rest: 'Look after it',
  standing: 'Common practice, no source.',
} as const
