import { lengthOf, type Units } from '#shared/units/length.ts'
import { finerThanRule } from './by-caliper.ts'
import { caliperFigure, percent } from './figure.ts'

/*
 * Words for programs that are driven by a language model: the purpose of each tool, and the lines of a short answer.
 */

/** How to work with the tools, read once. */
export const TOOL_INSTRUCTIONS = [
  'Racewright designs, checks and corrects shop-made wooden ball bearings. Ask `design` first; `will_it_run` and `season` before',
  'wood is cut; `sheets` to cut by; `fit` at the lathe, after every measurement. State `units` ("in" or "mm"). A length is a number in',
  'those units or a text such as "5/8", "1 3/16" or "16 mm". Give only what you know: everything else has a default. Pass on warnings and',
  'cautions to the person who will make it. Tools take every field of their path, more than their schemas show: see /openapi.json.',
].join(' ')

export const TOOL_WORDS = {
  design: {
    title: 'Design a bearing',
    description:
      'Every size to cut, from balls, their number and the bore. Returns sizes, gauge, order of assembly, warnings with what clears them.',
  },
  willItRun: {
    title: 'Will it run?',
    description:
      'How often such a bearing fits when balls and cuts are not perfect, what matters most, and the depth to aim for. Name what scatters in `contributors`.',
  },
  fit: {
    title: 'Correct the fit at the lathe',
    description:
      'From readings at a half-cut groove: cut (how much, with what, at what risk), measure again, or stop; and what rescues a groove that is too deep.',
  },
  season: {
    title: 'Will it run all year?',
    description:
      'What a range of humidity does to wooden rings and balls: gap and play at each time of the year, the humidities in which it runs, and what to change.',
  },
  sheets: {
    title: 'Drawings and job sheet',
    description:
      'Links to full-size drawings, templates, gauges and the job sheet of a bearing, with its operations by name. Open or print the links; only PDF is full size.',
  },
  search: {
    title: 'Search for designs',
    description:
      'The best designs within limits, ranked: largest outside diameter, bore, balls and cutters on hand. Returns a `design` to send to the other tools.',
  },
  lookUp: {
    title: 'Look up reference data',
    description:
      'Published figures with their sources: woods, ball materials, lumber sizes, wood screws, a table of ring sizes, sources. Narrow the table: only its first rows are returned.',
  },
} as const

/** The tables of `look_up`, and the fields that narrow them. */
export const TABLE_CHOICE =
  'The table. `woods` takes species, group; `lumber` takes units, system, kind, measure; `screws` takes units, gauge, metricDiameter; `sizes` takes units, diameters, counts; `sources` takes id.'

export const unknownTable = (quoted: string, known: readonly string[]): string =>
  `Unknown table ${quoted}. The tables are ${known.join(', ')}.`

export const unknownTool = (quoted: string): string => `There is no tool ${quoted}.`

type Shown = {
  readonly name: string
  readonly symbol?: string
  readonly value: number
  readonly shop: string
  readonly byCaliper?: boolean
}

/** A size of a table: the figure of the rule, or the exact one where a rule would spoil the bearing. */
export const sizeLine = ({ name, symbol, value, shop, byCaliper }: Shown, units: Units): string => {
  const size = byCaliper === true ? `${caliperFigure(lengthOf(value, units), units)}, ${finerThanRule(symbol)}` : shop
  return symbol === undefined ? `- ${name}: ${size}` : `- ${name} (${symbol}): ${size}`
}

type Warned = {
  readonly severity: string
  readonly message: string
  readonly suggestion?: { readonly path: string; readonly value: unknown }
}

/** A warning, with the change that clears it. */
export const warningLine = ({ severity, message, suggestion }: Warned): string =>
  suggestion === undefined
    ? `- ${severity}: ${message}`
    : `- ${severity}: ${message} To clear it, set ${changeOf(suggestion)}.`

/** One value that changes, by its place in the input. */
export const changeOf = ({ path, value }: { readonly path: string; readonly value: unknown }): string =>
  `${path} to ${JSON.stringify(value)}`

export const chanceLine = (name: string, chance: number): string => `- ${name}: ${percent(chance)}`

export const HEADINGS = {
  sizes: 'Sizes, on the rule unless a caliper is named:',
  assembly: 'Assembly:',
  chances: 'Chances:',
  matters: 'What matters most:',
  rescue: 'What can still be done, in this order:',
  times: 'Through the year:',
  operations: 'Operations:',
  links: 'To open or print:',
  warnings: 'Warnings:',
  cautions: 'Cautions, for the person who makes it:',
} as const

export const CHANCES = {
  gapFits: 'the ball gap fits',
  bothFit: 'ball gap and play both fit',
  inBand: 'the groove is finished',
  tooDeep: 'the groove is too deep',
  nextTooDeep: 'the next cut ends too deep',
} as const

export const changesLine = (changes: readonly string[]): string => `Set ${changes.join(', and ')}.`

type Ranked = {
  readonly units: string
  readonly balls: { readonly count: number; readonly diameter: unknown }
  readonly bore?: unknown
}

/** A design that a search found; the design itself follows, to be sent on. */
export const rankedLine = (rank: number, { units, balls, bore }: Ranked, outside: number): string =>
  `${rank}. ${balls.count} × ${String(balls.diameter)} ${units}, bore ${String(bore)} ${units}, ${outside} ${units} outside:`

/** How many values were filled in by the service. */
export const assumedLine = (count: number): string =>
  count === 0
    ? 'Nothing was left open.'
    : `${count} values were left open and have defaults: see \`assumed\` in the full answer.`

/** The address of the whole answer. */
export const fullByGet = (address: string): string => `Full answer: GET ${address}`
export const fullByPost = (address: string): string => `Full answer: POST ${address} with these arguments as JSON.`
export const SHEETS_BY_POST =
  'An address cannot carry a list of boards: send the design by POST to the paths /v1/drawings/{view}.{format} and /v1/job-sheet.'

export const moreRows = (count: number): string => `… and ${count} more rows.`

/**
 * A refusal, as a program gets it that cannot see the status.
 *
 * @param detail what is wrong as a whole, where there are no single faults
 */
export function refusalText(
  status: number,
  detail: string,
  faults: readonly { readonly path: string; readonly message: string }[],
): string {
  if (faults.length === 0) return detail
  const heading = status === 422 ? 'This has no answer:' : 'The arguments have errors:'
  return [heading, ...faults.map(({ path, message }) => (path === '' ? `- ${message}` : `- ${path}: ${message}`))].join(
    '\n',
  )
}

export const SEND_ONE = 'Send one JSON-RPC message, an object: lists of messages are not read.'

/** Names of the links of `sheets`. */
export const SHEET_NAMES = {
  assembly: 'assembly drawing',
  templates: 'templates',
  gauges: 'gauges',
  jobSheet: 'job sheet',
} as const
