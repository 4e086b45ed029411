import {
  ARRANGEMENT_NAMES,
  ARRANGEMENTS,
  type ArrangementName,
  type Design,
  type DesignInput,
  design,
  traitsOf,
  woodPartsOf,
} from '#shared/bearing/arrangements.ts'
import { type Field, type Group, type Leaf, leavesOf } from '#shared/bearing/field.ts'
import { holdsOf } from '#shared/bearing/mounting-input.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import { USUAL_TEMPERATURE } from '#shared/bearing/whole-year.ts'
import type { WoodPart } from '#shared/bearing/wood-parts.ts'
import type { Result } from '#shared/result.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { choiceName } from '#src/words/kiosk/bearing.ts'
import { FAULTS } from '#src/words/kiosk/faults.ts'
import { MONTH_NAMES } from '#src/words/kiosk/place.ts'
import { type BearingTexts, WOODS } from './job.ts'
import { listIn, readCount, readLength, readNumber, Unread, withPoint } from './text.ts'

/** A bearing as the page reads it: for the core, for the service, and what cannot be read of it. */
export interface ReadBearing {
  readonly units: Units
  readonly arrangement: ArrangementName
  /** Why a value cannot be read, by its name. Where there is a reason, there is no bearing. */
  readonly faults: ReadonlyMap<string, string>
  readonly input?: DesignInput
  /** The same for the service, in the caller's units. */
  readonly request?: object
}

/** Places of a request that the rows of fields do not describe. They are sent as they are. */
const FREE = 'making.'

const unitsOf = ({ units }: BearingTexts): Units => (units === 'in' ? 'in' : 'mm')

const arrangementOf = ({ arrangement }: BearingTexts): ArrangementName =>
  ARRANGEMENT_NAMES.find((name) => name === arrangement) ?? 'radial'

/** Every value that a bearing of this arrangement can have. */
export function leavesFor(arrangement: ArrangementName): readonly Leaf[] {
  const { fields }: Group = ARRANGEMENTS[arrangement].fields
  return leavesOf(fields)
}

/** What counts for a value: as it is stated, else as it is usual; empty where neither is. */
export const valueOrUsual = (bearing: BearingTexts, arrangement: ArrangementName, name: string): string =>
  bearing[name] ?? leavesFor(arrangement).find(({ names }) => names.join('.') === name)?.field.byDefault?.stated ?? ''

export function readBearing(bearing: BearingTexts): ReadBearing {
  const units = unitsOf(bearing)
  const arrangement = arrangementOf(bearing)
  const faults = new Map<string, string>()
  const input: Tree = { units, arrangement }
  const request: Tree = { units, arrangement }
  for (const { names, field } of leavesFor(arrangement)) {
    const name = names.join('.')
    const text = bearing[name]
    if (text === undefined) {
      if (field.required) faults.set(name, FAULTS.missing)
      continue
    }
    const value = readValue(field, text, units)
    if (value instanceof Unread) faults.set(name, value.message)
    else {
      put(input, names, value)
      put(request, names, toRequest(field, value, units))
    }
  }
  for (const [name, text] of Object.entries(bearing))
    if (name.startsWith(FREE) && !name.startsWith(CLIMATE)) put(request, name.split('.'), freeValue(name, text))
  const climate = climateOf(bearing)
  if (climate !== undefined) {
    put(request, CLIMATE.split('.'), climate)
    for (const [name, fault] of placeFaults(bearing, arrangement)) faults.set(name, fault)
  }
  if (faults.size > 0) return { units, arrangement, faults }
  // The rows that were read are those that make this type.
  return { units, arrangement, faults, input: input as unknown as DesignInput, request }
}

/** The bearing that the page itself works out; undefined where something cannot be read. */
export const designHere = ({ input }: ReadBearing): Result<Design, readonly Refusal[]> | undefined =>
  input === undefined ? undefined : design(input)

