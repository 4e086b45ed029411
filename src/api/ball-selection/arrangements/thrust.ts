import { Type } from 'typebox'
import { itemAt } from '#shared/numbers/item-at.ts'
import { mm } from '#shared/units/length.ts'
import { placeInLot, selectionAnswer } from '#src/api/ball-selection/parts.ts'
import { shownLength } from '#src/api/length.ts'
import { shownShare } from '#src/api/number.ts'
import { named, ref, text } from '#src/api/schema.ts'
import { explainRest } from '#src/words/ball-selection.ts'

const PlateRest = named(
  'PlateRest',
  'Position of the upper plate on the chosen balls, evenly spaced in this order, before anything gives.',
  {
    carriers: Type.Array(
      Type.Object({ index: placeInLot, share: shownShare('Share that it carries of a load over the middle.') }),
      { description: 'The three that carry at first: the wood gives under a load, and more of them do.' },
    ),
    plateGap: shownLength('Space between the faces of the plates, at the middle.'),
    rise: shownLength('Difference in height from one side of the upper plate to the other.'),
    mostClearance: shownLength('The most that is left between the upper plate and a ball.'),
    message: text('Summary in words.'),
  },
)

const answer = selectionAnswer({
  names: ['thrust'],
  prefix: 'Thrust',
  description: 'The balls to use in a turntable, the gap that they leave, and how level its upper plate lies.',
  aims: {
    advised:
      'the least rise of the upper plate, while each of its three carriers has a tenth of a load over the middle.',
    'least-rise': 'the least rise, whatever the carriers have.',
    'most-rise': 'the order to avoid.',
  },
  figures: {
    rise: shownLength(
      'Difference in height from one side of the upper plate to the other: it goes round with the balls.',
    ),
    leastShare: shownShare('Least share of a load over the middle that one of the three carriers has.'),
  },
  figuresOf: ({ runOut: rise, margin: leastShare }) => ({ rise, leastShare }),
  more: { plateRest: ref(PlateRest) },
  moreOf: ({ atRest, chosen: { balls, runOut }, input }) => {
    if (atRest === undefined) throw new RangeError('a selection for plates must have an upper plate')
    return {
      plateRest: {
        carriers: atRest.carriers.map((place, which) => ({
          index: itemAt(balls, place).index,
          share: itemAt(atRest.shares, which),
        })),
        plateGap: mm(atRest.height),
        rise: runOut,
        mostClearance: mm(atRest.mostClearance),
        message: explainRest(atRest, runOut, input.design.units),
      },
    }
  },
})
export const BETWEEN_PLATES = { ...answer, schemas: [PlateRest, ...answer.schemas] }
