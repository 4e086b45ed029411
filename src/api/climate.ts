import { type Static, type TOptional, type TUnsafe, Type } from 'typebox'
import { type ArrangementName, woodPartsOf } from '#shared/bearing/arrangements.ts'
import { BALL_MATERIAL } from '#shared/bearing/defaults.ts'
import { type BallMaterial, plain, trade } from '#shared/bearing/fields.ts'
import type { Refused } from '#shared/bearing/refusal.ts'
import { constructionOf, USUAL_TEMPERATURE } from '#shared/bearing/whole-year.ts'
import { PART_NAMES, WOOD_PARTS, type WoodPart } from '#shared/bearing/wood-parts.ts'
import type { SpeciesId } from '#shared/data/species.ts'
import type {
  Climate as CoreClimate,
  RingWood as CoreRingWood,
  Today as CoreToday,
  Woods as CoreWoods,
  Range,
  Year,
} from '#shared/movement/year.ts'
import { guessedWoods } from '#shared/questions/season/season-sources.ts'
import { fail, ok, type Result } from '#shared/result.ts'
import { inScale, SCALES, type Scale, toCelsius } from '#shared/units/temperature.ts'
import { CONSTRUCTIONS, type Construction, isSegmented, USUAL_SEGMENTS } from '#shared/wood/construction.ts'
import { choiceOf, described, namedRequest, requestObject } from '#src/api/schema.ts'
import type { Warning } from '#src/api/warning.ts'
import type { Fault } from '#src/http/problem.ts'
import { refTo } from '#src/http/schema.ts'
import {
  CLIMATE_EMPTY,
  memorySentence,
  NO_WOODEN_BALLS,
  PLY_WITH_SPECIES,
  partMissing,
  partOfOthers,
  SEGMENTS_OF_SEGMENTED,
  SPECIES_MISSING,
  TODAY_EMPTY,
} from '#src/words/season-refusal.ts'
import { termsOf } from '#src/words/terms.ts'
import type { Defaults } from './assumption.ts'
import { readSpecies, speciesName } from './species.ts'

const MOST_MONTHS = 24
const LONGEST_NAME = 30

/** Wide enough for either scale. The core takes less, and refuses the rest. */
const degrees = (description: string) => Type.Number({ minimum: -60, maximum: 200, description })
const percentage = (description: string) => Type.Number({ minimum: 0, maximum: 100, description })

/** Fewer are no ring, more are a round one. */
const SEGMENT_COUNT = { minimum: 3, maximum: 96 } as const

export const RingWood = namedRequest('RingWood', 'The wood and construction of a part.', {
  construction: Type.Optional(
    choiceOf<Construction>(
      'How the part is cut or glued up. Default: flat-sawn, or segmented where `segments` is given. `segmented`: glued up of straight pieces from flat-sawn strips, with the grain along each piece.',
      CONSTRUCTIONS,
    ),
  ),
  segments: Type.Optional(
    requestObject(`The pieces of a segmented part. Default: ${USUAL_SEGMENTS} in a layer.`, {
      count: Type.Integer({ ...SEGMENT_COUNT, description: 'Pieces in one layer.' }),
    }),
  ),
  species: Type.Optional(speciesName('The wood of the part. Required, except for cross-laminated ply.')),
})

export const BallWood = namedRequest('BallWood', 'The wood of wooden balls.', {
  species: speciesName('The wood of the balls.'),
})

/** The wood of each part: one property a row. Which of them an arrangement has is looked at after the schema. */
const parts = Object.fromEntries(
  PART_NAMES.map((part) => [part, Type.Optional(described<typeof RingWood>('RingWood', WOOD_PARTS[part]))]),
) as Record<WoodPart, TOptional<TUnsafe<Static<typeof RingWood>>>>

export const Woods = namedRequest('Woods', 'The wood of each part that the arrangement has.', {
  ...parts,
  balls: Type.Optional(refTo<typeof BallWood>('BallWood')),
})
export type Woods = Static<typeof Woods>

const range = (limit: ReturnType<typeof degrees>, description: string) =>
  Type.Object({ min: limit, max: limit }, { description, additionalProperties: false })

export const Today = Type.Object(
  {
    temperature: Type.Optional(degrees('Temperature of the air. Default: 20 °C.')),
    relativeHumidity: Type.Optional(percentage('Relative humidity of the air, in %.')),
    moistureContent: Type.Optional(
      percentage('Moisture content of the wood, in % of its dry mass. Use it instead of the air.'),
    ),
  },
  {
    $id: 'Today',
    description:
      'The day on which the bearing is made and measured: the air of that day, or the moisture content of the wood.',
    additionalProperties: false,
    'x-exclusive': [
      ['relativeHumidity', 'moistureContent'],
      ['temperature', 'moistureContent'],
    ],
  },
)

