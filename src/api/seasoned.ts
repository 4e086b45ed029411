import type { FastifyInstance, FastifyRequest } from 'fastify'
import { namesIn, valueAt, withValue } from '#shared/bearing/field.ts'
import type { Seasoned } from '#shared/bearing/making-input.ts'
import { PART_NAMES, type WoodPart } from '#shared/bearing/wood-parts.ts'
import type { SeasonRefusal } from '#shared/movement/refusal.ts'
import type { Woods } from '#shared/movement/year.ts'
import { SEASON_LENGTHS } from '#shared/questions/season/advice.ts'
import type { SeasonDefault, SeasonDefaults } from '#shared/questions/season/season-defaults.ts'
import type { Units } from '#shared/units/length.ts'
import { seasonRefusalSentence } from '#src/words/season-refusal.ts'
import { describeAdvice, jointsOpen } from '#src/words/seasonal-fit.ts'
import { type Terms, termsOf } from '#src/words/terms.ts'
import { type DesignRequest, toDesignInput } from './design-input.ts'
import { show } from './length.ts'
import { yearIn } from './making-input.ts'
import { refusedQuestion } from './refusal.ts'

/* Fields that a design leaves open follow from the season if it states woods and a climate: on every path alike. */

/** A design with its defaults from the season put in, and what the season says of it. */
export type SeasonedRequest = DesignRequest & { readonly seasoned?: Seasoned }

/**
 * A design as it is once the season has filled in what was left open. Worked out in a worker thread.
 *
 * @param at where the design stands in the request
 */
export async function seasonedDesign(
  app: FastifyInstance,
  design: DesignRequest,
  request: FastifyRequest,
  at = '',
): Promise<SeasonedRequest> {
  if (design.making?.climate === undefined) return design
  const input = toDesignInput(design, at)
  const year = yearIn(input.making, input)
  if (year === undefined) return design
  const question = { ...year, design: input, openParts: openPartsOf(design) }
  const season = await app.runTask('seasonDefaults', question, request)
  if (season.ok) return seasoned(design, season.value, year.woods)
  const { ofDesign, ofQuestion } = season.error
  const scale = design.making?.climate?.temperatureScale ?? 'celsius'
  const placed = ofQuestion.map((refusal) => ({ ...refusal, path: `${at}/making${refusal.path}` }))
  const explain = (refusal: SeasonRefusal, _units: Units, terms: Terms) => seasonRefusalSentence(refusal, scale, terms)
  throw refusedQuestion({ ofDesign, ofQuestion: placed }, design, explain, at)
}

/** The same of a design inside a request, where it leaves open what the season may choose. */
export async function seasonedWithin<Body extends { readonly design: DesignRequest }>(
  app: FastifyInstance,
  body: Body,
  request: FastifyRequest,
): Promise<Body> {
  const { design } = body
  const isOpen =
    openPartsOf(design).length > 0 || SEASON_LENGTHS.some((path) => valueAt(design, namesIn(path)) === undefined)
  return isOpen ? { ...body, design: await seasonedDesign(app, design, request, '/design') } : body
}

/** The parts of a stated wood of which nobody stated how they are cut. */
const openPartsOf = ({ making }: DesignRequest): readonly WoodPart[] =>
  PART_NAMES.filter((part) => {
    const wood = making?.woods?.[part]
    return wood?.species !== undefined && wood.construction === undefined && wood.segments === undefined
  })

function seasoned(design: DesignRequest, season: SeasonDefaults, woods: Woods): SeasonedRequest {
  const { units } = design
  const { defaults, chances, better, bearing, openJoints } = season
  const filled = defaults.reduce<DesignRequest>(
    (whole, change) => withValue(whole, namesIn(pathOf(change)), valueIn(change, units)),
    design,
  )
  const { goesTogether, runsAllYear, knocks } = chances
  const advice = better && describeAdvice({ advice: better, bearing, chances, input: { woods } }, termsOf(design))
  return {
    ...filled,
    seasoned: {
      paths: defaults.map(pathOf),
      goesTogether,
      runsAllYear,
      knocks,
      ...(advice === undefined ? {} : { advice }),
      openJoints: openJoints.map((worst) => ({ part: worst.part, message: jointsOpen(worst) })),
    },
  }
}

const pathOf = ({ kind, path }: SeasonDefault): string => (kind === 'wood' ? `/making${path}/construction` : path)

const valueIn = (change: SeasonDefault, units: Units) =>
  change.kind === 'wood' ? change.to.construction : show(change.to, units)
