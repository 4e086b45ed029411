import type { ArrangementName } from '#shared/bearing/arrangements.ts'

/**
 * Words for the parts of bearings, and what each arrangement has of them. A sentence of an arrangement may use its own
 * words and no other word of this list; words that are not in it are free.
 */
const BALLS = ['ball', 'balls'] as const
const GROOVES = ['groove', 'grooves', 'deep', 'deeper', 'depth', 'shallower'] as const
const RINGS = ['ring', 'rings', 'outer', 'inner'] as const
const LANDS = ['land', 'lands'] as const
const FULL = ['gap', 'gaps', 'go-plug', 'no-go'] as const
const SPLIT = ['split', 'half', 'halves'] as const

const VOCABULARY: Readonly<Record<ArrangementName, readonly string[]>> = {
  radial: [...BALLS, ...GROOVES, ...RINGS, ...LANDS, ...FULL, ...SPLIT],
  caged: [
    ...[...BALLS, ...GROOVES, ...RINGS, ...LANDS, ...SPLIT],
    ...['cage', 'pocket', 'pockets', 'web', 'webs', 'gap'],
  ],
  roller: [...RINGS, ...FULL, 'roller', 'rollers', 'track', 'tracks', 'cheek', 'cheeks'],
  thrust: [...BALLS, ...GROOVES, ...FULL, 'plate', 'plates', 'face', 'turntable', 'turntables'],
}

const ALL: ReadonlySet<string> = new Set(Object.values(VOCABULARY).flat())

/** Words that mean something else here: wood may split, and a ring of balls is not a ring of wood. */
const ELSEWHERE = /it may split|half a ball|full ring|eye and face protection/gi

/** The words of a sentence that its arrangement does not have. */
export function foreignWords(sentence: string, arrangement: ArrangementName): readonly string[] {
  const own = new Set(VOCABULARY[arrangement])
  const words =
    sentence
      .replace(ELSEWHERE, '')
      .toLowerCase()
      .replace(/(?<!-)\bgo plug/g, 'go-plug')
      .match(/[a-z]+(?:-[a-z]+)*/g) ?? []
  return words.filter((word) => ALL.has(word) && !own.has(word))
}

/** Turns of phrase that few people use. */
const CRABBED =
  /\b(reckoned|wished|dear|stands? (?:aside|in|too)|speaks? (?:of|against)|is nothing that|is none of|as yet|leave it out)\b/i

export const isPlain = (sentence: string): boolean => !CRABBED.test(sentence)
