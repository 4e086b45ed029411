import { capitalised } from '#src/words/figure.ts'
import type { Terms } from '#src/words/terms.ts'

/** A size that is another one in the bearing for other balls. */
export interface ChangedSize {
  readonly name: string
  readonly from: string
  readonly to: string
}

/** Words of the step with the balls on hand. */
export const BALLS = {
  measured: ({ element }: Terms) => `Diameters of the ${element.many} that you have, one a line`,
  hint: ({ element }: Terms) =>
    `Measure each ${element.one} across in two or three places and enter the mean: few are truly round. Mark it with its number. A decimal may have a point or a comma.`,
  tooFew: (count: number, needed: number, { element }: Terms) =>
    `${count} of ${needed} ${element.many} measured: measure at least ${needed}.`,
  apart:
    'The cage keeps the balls apart, so their order closes no gap: use those that are most alike. Enter measured ones at “Bearing”, under “More choices”.',
  unread: (number: number, text: string, { element }: Terms) =>
    `${capitalised(element.one)} ${number} of your list, “${text}”, is no length.`,
  ring: ({ element }: Terms) => `The chosen ${element.many} in their order round the ring`,
  numbered: 'Their differences are drawn 20 times as large. Each has its number in your list.',
  /** What the button changes, before it is pressed. */
  changes: (sizes: readonly ChangedSize[], { element, part }: Terms) =>
    [
      `The button makes the design for the mean size of these ${element.many}. The gap and the play aimed at, and how the wood is cut, stay as they are.`,
      ...(sizes.length === 0
        ? []
        : [
            `Press it only before you cut the ${part.many}, for these sizes change: ${sizes.map(({ name, from, to }) => `${name} from ${from} to ${to}`).join('; ')}.`,
          ]),
    ].join(' '),
  use: ({ element }: Terms) => `Design for these ${element.many}`,
} as const
