import { capitalised } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'

/** Words of the step with the balls on hand. */
export const BALLS = {
  measured: ({ element }: Terms) => `Diameters of the ${element.many} that you have, one a line`,
  hint: ({ element }: Terms) => `Mark each ${element.one} with its number. A decimal may have a point or a comma.`,
  tooFew: (count: number, needed: number, { element }: Terms) =>
    `${count} of ${needed} ${element.many} measured: measure at least ${needed}.`,
  apart:
    'The cage keeps the balls apart, so their order closes no gap: use those that are most alike. Enter measured ones at “Bearing”, under “More choices”.',
  unread: (number: number, text: string, { element }: Terms) =>
    `${capitalised(element.one)} ${number} of your list, “${text}”, is no length.`,
  ring: ({ element }: Terms) => `The chosen ${element.many} in their order round the ring`,
  numbered: 'Their differences are drawn 20 times as large. Each has its number in your list.',
  use: ({ element }: Terms) => `Design for these ${element.many}`,
} as const
