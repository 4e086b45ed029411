import { type ArrangementName, traitsOf } from '#shared/bearing/arrangements.ts'
import { holdsOf, TURNING_RINGS } from '#shared/bearing/mounting-input.ts'
import { PART_NAMES, type WoodPart } from '#shared/bearing/wood-parts.ts'
import { isSpecies, SPECIES, SPECIES_IDS } from '#shared/data/species.ts'
import { MOVEMENT } from '#shared/data/wood-movement.ts'
import type { Units } from '#shared/units/length.ts'
import { CONSTRUCTION_NAMES } from '#src/words/materials.ts'
import { TERMS, type Terms } from '#src/words/terms.ts'
import { choiceName, fieldName } from './bearing.ts'
import { PLACE } from './place.ts'

/* What a link may state of the making, beside the fields of the page: its names and its values for people. */

/** A name, and the unit of a value that is written as a number. */
type Row = readonly [name: string | ((terms: Terms) => string), unit?: 'length' | '%' | '°']

const shaft = ({ part }: Terms): string => (part.one === 'plate' ? 'pin' : 'shaft')
const housing = ({ part }: Terms): string => (part.one === 'plate' ? 'boards' : 'housing')
const IN_THE_WOOD = 'Moisture content of the wood'

const ROWS: Readonly<Record<string, Row>> = {
  making: ['How it is made'],
  'making.method': ['Machines'],
  'making.lumber': ['Kind of lumber'],
  'making.boardLength': ['Length of a board that you buy', 'length'],
  'making.boards': ['Boards on hand'],
  'making.allowances': ['Left on a blank'],
  'making.allowances.turning': ['Left for the lathe, all round', 'length'],
  'making.allowances.side': ['Left on each side', 'length'],
  'making.allowances.sawKerf': ['Kerf of the saw for circles', 'length'],
  'making.allowances.miterKerf': ['Kerf of the saw for miters', 'length'],
  'making.allowances.entryHole': ['Hole in which a saw enters', 'length'],
  'making.screws': ['Screws'],
  'making.screws.count': ['Number of screws'],
  'making.screws.gauge': ['Gauge of the screws'],
  'making.screws.metricDiameter': ['Diameter of the screws, in mm'],
  'making.kerf': ['Width of the beam that cuts templates', 'length'],
  'making.chuck': ['Chuck'],
  'making.chuck.min': ['Smallest diameter in the chuck', 'length'],
  'making.chuck.max': ['Largest diameter in the chuck', 'length'],
  'making.swing': ['Largest diameter over the bed', 'length'],
  'making.mounting': ['Mounting'],
  'making.mounting.shaft': [(terms) => `The ${shaft(terms)}`],
  'making.mounting.shaft.diameter': [(terms) => `Diameter of the ${shaft(terms)}`, 'length'],
  'making.mounting.shaft.material': [(terms) => `Material of the ${shaft(terms)}`],
  'making.mounting.shaft.species': [(terms) => `Wood of the ${shaft(terms)}`],
  'making.mounting.shaft.hold': [(terms) => `Hold on the ${shaft(terms)}`],
  'making.mounting.housing': [(terms) => `The ${housing(terms)}`],
  'making.mounting.housing.species': [(terms) => `Wood of the ${housing(terms)}`],
  'making.mounting.housing.thickness': [(terms) => `Thickness of the ${housing(terms)}`, 'length'],
  'making.mounting.housing.hold': [(terms) => `Hold in the ${housing(terms)}`],
  'making.mounting.turns': ['Ring that turns'],
  'making.mounting.drive': ['Drive of the outer ring'],
  'making.woods': ['Wood of each part'],
  ...Object.fromEntries(
    [...PART_NAMES, 'balls' as const].flatMap((part): (readonly [string, Row])[] => {
      const label = (terms: Terms) =>
        part === 'balls' ? PLACE.elements(terms.element.many) : PLACE.parts[part satisfies WoodPart]
      return [
        [`making.woods.${part}`, [label]],
        [`making.woods.${part}.segments`, [(terms) => `${label(terms)}: segments`]],
        [`making.woods.${part}.segments.count`, [(terms) => `${label(terms)}: segments in a layer`]],
      ]
    }),
  ),
  'making.climate': ['The year'],
  'making.climate.temperatureScale': ['Scale of the temperatures'],
  'making.climate.today': [`${PLACE.humidityOf} ${PLACE.today}`],
  'making.climate.today.temperature': [`Temperature ${PLACE.today}`, '°'],
  'making.climate.today.moistureContent': [`${IN_THE_WOOD} today`, '%'],
  'making.climate.temperature': ['Temperature over the year'],
  'making.climate.temperature.min': ['Lowest temperature of the year', '°'],
  'making.climate.temperature.max': ['Highest temperature of the year', '°'],
  'making.climate.relativeHumidity': ['Humidity over the year'],
  'making.climate.moistureContent': [`${IN_THE_WOOD} over the year`],
  'making.climate.moistureContent.min': [`${IN_THE_WOOD} ${PLACE.driest}`, '%'],
  'making.climate.moistureContent.max': [`${IN_THE_WOOD} ${PLACE.dampest}`, '%'],
}

