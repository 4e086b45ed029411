/** Words of the step with the balls on hand. */
export const BALLS = {
  measured: 'Diameters of the balls that you have, one a line',
  hint: 'Mark each ball with its number. A decimal may have a point or a comma.',
  tooFew: (count: number, needed: number) => `${count} of ${needed} balls measured: measure at least ${needed}.`,
  unread: (text: string) => `“${text}” is no length.`,
  ring: 'The chosen balls in their order round the ring',
  numbered: 'Their differences are drawn 20 times as large. Each has the number of its line.',
  use: 'Design for these balls',
} as const
