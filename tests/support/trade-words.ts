import type { ArrangementName } from '#shared/bearing/arrangements.ts'

/** The nouns by which a maker tells one arrangement from another. */
const TRADE_WORDS = [
  'ball',
  'roller',
  'groove',
  'track',
  'land',
  'ring',
  'plate',
  'cheek',
  'cage',
  'caged',
  'pocket',
  'turntable',
  'plug',
]

/** Those that each arrangement has. */
const OWN: Readonly<Record<ArrangementName, readonly string[]>> = {
  radial: ['ball', 'groove', 'land', 'ring', 'plug'],
  caged: ['ball', 'groove', 'land', 'ring', 'cage', 'caged', 'pocket', 'plug'],
  roller: ['roller', 'track', 'ring', 'cheek', 'plug'],
  thrust: ['ball', 'groove', 'plate', 'turntable', 'plug'],
}

/** What is no single noun: a track has no depth, a turntable no inner and outer
 * groove and no play, and a cage leaves no gap and takes one plug. */
const NEVER: Readonly<Record<ArrangementName, RegExp>> = {
  radial: /\bspace between the plates\b/,
  caged: /\bball gap\b|\b(?:no-)?go plugs?\b|\bthe gap\b/,
  roller: /\btoo (?:deep|shallow)\b|\bof depth\b|\bbottoms?\b/,
  thrust: /\b(?:inner|outer)\b|\bplay\b/,
}

const nounsIn = (text: string): readonly string[] =>
  Array.from(text.toLowerCase().matchAll(/[a-z]+/g), ([word]) => word.replace(/s$/, ''))

/** The words of other arrangements in a text, each with the text that it stands in. */
export function foreignWords(arrangement: ArrangementName, text: string): readonly string[] {
  const foreign = nounsIn(text).filter((word) => TRADE_WORDS.includes(word) && !OWN[arrangement].includes(word))
  const never = NEVER[arrangement].exec(text)
  return [...foreign, ...(never ?? [])].map((word) => `${word}: ${text}`)
}

/** Those of its own words that an arrangement's texts do not use. */
export const unusedWords = (arrangement: ArrangementName, texts: readonly string[]): readonly string[] => {
  const used = new Set(texts.flatMap(nounsIn))
  return OWN[arrangement].filter((word) => !used.has(word))
}
