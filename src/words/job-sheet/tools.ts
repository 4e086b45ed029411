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
