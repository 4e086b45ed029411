import { type ArrangementName, type Design, woodPartsOf } from '#shared/bearing/arrangements.ts'
import type { Openings } from '#shared/bearing/assumed-sizes.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { BALL_MATERIALS, type BallMaterial } from '#shared/bearing/fields.ts'
import type { Suggestion } from '#shared/bearing/suggestion.ts'
import type { Severity } from '#shared/bearing/warning.ts'
import { constructionOf } from '#shared/bearing/whole-year.ts'
import type { Units } from '#shared/units/length.ts'
import {
  designHere,
  hasPlace,
  MONTHS,
  type MonthTexts,
  monthsIn,
  type ReadBearing,
  rangesOf,
  readBearing,
  statedBesides,
  textOfMonths,
} from '#src/kiosk/job/bearing.ts'
import { type BearingTexts, WOODS } from '#src/kiosk/job/job.ts'
import { BEARING_CAUTIONS, cautionCodes, inTerms } from '#src/words/bearing-caution.ts'
import { bearingFacts } from '#src/words/bearing-facts.ts'
import { bearingName, fieldName } from '#src/words/kiosk/bearing.ts'
import type { STAGE_NAMES } from '#src/words/kiosk/page.ts'
import { refusalSentence } from '#src/words/refusal.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import { warningSentence } from '#src/words/warning.ts'
import { type Json, listOf, part } from './json.ts'
import { useReply } from './reply.ts'

/** A bearing as every stage uses it: all of it follows from the texts of the job that is on the page now. */
export interface DerivedBearing {
  readonly read: ReadBearing
  readonly units: Units
  readonly arrangement: ArrangementName
  readonly terms: Terms
  readonly design?: Design
  /** Where the service filled in the bearing: what was open before. */
  readonly openings?: Openings
  /** What stands for each thing that is not chosen, by its name. */
  readonly countedAs: BearingTexts
  /** The bearing for questions to the service. */
  readonly request?: object
  /** The same for the query of a sheet. */
  readonly sheetRequest?: object
  /** Its name in one line; empty where there is none. */
  readonly name: string
  readonly refusals: readonly string[]
  /** The steps that have the fields in which to correct it. */
  readonly correctAt: readonly (keyof typeof STAGE_NAMES)[]
  readonly warnings: readonly Notice[]
  readonly cautions: readonly string[]
  /** Sizes that a year decides are still to come. */
  readonly isWaiting: boolean
  readonly isUnreached: boolean
}

export interface Notice {
  readonly severity: Severity
  readonly message: string
  readonly suggestion?: Suggestion
}

/**
 * The bearing of some texts. The page works it out by itself; where wood and place decide its play, or a link
 * states more than the page knows, what comes of it is asked of the service, and until then there are no sizes.
 */
export function useDerivedBearing(bearing: BearingTexts): DerivedBearing {
  const read = readBearing(bearing)
  const isForService = hasPlace(bearing) || statedBesides(bearing, read.arrangement).length > 0
  const reply = useReply('/v1/design', isForService ? read.request : undefined)
  if (reply.kind === 'waiting' || reply.kind === 'unreached')
    return {
      ...derive(read, bearing, undefined),
      isWaiting: reply.kind === 'waiting',
      isUnreached: reply.kind !== 'waiting',
    }
  if (reply.kind === 'problem')
    return { ...derive({ ...read, faults: reply.faults }, bearing, undefined), refusals: reply.messages }
  const filled = reply.kind === 'answer' ? readBearing(textsOf(part(reply.body['input']))) : read
  const made = derive(read, bearing, filled)
  if (reply.kind !== 'answer') return made
  const { assumed } = reply.body
  return { ...made, openings: openingsIn(assumed), countedAs: countedIn(assumed) }
}

/** What an answer counts with for each thing that is not chosen, by its name. */
export const countedIn = (assumed: unknown): BearingTexts =>
  Object.fromEntries(
    listOf(assumed)
      .map(part)
      .map(({ path, value }) => [String(path).slice(1).replaceAll('/', '.'), String(value)]),
  )

/** The same of the woods where nothing was asked of the service: sheets count with it. */
const usuallyCounted = (bearing: BearingTexts, arrangement: ArrangementName): BearingTexts =>
  Object.fromEntries(
    woodPartsOf({ arrangement })
      .filter((each) => bearing[`${WOODS}${each}.species`] !== undefined)
      .map((each) => [`${WOODS}${each}.construction`, constructionOf({})]),
  )

