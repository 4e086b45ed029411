import { ARRANGEMENT_NAMES, type ArrangementName, nameOf, type Question } from '#shared/bearing/arrangements.ts'
import * as defaults from '#shared/bearing/defaults.ts'
import type { InputOf } from '#shared/bearing/field.ts'
import { denominatorInput } from '#shared/bearing/resolve.ts'
import type { Year } from '#shared/movement/year.ts'
import type { AnyLoadCheckInput } from '#shared/questions/load/load-check.ts'
import { SEARCHED } from '#shared/questions/search/arrangements/all.ts'
import { type Mm, mm, type Units } from '#shared/units/length.ts'
import { rounded } from '#shared/units/rounded.ts'
import {
  boreStep,
  type COMMON_FIELDS,
  CRITERIA,
  type Criterion,
  DEPTH_LISTS,
  type DepthList,
  type OWN_FIELDS,
  partingWidth,
  type SharedDesign,
  type Stock,
  sharedFields,
  USUAL,
  usualTools,
  type WEIGHT_FIELDS,
  WEIGHTS,
} from './fields.ts'
import type { Choice } from './module.ts'

/** It searches among bearings of every arrangement. */
export const DESIGN_SEARCH = { name: 'design-search', serves: ARRANGEMENT_NAMES } as const satisfies Question

/** A load that a bearing must carry, in newtons: the one that goes with its arrangement. */
type SearchLoad = Pick<AnyLoadCheckInput, 'wood' | 'dentFraction' | 'radialLoad' | 'axialLoad' | 'offset'>

/** The limits within which a maker looks for a bearing, and what is on hand. */
export interface DesignSearchInput
  extends InputOf<typeof COMMON_FIELDS>,
    InputOf<typeof OWN_FIELDS>,
    SharedDesign,
    Readonly<Partial<Record<DepthList, readonly number[]>>> {
  readonly units: Units
  readonly arrangement?: ArrangementName
  readonly balls: readonly Stock[]
  readonly weights?: InputOf<typeof WEIGHT_FIELDS>
  /** Only designs whose raceway, cut to the nearest figure of the rule, still leaves a gap within its band. */
  readonly onlyOnRule?: boolean
  readonly load?: SearchLoad
  /** The woods, and the year in which it is to run from end to end. */
  readonly year?: Year
}

/** An input with every default that is one value for all designs, and its grid: every combination of the lists is a candidate. */
export interface ResolvedSearch {
  readonly input: WholeInput
  readonly arrangement: ArrangementName
  /** The fields that every design shares. */
  readonly shared: SharedDesign
  readonly choices: readonly Choice[]
  readonly counts: readonly number[]
  readonly bores: readonly Mm[]
  /** Ascending. */
  readonly boardWidths: readonly Mm[]
  /** The marks that these designs have, with their weights. */
  readonly weights: readonly (readonly [Criterion, number])[]
}

type Defaulted = 'counts' | 'tools' | 'riskDeduction' | 'show' | 'offset' | 'limit'
type WholeInput = Omit<DesignSearchInput, Defaulted | 'weights'> & {
  readonly counts: { readonly min: number; readonly max: number }
  readonly tools: { readonly grooveError: Mm }
  readonly weights: Readonly<Partial<Record<Criterion, number>>>
} & Required<Pick<DesignSearchInput, 'riskDeduction' | 'show' | 'offset' | 'limit'>>

/** How many candidates must be found good: they fill the page, and tell whether there are more behind it. */
export const candidatesWanted = ({
  offset = USUAL.offset,
  limit = USUAL.limit,
}: Pick<DesignSearchInput, 'offset' | 'limit'>): number => offset + limit + 1

/** How many candidates an input has, before any list of them is made. */
export function candidatesIn(input: DesignSearchInput): number {
  const { min, max } = countsOf(input)
  const lists = listsOf(input).reduce((product, [, values]) => product * values.length, 1)
  return input.balls.length * lists * Math.max(0, max - min + 1) * boreCount(input)
}