export const Month = namedRequest('Month', 'A month, or any other part of the year.', {
  name: Type.String({
    minLength: 1,
    maxLength: LONGEST_NAME,
    description: 'Returned with the answer for this month.',
  }),
  temperature: degrees('Mean temperature of the month.'),
  relativeHumidity: percentage('Mean relative humidity of the month, in %.'),
})

export const Climate = Type.Object(
  {
    temperatureScale: Type.Optional(
      choiceOf<Scale>('The scale of every temperature in the request and the answer. Default: celsius.', SCALES),
    ),
    today: refTo<typeof Today>('Today'),
    temperature: Type.Optional(
      range(degrees('Degrees.'), 'Range of the temperature over the year. Default: 20 °C all year.'),
    ),
    relativeHumidity: Type.Optional(
      range(percentage('Relative humidity in %.'), 'Range of the relative humidity over the year.'),
    ),
    moistureContent: Type.Optional(
      range(percentage('Moisture content in %.'), 'Range of the moisture content of the wood over the year.'),
    ),
    months: Type.Optional(
      Type.Array(refTo<typeof Month>('Month'), {
        minItems: 1,
        maxItems: MOST_MONTHS,
        description: 'The year as a table, month by month.',
      }),
    ),
  },
  {
    $id: 'Climate',
    description:
      'The year, stated in one of three ways: `relativeHumidity` with or without `temperature`, `moistureContent`, or `months`.',
    additionalProperties: false,
    'x-exclusive': [
      ['relativeHumidity', 'moistureContent', 'months'],
      ['temperature', 'moistureContent', 'months'],
    ],
  },
)
export type Climate = Static<typeof Climate>

/** Added once by `app.ts`, inner ones first. */
export const CLIMATE_SCHEMAS = [RingWood, BallWood, Woods, Today, Month, Climate]

const CONSTRUCTION = trade(constructionOf({}), 'most boards are flat-sawn, and they move the most')
const SEGMENTS = trade(String(USUAL_SEGMENTS), 'miters of 15 degrees, and a ring that stays nearly round')
const TEMPERATURE = trade('20 degrees C', 'the temperature of a heated room')

/** Why a year is taken as it is where the caller left something out; where `woods` and `climate` stand in a request. */
export const yearDefaults = (at = ''): Defaults => ({
  ...Object.fromEntries(
    PART_NAMES.flatMap((part) => [
      [`${at}/woods/${part}/construction`, CONSTRUCTION],
      [`${at}/woods/${part}/segments/count`, SEGMENTS],
    ]),
  ),
  [`${at}/climate/temperatureScale`]: plain('celsius', 'the scale of the equations'),
  [`${at}/climate/today/temperature`]: TEMPERATURE,
  [`${at}/climate/temperature/min`]: TEMPERATURE,
  [`${at}/climate/temperature/max`]: TEMPERATURE,
})

/** The woods as core input, or a fault for every part that is missing or too many and every unknown name. */
function toWoods(woods: Woods, design: Arranged): Result<CoreWoods, readonly Fault[]> {
  const needed = woodPartsOf(design)
  const read = PART_NAMES.flatMap((part): [WoodPart | 'balls', CoreRingWood | SpeciesId | Fault][] => {
    const wood = woods[part]
    const path = `/woods/${part}`
    if (wood === undefined) return needed.includes(part) ? [[part, { path: '/woods', message: partMissing(part) }]] : []
    if (!needed.includes(part)) return [[part, { path, message: partOfOthers(termsOf(design)) }]]
    return [[part, toRingWood(wood, path)]]
  })
  if (woods.balls !== undefined) read.push(['balls', readSpecies(woods.balls.species, '/woods/balls/species')])
  const faults = read.map(([, one]) => one).filter(isFault)
  return faults.length > 0 ? fail(faults) : ok(Object.fromEntries(read) as CoreWoods)
}

/** The part of a design that tells which woods it has; without it, as in a request without `arrangement`. */
export type Arranged = {
  readonly arrangement?: ArrangementName
  readonly balls?: { readonly material?: BallMaterial }
}

const isFault = (read: unknown): read is Fault => typeof read === 'object' && read !== null && 'message' in read

function toRingWood(wood: Static<typeof RingWood>, path: string): CoreRingWood | Fault {
  const fault = woodFault(wood, path)
  if (fault !== undefined) return fault
  const { species, segments } = wood
  const construction = constructionOf(wood)
  if (construction === 'cross-laminated-ply') return { construction }
  if (species === undefined) return { path, message: SPECIES_MISSING }
  return { construction, species: species as SpeciesId, ...(segments && { segments }) }
}

/** The fault of a part's wood, whether or not every field is stated. */
function woodFault(wood: Static<typeof RingWood>, path: string): Fault | undefined {
  const { species, segments } = wood
  const construction = constructionOf(wood)
  if (segments !== undefined && !isSegmented({ construction }))
    return { path: `${path}/segments`, message: SEGMENTS_OF_SEGMENTED }
  if (species === undefined) return undefined
  if (construction === 'cross-laminated-ply') return { path: `${path}/species`, message: PLY_WITH_SPECIES }
  const known = readSpecies(species, `${path}/species`)
  return isFault(known) ? known : undefined
}