/** The name of anything that may be stated of a bearing; undefined where nothing here has that name. */
export function statedName(name: string, terms: Terms = TERMS.radial): string | undefined {
  const row = Object.hasOwn(ROWS, name) ? ROWS[name]?.[0] : undefined
  return fieldName(name, terms) ?? (typeof row === 'function' ? row(terms) : row)
}

const VALUE_NAMES: Readonly<Record<string, string>> = {
  ...CONSTRUCTION_NAMES,
  'saw-and-lathe': 'saw and lathe',
  'lathe-only': 'lathe only',
  'router-and-lathe': 'router and lathe',
  celsius: '°C',
  fahrenheit: '°F',
  retained: 'held by rings of wood',
  ...Object.fromEntries(TURNING_RINGS.map((ring) => [ring, choiceName(ring)])),
}

/** A value by its name for people: a wood, a construction, a machine, a ring; undefined for any other text. */
export function valueName(text: string): string | undefined {
  if (isSpecies(text)) return SPECIES[text].name
  return Object.hasOwn(VALUE_NAMES, text) ? VALUE_NAMES[text] : undefined
}

/**
 * A choice that is left open, and what stands for it where something does.
 *
 * @param isByYear whether that is not the usual, but what the stated year needs
 */
export function notChosen(counted: string | undefined, isByYear = false): string {
  if (counted === undefined) return PLACE.unknown
  const name = valueName(counted) ?? counted
  return isByYear ? `counted on: ${name}, as the year needs` : `usual: ${name}`
}

/** How a bearing may be held, for the choices of a form. */
export function holdChoices(arrangement: ArrangementName, terms: Terms) {
  const { members } = traitsOf({ arrangement })
  const row = (at: 'shaft' | 'housing') => {
    const name = `making.mounting.${at}.hold`
    return {
      name,
      label: statedName(name, terms) ?? name,
      options: holdsOf(at, members).map((value) => ({ value, label: valueName(value) ?? value })),
    }
  }
  return [row('shaft'), row('housing')]
}

/** A field that is left open and whose value the year decides. */
export const decidedByYear = (counted: string, unit: string): string =>
  `Left empty: counted as ${valueName(counted) ?? counted}${unit === '' ? '' : ` ${unit}`}, which the year asks for`

/** What a link states, as a line of a list. A name that nothing here knows stays as the link has it. */
export function statedLine(name: string, text: string, units: Units, terms: Terms): string {
  const unit = Object.hasOwn(ROWS, name) ? ROWS[name]?.[1] : undefined
  const isNumber = /^[\d\s./,-]+$/.test(text)
  const value =
    isNumber && unit !== undefined ? `${text}${unit === '°' ? '°' : ` ${unit === 'length' ? units : unit}`}` : text
  return `${statedName(name, terms) ?? name}: ${valueName(text) ?? value}`
}

/** What a link states of a bearing that has no such thing. */
export const idleLine = (name: string, text: string, { bearing }: Terms): string =>
  `${statedName(name) ?? name}: ${text} (a ${bearing} does not have this, so it is not used)`

/** What another kind of bearing does not have, and whose wood its parts took over. */
export function changedKind(of: {
  readonly terms: Terms
  readonly dropped: readonly string[]
  readonly from: Terms
  readonly isWoodTaken: boolean
}): string | undefined {
  const names = of.dropped.map((name) => statedName(name, of.from) ?? name)
  const told = [
    ...(names.length > 0 ? [`A ${of.terms.bearing} does not have these, so they are gone: ${names.join('; ')}.`] : []),
    ...(of.isWoodTaken ? ['Its other parts are of the wood that you chose: see “Wood and place”.'] : []),
  ]
  return told.length === 0 ? undefined : told.join(' ')
}

/** Every wood that a form can offer. */
export const WOOD_CHOICES = SPECIES_IDS.map((id) => ({
  value: id,
  label: MOVEMENT[id] === undefined ? PLACE.unknownMovement(SPECIES[id].name) : SPECIES[id].name,
}))