/** Both ends of the counts: one that is stated moves the other, if it must. */
export function countsOf({ counts: { min, max } = {} }: Pick<DesignSearchInput, 'counts'>) {
  return {
    min: min ?? Math.min(USUAL.counts.min, max ?? USUAL.counts.min),
    max: max ?? Math.max(USUAL.counts.max, min ?? USUAL.counts.max),
  }
}

const CHOICE_LISTS = ['cutterDiameters', ...DEPTH_LISTS] as const

/** The lists that are stated; of the others each design has its arrangement's own default. */
const listsOf = (input: DesignSearchInput) =>
  CHOICE_LISTS.flatMap((name) => {
    const values: readonly number[] | undefined = input[name]
    return values === undefined ? [] : [[name, values] as const]
  })

/** Every combination of the lists, the last running fastest. */
const choicesIn = (input: DesignSearchInput): readonly Choice[] =>
  listsOf(input).reduce<readonly Choice[]>(
    (choices, [name, values]) => choices.flatMap((choice) => values.map((value) => ({ ...choice, [name]: value }))),
    [{}],
  )

/** Whether the designs of a search have a mark: two of them only where there is something to compare with. */
export function isMarked(input: DesignSearchInput, name: Criterion): boolean {
  if (name === 'load') return input.load !== undefined
  if (name === 'onHand') return (input.drillDiameters ?? input.plugDiameters) !== undefined
  return (SEARCHED[nameOf(input)].marks as readonly Criterion[]).includes(name)
}

/** The search of an input, with its grid. */
export function resolveSearch(input: DesignSearchInput): ResolvedSearch {
  const { units, bore, boardWidths = [] } = input
  const arrangement = nameOf(input)
  const { has, usualSplit } = SEARCHED[arrangement]
  const counts = countsOf(input)
  const step = boreStepOf(input)
  const weights = CRITERIA.filter((name) => isMarked(input, name)).map(
    (name) => [name, input.weights?.[name] ?? WEIGHTS[name]] as const,
  )
  const own = {
    ...(has.includes('partingWidth') ? { partingWidth: input.partingWidth ?? partingWidth(units) } : {}),
    ...(has.includes('onlyOnRule') ? { minBallGap: mm(defaults.MIN_BALL_GAP), onlyOnRule: false } : {}),
    ...(usualSplit === undefined ? {} : { split: usualSplit }),
  }
  const whole = {
    ...own,
    finishAllowance: defaults.FINISH_ALLOWANCE,
    ...USUAL,
    ...input,
    balls: input.balls.map((stock) => ({ material: defaults.BALL_MATERIAL, ...stock })),
    ...denominatorInput(input),
    arrangement,
    bore: { ...bore, step },
    counts,
    tools: { ...usualTools(units), ...input.tools },
    weights: Object.fromEntries(weights),
  }
  const shared = sharedFields(arrangement)
  return {
    input: whole,
    arrangement,
    shared: Object.fromEntries(Object.entries(whole).filter(([name]) => Object.hasOwn(shared, name))),
    choices: choicesIn(input),
    counts: Array.from({ length: Math.max(0, counts.max - counts.min + 1) }, (_, place) => counts.min + place),
    bores: Array.from({ length: boreCount(input) }, (_, place) =>
      place === 0 ? bore.min : rounded(mm(bore.min + place * step), units),
    ),
    boardWidths: [...boardWidths].sort((one, other) => one - other),
    weights,
  }
}

const boreStepOf = ({ bore, units }: Pick<DesignSearchInput, 'bore' | 'units'>): Mm => bore.step ?? boreStep(units)

/** A step that comes to the largest bore within rounding comes to it. */
const WITHIN = 1e-9

/** How many bores there are from the smallest to the largest. */
export const boreCount = (input: DesignSearchInput): number =>
  Math.max(0, Math.floor((input.bore.max - input.bore.min) / boreStepOf(input) + WITHIN) + 1)