/** Woods, year and day of making as core input, or every fault of them. */
export function toYear(
  request: { readonly woods: Woods; readonly climate: Climate },
  design: Arranged,
): Result<Year, readonly Fault[]> {
  const woods = toWoods(request.woods, design)
  const year = toClimate(request.climate)
  const stray = strayBalls(request.woods, design)
  if (!woods.ok || !year.ok || stray.length > 0) {
    return fail([...(woods.ok ? [] : woods.error), ...(year.ok ? [] : year.error), ...stray])
  }
  return ok({ woods: woods.value, ...year.value })
}

/** Faults of woods without a climate: each part may state as much as the maker knows. */
export function woodsFaults(woods: Woods, design: Arranged): readonly Fault[] {
  const known = woodPartsOf(design)
  const found = PART_NAMES.flatMap((part): Fault | readonly Fault[] => {
    const wood = woods[part]
    const path = `/woods/${part}`
    if (wood === undefined) return []
    if (!known.includes(part)) return [{ path, message: partOfOthers(termsOf(design)) }]
    return woodFault(wood, path) ?? []
  })
  const balls = woods.balls && readSpecies(woods.balls.species, '/woods/balls/species')
  return [...found, ...(isFault(balls) ? [balls] : []), ...strayBalls(woods, design)]
}

const strayBalls = ({ balls }: Woods, design: Arranged): readonly Fault[] =>
  balls === undefined || (design.balls?.material ?? BALL_MATERIAL) === 'wood'
    ? []
    : [{ path: '/woods/balls', message: NO_WOODEN_BALLS }]

/** The year and the day of making as core input, or a fault for each that is missing. */
function toClimate(
  climate: Climate,
): Result<{ readonly climate: CoreClimate; readonly today: CoreToday }, readonly Fault[]> {
  const year = toCoreClimate(climate)
  const today = toToday(climate)
  if (year === undefined || today === undefined) {
    return fail([
      ...(year === undefined ? [{ path: '/climate', message: CLIMATE_EMPTY }] : []),
      ...(today === undefined ? [{ path: '/climate/today', message: TODAY_EMPTY }] : []),
    ])
  }
  return ok({ climate: year, today })
}

function toCoreClimate({ temperatureScale: scale = 'celsius', ...climate }: Climate): CoreClimate | undefined {
  const { temperature, relativeHumidity, moistureContent, months } = climate
  if (moistureContent !== undefined) return { kind: 'moisture', moistureContent }
  if (months !== undefined) {
    const inCelsius = months.map((month) => ({ ...month, temperature: toCelsius(month.temperature, scale) }))
    return { kind: 'months', months: inCelsius }
  }
  if (relativeHumidity === undefined) return undefined
  const usual: Range = { min: USUAL_TEMPERATURE, max: USUAL_TEMPERATURE }
  const stated = temperature && { min: toCelsius(temperature.min, scale), max: toCelsius(temperature.max, scale) }
  return { kind: 'air', temperature: stated ?? usual, relativeHumidity }
}

function toToday({ temperatureScale: scale = 'celsius', today }: Climate): CoreToday | undefined {
  const { temperature, relativeHumidity, moistureContent } = today
  if (moistureContent !== undefined) return { kind: 'moisture', moistureContent }
  if (relativeHumidity === undefined) return undefined
  const celsius = temperature === undefined ? USUAL_TEMPERATURE : toCelsius(temperature, scale)
  return { kind: 'air', air: { temperature: celsius, relativeHumidity } }
}

/** Woods, and the day of making, as a caller would write them. */
export const fromRingWood = (wood: CoreRingWood): Static<typeof RingWood> => ({ ...wood })
export const fromToday = (today: CoreToday, scale: Scale): Static<typeof Today> =>
  today.kind === 'moisture'
    ? { moistureContent: today.moistureContent }
    : { temperature: inScale(today.air.temperature, scale), relativeHumidity: today.air.relativeHumidity }

/**
 * A note on each wood whose movement is quoted from memory.
 *
 * @param inRequest the path in the request of a path in the year
 */
export const woodNotes = (woods: CoreWoods, inRequest: (path: string) => string): Static<typeof Warning>[] =>
  guessedWoods(woods).map(([species, path]) => ({
    code: 'movement-from-memory',
    severity: 'note',
    message: memorySentence(species),
    path: inRequest(path),
  }))

/** The path of woods and climate in a request that has a design. */
export const inRequest = (path: string): string => (/^\/(woods|climate)\b/.test(path) ? `/design/making${path}` : path)

/** The faults of a year, by their paths in the request. */
export const placed = <R extends { readonly path: string }>({ ofDesign, ofQuestion }: Refused<R>): Refused<R> => ({
  ofDesign,
  ofQuestion: ofQuestion.map((refusal) => ({ ...refusal, path: inRequest(refusal.path) })),
})
