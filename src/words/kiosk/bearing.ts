import type { BallMaterial } from '#shared/bearing/fields.ts'
import type { Mm, Units } from '#shared/units/length.ts'
import { figure } from '#src/words/figure.ts'

/** Words of the step in which a bearing is chosen. */
export const BEARING = {
  units: 'Units',
  in: 'inches',
  mm: 'millimetres',
  ballDiameter: 'Ball diameter',
  otherSize: 'Other size',
  material: 'Material of the balls',
  count: 'Number of balls',
  fewerBalls: 'one ball fewer',
  moreBalls: 'one ball more',
  bore: 'Bore',
  smallerBore: 'smaller bore',
  largerBore: 'larger bore',
  depth: 'How deep the balls sit',
  outerRing: 'outer ring',
  innerRing: 'inner ring',
  arrangement: 'Kind of bearing',
  drawing: 'drawing of the bearing',
  besides: 'Also stated by the link',
  remove: 'Remove',
  picture: 'The bearing from the front',
  refusals: 'why this bearing cannot be made',
  sizes: 'Sizes to cut',
  size: 'Size',
  onTheRule: 'On the rule',
  exact: 'Exact',
  usual: 'Usual value',
  usualChoice: 'as usual',
  empty: 'Leave a field empty for the usual value.',
} as const

export const ARRANGEMENT_CHOICES = {
  radial: 'two rings, full of balls',
  caged: 'two rings with a cage',
  roller: 'two rings with rollers',
  thrust: 'turntable of two plates',
} as const

export const MATERIAL_CHOICES: Readonly<Record<BallMaterial, string>> = {
  wood: 'wood',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}

const MATERIAL_ADJECTIVES: Readonly<Record<BallMaterial, string>> = {
  wood: 'wooden',
  glass: 'glass',
  acrylic: 'acrylic',
  steel: 'steel',
}

/** A bearing in one line, so that nobody takes its figures for those of another. */
export function bearingName(of: {
  readonly count: number
  readonly material: BallMaterial
  readonly ballDiameter: Mm
  readonly bore: Mm
  readonly units: Units
  readonly element: { readonly many: string }
  readonly name: string | undefined
}): string {
  const line = `${of.count} ${MATERIAL_ADJECTIVES[of.material]} ${of.element.many} of ${figure(of.ballDiameter, of.units)}, bore ${figure(of.bore, of.units)}`
  return of.name === undefined ? line : `${of.name}: ${line}`
}

/** A button that follows a warning's advice. */
export const followSuggestion = (name: string, value: string): string => `Change ${name} to ${value}`

/** Names of fields for people, by their names in a request; a field that is not here is shown by what it means. */
export const FIELD_NAMES: Readonly<Record<string, string>> = {
  'balls.standardDeviation': 'Scatter of the balls',
  'balls.diameters': 'Measured balls',
  'outerRing.engagement': 'Depth in the outer ring, as a part of a ball',
  'outerRing.grooveDepth': 'Depth of the outer groove',
  'outerRing.wall': 'Wood behind the outer groove',
  'outerRing.roundOutsideDiameterTo': 'Round the outside up to',
  'outerRing.outsideDiameter': 'Outside diameter',
  'innerRing.engagement': 'Depth in the inner ring, as a part of a ball',
  'innerRing.grooveDepth': 'Depth of the inner groove',
  'groove.conformity': 'Groove radius, as a part of a ball',
  'groove.grooveRadius': 'Groove radius',
  'groove.cutterDiameter': 'Diameter of the cutter',
  ballGap: 'Gap to aim for',
  minBallGap: 'Smallest good gap',
  maxBallGap: 'Largest good gap',
  radialInternalClearance: 'Play',
  finishAllowance: 'Thickness of the finish',
  width: 'Width',
  split: 'Ring that is split',
  ring: 'Ring on the lathe',
  shopDenominator: 'Rule: fractions of an inch',
}

/** Names that sentences of the service give to parts of its answers, as the page calls them. */
const PART_NAMES: Readonly<Record<string, string>> = {
  buildIn: 'the advice above',
  rescue: 'the list below',
  nextReading: 'the reading asked for',
  nextStep: 'the next cut',
  ballsOnHand: 'balls on hand',
  measured: 'the measured balls',
  trials: 'random trials',
}

/** A fault of the service in words: where it begins with no name of its own, it is about the field at a place of the request. */
export function faultOnThePage(message: string, path: string): string {
  const name = path.slice(1).replaceAll('/', '.')
  return /^[a-z]/.test(message) && name !== '' ? `${FIELD_NAMES[name] ?? name}: ${message}` : message
}

/** A sentence of the service on the page: what it names by a field of JSON has the name that stands on the page. */
export const onThePage = (sentence: string): string =>
  sentence.replaceAll(/`([\w.]+)`/g, (_, name: string) => {
    const label = FIELD_NAMES[name]
    return label === undefined ? (PART_NAMES[name] ?? name) : `“${label}”`
  })
