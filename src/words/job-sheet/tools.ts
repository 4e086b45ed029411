import type { OperationWords } from './operation.ts'

/** Names beside a tool that are no tools: how the work is held, and what is there anyway. */
const NO_TOOLS =
  /^(hands|ring held by its outside|ring on its disc of waste wood|the same tool|a rule|the (balls|rollers)|the plug|the two plugs|a dowel for the groove|scraper ground to the groove radius)$/

/** Everything that the operations name, once each, in the order of its first use, but for what they make themselves. */
export function toolsOf(operations: readonly Pick<OperationWords, 'tool'>[]): string[] {
  const named = operations.flatMap(({ tool }) => tool.split(/[,;] /)).filter((tool) => !NO_TOOLS.test(tool))
  return [...new Set(['a rule', ...named].map((tool) => tool.replace(/^(an?|the|or) /, '')))]
}
