import { capitalised, withMinus } from '#src/words/figure.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import { BEARING } from './bearing.ts'
import { LATHE } from './lathe.ts'
import { STAGE_NAMES, stageName } from './page.ts'
import { statedName, valueName } from './plan.ts'
import { RUN } from './run.ts'

/* Sentences of the service, as the page has them: programs know fields and choices by names that no maker reads. */

/** Names that sentences of the service give to parts of requests and answers, as the page calls them. */
const PART_NAMES: Readonly<Record<string, string | ((terms: Terms) => string)>> = {
  buildIn: 'the advice above',
  rescue: 'the list below',
  agreement: 'below',
  nextReading: 'the reading asked for',
  nextStep: 'the next cut',
  earlier: `“${LATHE.cutAnyway}”`,
  ballsOnHand: ({ element }) => `${element.many} on hand`,
  measured: ({ element }) => `the measured ${element.many}`,
  trials: 'random trials',
  errors: 'the reasons below',
  assumed: 'the usual values',
  climate: `“${STAGE_NAMES.place}”`,
  design: 'bearing',
  chosen: 'the list of balls',
  groove: 'groove',
  load: 'a load',
  ballDiameter: ({ element }) => `the diameter of each ${element.one}`,
  ballLotMean: (terms) => `“${RUN.lots(terms)}”`,
  outerGrooveBottomRadius: (terms) => `“${RUN.cuts(terms)}”`,
  innerGrooveBottomRadius: (terms) => `“${RUN.cuts(terms)}”`,
  grooveCircleRadius: (terms) => `“${RUN.cuts(terms)}”`,
  grooveDepth: (terms) => `“${RUN.cuts(terms)}”`,
  balls: ({ element }) => element.many,
  'best-bearing': '“best bearing”',
  '/v1/ball-selection': (terms) => `“${stageName('balls', terms)}”`,
  '/v1/seasonal-fit': `“${STAGE_NAMES.place}”`,
  '/v1/materials': `“${STAGE_NAMES.place}”`,
  '/v1/design': `“${STAGE_NAMES.bearing}”`,
}

/** A link has texts alone. Where the service takes a list, or several names, the link has one text for all of it. */
const NOT_OF_LINKS = /^must be an? (list|object), written /
const AT = `at “${STAGE_NAMES.bearing}”, under “${BEARING.besides}”.`
const CANNOT_CARRY = `a link cannot carry this. Remove it ${AT}`
const STATED_AT = `You find it ${AT}`

/** A fault of the service in words: where it is no sentence of its own, it is about the field at a place of the request. */
export function faultOnThePage(message: string, path: string, terms: Terms = TERMS.radial): string {
  const at = path
    .slice(1)
    .replaceAll('/', '.')
    .replace(/^design\./, '')
  if (NOT_OF_LINKS.test(message)) return `${statedName(at, terms) ?? at}: ${CANNOT_CARRY}`
  // The label takes the place of the name with which such a fault begins.
  const fault = message.replace(/^"\w+" (?=is missing)/, '')
  const told = onThePage(fault, terms, at)
  if (!/^[a-z"]/.test(fault) || at === '') return told
  const label = statedName(at, terms) ?? at
  const [, why, orElse] = NOT_OF_IT.exec(told) ?? []
  if (why === undefined) return `${label}: ${told}`
  // How something is held has a form of its own; of all else, what a form has always applies.
  const where = /^making\.(?!mounting\.\w+(\.hold)?$)/.test(at) ? ` ${STATED_AT}` : ''
  return `Remove “${label}”${orElse}: it does not apply ${why}.${where}`
}

/** Of a field that has no place in this bearing: what to do comes first. */
const NOT_OF_IT = /^does not apply (.+?): remove it(.*)$/

/**
 * A sentence of the service on the page: what it names as JSON does has the name that stands on the page.
 *
 * @param at the place of the request that it is about, where it is about one: a name may be that of a field beside it
 */
export const onThePage = (sentence: string, terms: Terms = TERMS.radial, at = ''): string =>
  withMinus(sentence)
    .replaceAll(/(^|[.] )?`([\w./-]+)`/g, (_, start: string | undefined, name: string) => {
      const told = called(name, terms, at) ?? name
      return start === undefined ? told : `${start}${capitalised(told)}`
    })
    .replaceAll(/"([\w-]+)"/g, (quoted, name: string) => {
      const value = valueName(name)
      return value === undefined ? (labelOf(name, terms, at) ?? quoted) : `“${value}”`
    })

function called(name: string, terms: Terms, at: string): string | undefined {
  const part = Object.hasOwn(PART_NAMES, name) ? PART_NAMES[name] : undefined
  const told = typeof part === 'function' ? part(terms) : part
  return labelOf(name, terms, at) ?? told ?? valueName(name)
}

/** The label of a field by its whole name, or by its last part beside or below a place. */
function labelOf(name: string, terms: Terms, at: string): string | undefined {
  const beside = at.replace(/\.?\w+$/, '')
  const label = [name.replace(/^design\./, ''), `${at}.${name}`, `${beside}.${name}`]
    .map((each) => statedName(each, terms))
    .find((each) => each !== undefined)
  return label === undefined ? undefined : `“${label}”`
}