/** Only what the season chose of a bearing was derived for this answer; all else is a default. */
function openingsIn(assumed: unknown): Openings {
  const rows = listOf(assumed).map(part)
  const pathsOf = (isChosen: boolean) =>
    rows.filter(({ standing }) => (standing === 'derived here') === isChosen).map(({ path }) => String(path))
  return { assumed: pathsOf(false), input: { seasoned: { paths: pathsOf(true) } } }
}

/** @param filled the bearing with what the service made of it; undefined where that is not known */
function derive(read: ReadBearing, bearing: BearingTexts, filled: ReadBearing | undefined): DerivedBearing {
  const { units, arrangement } = read
  const terms = TERMS[arrangement]
  const made = filled && designHere(filled)
  const design = made?.ok ? made.value : undefined
  return {
    read,
    units,
    arrangement,
    terms,
    countedAs: usuallyCounted(bearing, arrangement),
    ...(design && { design }),
    ...(design &&
      read.request && { request: read.request, sheetRequest: sheetRequestOf(read.request, bearing, filled) }),
    name: design === undefined ? '' : nameOf(design, terms, bearing['making.name']),
    refusals:
      made === undefined || made.ok
        ? [...read.faults].map(([at, fault]) => `${fieldName(at, terms) ?? at}: ${fault}`)
        : made.error.map((each) => refusalSentence(each, units, terms)),
    correctAt: stepsOf([...read.faults.keys()], statedBesides(bearing, arrangement)),
    warnings: (design?.warnings ?? []).map(({ severity, facts, suggestion }) => ({
      severity,
      message: warningSentence(facts, units, terms),
      ...(suggestion && { suggestion }),
    })),
    // Of a bearing that cannot be read yet, too: what harms is the lathe and the dust.
    cautions: cautionCodes(materialOf(bearing), read).map((code) => inTerms(BEARING_CAUTIONS[code], terms)),
    isWaiting: false,
    isUnreached: false,
  }
}

/** What only a link can state is removed at the first step, and what is no fault of one field is corrected there. */
function stepsOf(faulty: readonly string[], besides: readonly string[]): DerivedBearing['correctAt'] {
  const ofPlace = faulty.filter(
    (name) => name.startsWith('making.') && !besides.some((each) => `${each}.`.startsWith(`${name}.`)),
  )
  if (ofPlace.length === 0) return ['bearing']
  return ofPlace.length === faulty.length ? ['place'] : ['bearing', 'place']
}

const materialOf = ({ 'balls.material': material }: BearingTexts): BallMaterial =>
  BALL_MATERIALS.find((each) => each === material) ?? BALL_MATERIAL

/** A query carries no list of months: their ends take their place, beside the sizes that all of them decided. */
function sheetRequestOf(request: object, bearing: BearingTexts, filled: ReadBearing | undefined): object {
  if (!hasPlace(bearing) || bearing[MONTHS] === undefined) return request
  const { making: _, ...sizes } = part(filled?.request)
  const others = Object.entries(bearing).filter(([name]) => name.startsWith('making.') && name !== MONTHS)
  const texts = { ...textsOf(sizes), ...Object.fromEntries(others), ...rangesOf(monthsIn(bearing[MONTHS])) }
  return readBearing(texts).request ?? request
}

function nameOf(design: Design, terms: Terms, name: string | undefined): string {
  const { count, material, ballDiameter, bore, units } = bearingFacts(design)
  return bearingName({ count, material, ballDiameter, bore, units, terms, name })
}

/** An input of the service as the texts of a job. */
export function textsOf(input: Json, path = ''): BearingTexts {
  const texts: Record<string, string> = {}
  for (const [name, value] of Object.entries(input)) {
    const at = path === '' ? name : `${path}.${name}`
    if (at.endsWith(MONTHS)) texts[at] = textOfMonths(listOf(value).map(monthOf))
    else if (Array.isArray(value)) texts[at] = value.join(',')
    else if (typeof value === 'object' && value !== null) Object.assign(texts, textsOf(part(value), at))
    else texts[at] = String(value)
  }
  return texts
}

const monthOf = (month: unknown): MonthTexts => ({
  humidity: String(part(month)['relativeHumidity']),
  temperature: String(part(month)['temperature']),
})
