import type { Scope } from './bearing.ts'
import { type BearingTexts, WOODS } from './job.ts'

/** What becomes of a bearing that shall be of another arrangement. */
export interface OtherArrangement {
  readonly changes: BearingTexts
  /** Names of what it does not have. */
  readonly dropped: readonly string[]
  /** Parts that only it has are of the wood of the first part of the old one. */
  readonly isWoodTaken: boolean
}

/** The same bearing as another arrangement: whatever that one has too stays, and what only repeats the usual is left to it. */
export function asArrangement(bearing: BearingTexts, from: Scope, to: Scope): OtherArrangement {
  const known = new Set(to.leaves.map(({ names }) => names.join('.')))
  const usual = new Map(from.leaves.map(({ names, field }) => [names.join('.'), field.byDefault?.stated]))
  const isUsual = (name: string, text: string) => /^(outer|inner)Ring\./.test(name) && usual.get(name) === text
  const isGone = (name: string, text: string) => !known.has(name) || isUsual(name, text)
  const stated = Object.entries(bearing)
  const woodOf = (part: string) => stated.filter(([name]) => name.startsWith(`${WOODS}${part}.`))
  const [first = ''] = from.woodParts
  const taken = to.woodParts
    .filter((part) => !from.woodParts.includes(part))
    .flatMap((part) => woodOf(first).map(([name, text]) => [name.replace(WOODS + first, WOODS + part), text] as const))
  const gone = [
    ...stated.filter(([name, text]) => !/^(units$|arrangement$|making\.)/.test(name) && isGone(name, text)),
    ...from.woodParts.filter((part) => !to.woodParts.includes(part)).flatMap(woodOf),
  ]
  const isTold = (name: string, text: string) =>
    !isUsual(name, text) && !(name.startsWith(WOODS) && taken.some(([, other]) => other === text))
  return {
    changes: {
      ...Object.fromEntries(gone.map(([name]) => [name, ''])),
      ...Object.fromEntries(taken),
      arrangement: to.arrangement,
    },
    dropped: gone.filter(([name, text]) => isTold(name, text)).map(([name]) => name),
    isWoodTaken: taken.length > 0,
  }
}
