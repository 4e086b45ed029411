import type { qrCode } from '#src/drawings/qr-code.ts'
import type { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import type { bestPairs, searchFor } from '#src/kiosk/job/search.ts'
import type { textOfSuggestion } from '#src/kiosk/job/suggestion-text.ts'
import type { inOtherUnits } from '#src/kiosk/job/units.ts'
import type { BandPicture } from '#src/kiosk/pictures/band.tsx'
import type { LotPicture } from '#src/kiosk/pictures/lot.tsx'
import type { ReadingPicture } from '#src/kiosk/pictures/reading.tsx'
import type { SpreadPicture } from '#src/kiosk/pictures/spread.tsx'
import type { YearPicture } from '#src/kiosk/pictures/year.tsx'
import type { sandingCaution } from '#src/words/caution.ts'
import type { unbroken } from '#src/words/figure.ts'
import type { airQuestion } from '#src/words/kiosk/air.ts'
import type { BALLS } from '#src/words/kiosk/balls.ts'
import type { CARE } from '#src/words/kiosk/care.ts'
import type { CARRIED } from '#src/words/kiosk/carried.ts'
import type { FIND } from '#src/words/kiosk/find.ts'
import type { cutLine, cutToSize, gapNow, kindName, outerFirst, playNow, readingLine } from '#src/words/kiosk/lathe.ts'
import type { lostLines } from '#src/words/kiosk/link.ts'
import type { faultOnThePage, onThePage } from '#src/words/kiosk/of-service.ts'
import type { NOT_OFFLINE } from '#src/words/kiosk/offline.ts'
import type {
  changedKind,
  decidedByYear,
  holdChoices,
  idleLine,
  notChosen,
  statedLine,
  WOOD_CHOICES,
} from '#src/words/kiosk/plan.ts'
import type { RUN } from '#src/words/kiosk/run.ts'
import type { SHEETS } from '#src/words/kiosk/sheets.ts'
import type { suggestionWords } from '#src/words/kiosk/suggestion.ts'
import type { fetchDrawing } from './fetch-drawing.ts'
import type { firstCut } from './first-cut.ts'
import type { goodGapOf } from './good-gap.ts'
import type { snippetsOf } from './snippets.ts'

/** What no first drawing needs. */
export interface Later {
  readonly qrCode: typeof qrCode
  readonly asArrangement: typeof asArrangement
  readonly inOtherUnits: typeof inOtherUnits
  readonly fetchDrawing: typeof fetchDrawing
  readonly firstCut: typeof firstCut
  readonly gapNow: typeof gapNow
  readonly goodGapOf: typeof goodGapOf
  readonly playNow: typeof playNow
  readonly unbroken: typeof unbroken
  readonly kindName: typeof kindName
  readonly readingLine: typeof readingLine
  readonly cutLine: typeof cutLine
  readonly cutToSize: typeof cutToSize
  readonly outerFirst: typeof outerFirst
  readonly sandingCaution: typeof sandingCaution
  readonly changedKind: typeof changedKind
  readonly decidedByYear: typeof decidedByYear
  readonly notChosen: typeof notChosen
  readonly holdChoices: typeof holdChoices
  readonly faultOnThePage: typeof faultOnThePage
  readonly onThePage: typeof onThePage
  readonly statedLine: typeof statedLine
  readonly idleLine: typeof idleLine
  readonly lostLines: typeof lostLines
  readonly suggestionWords: typeof suggestionWords
  readonly textOfSuggestion: typeof textOfSuggestion
  readonly woodChoices: typeof WOOD_CHOICES
  /** Pictures without a state of their own. */
  readonly BandPicture: typeof BandPicture
  readonly LotPicture: typeof LotPicture
  readonly ReadingPicture: typeof ReadingPicture
  readonly SpreadPicture: typeof SpreadPicture
  readonly YearPicture: typeof YearPicture
  readonly balls: typeof BALLS
  readonly airQuestion: typeof airQuestion
  readonly run: typeof RUN
  readonly sheets: typeof SHEETS
  readonly care: typeof CARE
  readonly carried: typeof CARRIED
  readonly notOffline: typeof NOT_OFFLINE
  readonly find: typeof FIND
  readonly searchFor: typeof searchFor
  readonly bestPairs: typeof bestPairs
  readonly snippetsOf: typeof snippetsOf
}

/** The page's second script brings it, before a hand can be at any field; undefined until then. */
export const later = (): Later | undefined => (globalThis as { readonly later?: Later }).later
