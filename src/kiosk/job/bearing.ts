import {
  ARRANGEMENT_NAMES,
  ARRANGEMENTS,
  type ArrangementName,
  type Design,
  type DesignInput,
  design,
} from '#shared/bearing/arrangements.ts'
import { type Field, type Group, type Leaf, leavesOf } from '#shared/bearing/field.ts'
import type { Refusal } from '#shared/bearing/refusal.ts'
import type { Result } from '#shared/result.ts'
import { inUnits, type Mm, type Units } from '#shared/units/length.ts'
import { FAULTS } from '#src/words/kiosk/faults.ts'
import type { BearingTexts } from './job.ts'
import { readCount, readLength, readNumber, Unread, withPoint } from './text.ts'

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
    if (name.startsWith(FREE)) put(request, name.split('.'), freeValue(name, text))
  if (faults.size > 0) return { units, arrangement, faults }
  // The rows that were read are those that make this type.
  return { units, arrangement, faults, input: input as unknown as DesignInput, request }
}

/** The bearing that the page itself works out; undefined where something cannot be read. */
export const designHere = ({ input }: ReadBearing): Result<Design, readonly Refusal[]> | undefined =>
  input === undefined ? undefined : design(input)

/** Whether the year decides sizes: only the service and its like know how. */
export const hasPlace = (bearing: BearingTexts): boolean =>
  Object.keys(bearing).some((name) => name.startsWith('making.climate.'))

function readValue(field: Exclude<Field, Group>, text: string, units: Units): unknown {
  switch (field.kind) {
    case 'length':
      return readLength(text, units, field.bounds)
    case 'length-or-null':
      return text === 'null' ? null : readLength(text, units, field.bounds)
    case 'lengths': {
      const values = text.split(',').map((each) => readLength(each, units, field.bounds))
      const count = readCount(String(values.length), field.items)
      return values.find((each) => each instanceof Unread) ?? (count instanceof Unread ? count : values)
    }
    case 'number':
      return readNumber(text, field.bounds)
    case 'integer':
      return readCount(text, field.bounds)
    case 'choice':
      return field.choices.find((each) => String(each) === text) ?? new Unread(FAULTS.choice(field.choices))
    case 'flag':
      return text === 'true' || (text === 'false' ? false : new Unread(FAULTS.choice(['true', 'false'])))
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
  return !isName && /^\d{1,9}(\.\d{1,9})?$/.test(withPoint(text)) ? Number(withPoint(text)) : text
}

type Tree = { [name: string]: unknown }

function put(tree: Tree, names: readonly string[], value: unknown): void {
  const [name = '', ...rest] = names
  if (rest.length === 0) tree[name] = value
  else {
    const inner = Object.hasOwn(tree, name) ? (tree[name] as Tree) : {}
    tree[name] = inner
    put(inner, rest, value)
  }
}
