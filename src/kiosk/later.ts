import { qrCode } from '#src/drawings/qr-code.ts'
import { readFindQuery } from '#src/kiosk/job/find-query.ts'
import { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { bestPairs, searchFor } from '#src/kiosk/job/search.ts'
import { textOfSuggestion } from '#src/kiosk/job/suggestion-text.ts'
import { inOtherUnits } from '#src/kiosk/job/units.ts'
import { BandPicture } from '#src/kiosk/pictures/band.tsx'
import { ReadingPicture } from '#src/kiosk/pictures/reading.tsx'
import { SpreadPicture } from '#src/kiosk/pictures/spread.tsx'
import { YearPicture } from '#src/kiosk/pictures/year.tsx'
import { Besides, ToPlug } from '#src/kiosk/stages/besides.tsx'
import { GrooveHistory } from '#src/kiosk/stages/groove-history.tsx'
import { LotChoice } from '#src/kiosk/stages/lot-choice.tsx'
import { cuttingCaution } from '#src/words/caution.ts'
import { cutFigures } from '#src/words/figure.ts'
import { airQuestion } from '#src/words/kiosk/air.ts'
import { BALLS } from '#src/words/kiosk/balls.ts'
import { CARE } from '#src/words/kiosk/care.ts'
import { CARRIED } from '#src/words/kiosk/carried.ts'
import { FIND } from '#src/words/kiosk/find.ts'
import {
  backOnLathe,
  cutLarge,
  doubtWords,
  gapNow,
  headlines,
  kindName,
  playNow,
  TO_INNER,
} from '#src/words/kiosk/lathe.ts'
import { lostLines } from '#src/words/kiosk/link.ts'
import { faultOnThePage, onThePage } from '#src/words/kiosk/of-service.ts'
import { NOT_OFFLINE } from '#src/words/kiosk/offline.ts'
import {
  changedKind,
  decidedByYear,
  holdChoices,
  idleLine,
  notChosen,
  statedLine,
  WOOD_CHOICES,
} from '#src/words/kiosk/plan.ts'
import { RUN } from '#src/words/kiosk/run.ts'
import { SHEETS } from '#src/words/kiosk/sheets.ts'
import { suggestionWords } from '#src/words/kiosk/suggestion.ts'
import { countedOn } from '#src/words/kiosk/year.ts'
import { unbroken } from '#src/words/unbroken.ts'
import { beforeInner } from './before-inner.ts'
import { checksOf } from './checks-of.ts'
import { fetchDrawing } from './fetch-drawing.ts'
import { firstCut } from './first-cut.ts'
import { goodGapOf } from './good-gap.ts'
import { facesAdvice } from './mating-faces.ts'
import { snippetsOf } from './snippets.ts'

/* The second script of the page, in the same document behind the first: the first drawing does not wait for it. */

/** What no first drawing needs. */
const LATER = {
  qrCode,
  asArrangement,
  inOtherUnits,
  fetchDrawing,
  checksOf,
  firstCut,
  gapNow,
  goodGapOf,
  headlines,
  kindName,
  playNow,
  cutLarge,
  backOnLathe,
  cutFigures,
  doubtWords,
  beforeInner,
  toInner: TO_INNER,
  facesAdvice,
  cuttingCaution,
  snippetsOf,
  countedOn,
  changedKind,
  decidedByYear,
  holdChoices,
  notChosen,
  faultOnThePage,
  onThePage,
  statedLine,
  idleLine,
  lostLines,
  suggestionWords,
  textOfSuggestion,
  woodChoices: WOOD_CHOICES,
  // What is drawn without a state of its own.
  Besides,
  GrooveHistory,
  ToPlug,
  BandPicture,
  LotChoice,
  ReadingPicture,
  SpreadPicture,
  YearPicture,
  balls: BALLS,
  airQuestion,
  run: RUN,
  sheets: SHEETS,
  care: CARE,
  carried: CARRIED,
  notOffline: NOT_OFFLINE,
  find: FIND,
  readFindQuery,
  searchFor,
  bestPairs,
  unbroken,
} as const

export type Later = typeof LATER

Object.assign(globalThis, { later: LATER })
