import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import { inList } from '#src/words/list.ts'
import { type Terms, WOODEN_PARTS } from '#src/words/terms.ts'
import { STAGE_NAMES } from './page.ts'

/** What a maker does about cutting errors where a cage leaves no gap to check, because no chance counts them. */
export const BY_THE_PLAY = 'Cut the inner groove last, and measure the play as you cut, as the job sheet says.'

/** What the chances of a year count on, beside them: how the wood is cut, and how well the bearing is. */
export const countedOn = ({ element, raceway }: Terms, quarterSawn: readonly WoodPart[], hasGap: boolean) => [
  ...(quarterSawn.length === 0
    ? []
    : [
        `This counts on quarter-sawn boards for ${inList(quarterSawn.map((part) => `the ${WOODEN_PARTS[part]}`))}: at the end of such a board the growth rings stand upright. Most boards are flat-sawn and move more. Choose here how yours are cut, before you make anything of them.`,
      ]),
  hasGap
    ? `This holds if the ${raceway.many} are cut exactly to size and the ${element.many} have the stated mean. With the usual errors fewer such bearings run: see “${STAGE_NAMES.run}”.`
    : `Cutting errors are not counted: this holds if the play is as designed and the ${element.many} have the stated mean. ${BY_THE_PLAY}`,
]
