import type { OperationWords } from './operation.ts'

/** Names beside a tool that are no tools: how the work is held, and what is there anyway. */
const NO_TOOLS =
  /^(hands|ring held by its outside|ring on its disc of waste wood|the same tool|a rule|the (balls|rollers)|the plug|the two plugs|a dowel for the groove|scraper ground to the groove radius)$/

/** Two tools under one name. */
const BOTH = / and (?=scraper$)/
/** Tools of which one will do. */
const EITHER = ' or '

/** Names of tools that another tool of a sheet takes the place of; a choice of tools needs none of its own where one is there. */
const COVERED_BY: Readonly<Record<string, readonly string[]>> = {
  cloth: ['soft cloth'],
  'outside caliper': ['caliper'],
  'scroll saw or jigsaw': ['band saw or scroll saw'],
}

/** Everything that the operations name, once each, in the order of its first use, but for what they make themselves. */
export function toolsOf(operations: readonly Pick<OperationWords, 'tool'>[]): string[] {
  const named = operations.flatMap(({ tool }) => tool.split(/[,;] /)).filter((tool) => !NO_TOOLS.test(tool))
  const all = new Set(['a rule', ...named].flatMap((tool) => tool.replace(/^(an?|the|or) /, '').split(BOTH)))
  return [...all].filter(
    (tool) => ![...(COVERED_BY[tool] ?? tool.split(EITHER))].some((each) => each !== tool && all.has(each)),
  )
}

/** What is fetched together: each tool stands in the first group that names it. */
const GROUPS = [
  {
    name: 'Material',
    holds: /\b(?:(?:board|plywood) for the|boards to mount on|balls of|rod of|shaft of|pin of)\b/,
  },
  { name: 'Machines', holds: /\b(?:lathe|drill press|grinder|router|(?:band|miter|table|scroll) saw|chuck)\b/ },
  {
    name: 'Measuring',
    holds: /\b(?:rule|caliper|try square|compass|centre punch|pencil|indicator|feelers|gauge sheet|template|channel)\b/,
  },
  {
    name: 'Supplies',
    holds:
      /\b(?:glue|epoxy|paper|wax|finish|cloth|abrasive|wood screws|thin screws|dowels|pins?|rod|bolt|washers|waste wood|plywood|card)\b/,
  },
  { name: 'Tools', holds: /^/ },
] as const

/** A heading, and what it holds. */
export interface ToolGroup {
  readonly name: string
  readonly tools: readonly string[]
}

/** Everything that a sheet needs, in lists to fetch it by. */
export const toolGroups = (tools: readonly string[]): readonly ToolGroup[] =>
  GROUPS.map(({ name }, index) => ({
    name,
    tools: tools.filter((tool) => GROUPS.findIndex(({ holds }) => holds.test(tool)) === index),
  })).filter((group) => group.tools.length > 0)

const BOX = '☐'
const HELD = '\u00a0'

/** The tools of a group in lines of text, with a box to tick before each: no line ends inside of one. */
export const tickList = (tools: readonly string[]): string =>
  tools.map((tool) => `${BOX} ${tool}`.replaceAll(' ', HELD)).join('  ')