/** What a link may state and no form of the page has: only the service knows whether it applies to the bearing. */
export const statedBesides = (bearing: BearingTexts, arrangement: ArrangementName): readonly string[] => {
  const inForms = RegExp(
    `^making\\.(name|woods\\.(${woodenIn(bearing, arrangement).join('|')})\\.(species|construction)|mounting\\.(shaft|housing)\\.hold|climate\\.(months|(today\\.)?relativeHumidity(\\.\\w+)?))$`,
  )
  // Plywood moves alike whatever it is of: a wood beside it can be removed, too.
  const isIdle = (name: string): boolean =>
    name.endsWith('.species') && bearing[name.replace(/species$/, 'construction')] === WITHOUT_SPECIES
  const { members } = traitsOf({ arrangement })
  const isNoHold = (name: string): boolean =>
    (['shaft', 'housing'] as const).some(
      (at) => name === `making.mounting.${at}.hold` && !holdsOf(at, members).some((hold) => hold === bearing[name]),
    )
  return Object.keys(bearing).filter(
    (name) => name.startsWith(FREE) && (!inForms.test(name) || isIdle(name) || isNoHold(name)),
  )
}

/** What a link may state that a bearing of this arrangement does not have: nothing is made of it. */
export function statedIdly(bearing: BearingTexts, arrangement: ArrangementName): readonly string[] {
  const known = new Set(leavesFor(arrangement).map(({ names }) => names.join('.')))
  return Object.keys(bearing).filter(
    (name) => !name.startsWith(FREE) && !known.has(name) && name !== 'units' && name !== 'arrangement',
  )
}

/** Parts that have a wood on the page. */
const woodenIn = (bearing: BearingTexts, arrangement: ArrangementName): readonly string[] => [
  ...woodPartsOf({ arrangement }),
  ...(valueOrUsual(bearing, arrangement, 'balls.material') === 'wood' ? ['balls'] : []),
]

/** Whether the year decides sizes: only the service and its like know how. */
export const hasPlace = (bearing: BearingTexts): boolean => climateOf(bearing) !== undefined

const CLIMATE = 'making.climate'
/** Humidity and, after a stroke, temperature of each month: `35/18,40,…`. */
export const MONTHS = `${CLIMATE}.months`

/** The year once all of it is there: as long as something is still to be filled in, there is none. */
function climateOf(bearing: BearingTexts): object | undefined {
  const months = bearing[MONTHS] === undefined ? undefined : monthsIn(bearing[MONTHS])
  const needed = months === undefined ? ['today', 'min', 'max'] : ['today']
  const isTold = ([name, text]: readonly [string, string]) => name.startsWith(`${CLIMATE}.`) && text.trim() !== ''
  const told = Object.entries(bearing).filter(isTold)
  const isWhole = needed.every((part) => told.some(([name]) => name.split('.').includes(part)))
  if (!isWhole || months?.some(({ humidity }) => humidity === '')) return undefined
  const climate: Tree = {}
  for (const [name, text] of told)
    if (name !== MONTHS && (months === undefined || name.startsWith(`${CLIMATE}.today`)))
      put(climate, name.split('.').slice(2), freeValue(name, text))
  return {
    ...climate,
    ...(months && {
      months: months.map(({ humidity, temperature }, index) => ({
        name: MONTH_NAMES[index],
        temperature: freeValue(MONTHS, temperature === '' ? String(USUAL_TEMPERATURE) : temperature),
        relativeHumidity: freeValue(MONTHS, humidity),
      })),
    }),
  }
}

/** Humidities that a form has, and what is wrong with a year that is all there. */
export const HUMIDITIES = {
  today: `${CLIMATE}.today.relativeHumidity`,
  driest: `${CLIMATE}.relativeHumidity.min`,
  dampest: `${CLIMATE}.relativeHumidity.max`,
} as const
export const PERCENT = { min: 0, max: 100 }

function placeFaults(bearing: BearingTexts, arrangement: ArrangementName): readonly (readonly [string, string])[] {
  const names = bearing[MONTHS] === undefined ? Object.values(HUMIDITIES) : [HUMIDITIES.today]
  const read = names.flatMap((name) => {
    const text = bearing[name]?.trim() ?? ''
    return text === '' ? [] : [[name, readNumber(text, PERCENT)] as const]
  })
  const figures = new Map(read)
  const [driest, dampest] = [figures.get(HUMIDITIES.driest), figures.get(HUMIDITIES.dampest)]
  const woodless = woodenIn(bearing, arrangement).filter(
    (part) =>
      bearing[`${WOODS}${part}.species`] === undefined && bearing[`${WOODS}${part}.construction`] !== WITHOUT_SPECIES,
  )
  return [
    ...read.flatMap(([name, figure]) => (figure instanceof Unread ? [[name, figure.message] as const] : [])),
    ...(typeof driest === 'number' && typeof dampest === 'number' && driest > dampest
      ? [[HUMIDITIES.driest, FAULTS.driest] as const]
      : []),
    ...woodless.map((part) => [`${WOODS}${part}.species`, FAULTS.wood] as const),
  ]
}

/** Plywood moves alike, whatever it is of. */
export const WITHOUT_SPECIES = 'cross-laminated-ply'

/** What may be stated of a bearing of one arrangement. */
export interface Scope {
  readonly arrangement: ArrangementName
  readonly leaves: readonly Leaf[]
  readonly woodParts: readonly WoodPart[]
}

export const scopeOf = (arrangement: ArrangementName): Scope => ({
  arrangement,
  leaves: leavesFor(arrangement),
  woodParts: woodPartsOf({ arrangement }),
})

export interface MonthTexts {
  readonly humidity: string
  readonly temperature: string
}

export function monthsIn(text: string): readonly MonthTexts[] {
  const parts = text.split(',')
  return MONTH_NAMES.map((_, index) => {
    const [humidity = '', temperature = ''] = (parts[index] ?? '').split('/')
    return { humidity, temperature }
  })
}

/** The least and the most of all months, where a query has no room for each. */
export function rangesOf(months: readonly MonthTexts[]): BearingTexts {
  const range = (name: string, texts: readonly string[]) => {
    const values = texts.map((text) => Number(withPoint(text)))
    return {
      [`${CLIMATE}.${name}.min`]: String(Math.min(...values)),
      [`${CLIMATE}.${name}.max`]: String(Math.max(...values)),
    }
  }
  return {
    ...range(
      'relativeHumidity',
      months.map(({ humidity }) => humidity),
    ),
    ...range(
      'temperature',
      months.map(({ temperature }) => temperature || String(USUAL_TEMPERATURE)),
    ),
  }
}

export const textOfMonths = (months: readonly MonthTexts[]): string =>
  months.map(({ humidity, temperature }) => (temperature === '' ? humidity : `${humidity}/${temperature}`)).join(',')

function readValue(field: Exclude<Field, Group>, text: string, units: Units): unknown {
  switch (field.kind) {
    case 'length':
      return readLength(text, units, field.bounds)
    case 'length-or-null':
      return text === 'null' ? null : readLength(text, units, field.bounds)
    case 'lengths': {
      const values = listIn(text).map((each) => readLength(each, units, field.bounds))
      const count = readCount(String(values.length), field.items)
      return values.find((each) => each instanceof Unread) ?? (count instanceof Unread ? count : values)
    }
    case 'number':
      return readNumber(text, field.bounds)
    case 'integer':
      return readCount(text, field.bounds)
    case 'choice':
      return (
        field.choices.find((each) => String(each) === text) ??
        new Unread(FAULTS.choice(field.choices.map((each) => choiceName(String(each)))))
      )
    case 'flag':
      return (
        text === 'true' || (text === 'false' ? false : new Unread(FAULTS.choice(['true', 'false'].map(choiceName))))
      )
    default:
      return field satisfies never
  }
}

function toRequest({ kind }: Field, value: unknown, units: Units): unknown {
  if (kind === 'lengths') return (value as readonly Mm[]).map((each) => inUnits(each, units))
  return kind === 'length' || (kind === 'length-or-null' && value !== null) ? inUnits(value as Mm, units) : value
}

/** A number where it is one; a name is always a text. */
function freeValue(name: string, text: string): unknown {
  if (text === 'null') return null
  const isName = name.endsWith('.name')
  return !isName && /^-?\d{1,9}(\.\d{1,9})?$/.test(withPoint(text)) ? Number(withPoint(text)) : text
}

type Tree = { [name: string]: unknown }

function put(tree: Tree, names: readonly string[], value: unknown): void {
  const [name = '', ...rest] = names
  if (rest.length === 0) tree[name] = value
  else {
    const there = Object.hasOwn(tree, name) ? tree[name] : undefined
    // A link may name a thing and, as if it were a text, what it is a part of.
    const inner: Tree = typeof there === 'object' && there !== null ? (there as Tree) : {}
    tree[name] = inner
    put(inner, rest, value)
  }
}
