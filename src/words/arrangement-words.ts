import { type ArrangementName, nameOf } from '#shared/bearing/arrangements.ts'

type Words = readonly (readonly [said: RegExp, instead: string])[]

/**
 * Sentences are written for balls in grooves. A sister's go through here: what it has in their place, the longest first. A
 * name of the request stands in quotes, and stays.
 */
const WORDS: Readonly<Record<ArrangementName, Words>> = {
  radial: [],
  thrust: [
    [/^The plugs and the play again\b/g, 'The plugs and the gap again'],
    [/^Depth: the gap opens again\.$/g, 'Depth: the plates come nearer to each other.'],
    [/\bbehind the outer groove\b/g, 'outside the groove'],
    [/\bTake off ([\d.]+ \w+) of depth\b/g, 'Take $1 off the outer flank'],
    [/\bmore off the groove's depth\b/g, 'more off its outer flank, and cut the other plate to the same circle'],
    [/\bthe groove is ([\d.]+ \w+) deeper than they want\b/g, 'the groove lies $1 further out than they want'],
    [/\beach size at its own depth\b/g, 'each size at its own height'],
    [/\bIn a groove bottom of\b/g, 'On a groove circle of'],
    [/\ba groove bottom of\b/g, 'a groove circle of'],
    [/\bno depth of this groove\b/g, 'no circle of this groove'],
    [/\btoo deep a groove\b/g, 'a groove too far out'],
    [/\btoo deep\b/g, 'too far out'],
    [/ deeper than designed\b/g, ' further out than designed'],
    [/ shallower than designed\b/g, ' further in than designed'],
    [/\bNo depth keeps\b/g, 'No circle keeps'],
    [/\bMost rings fit\b/g, 'Most fit'],
    [/\bGap and play\b/g, 'Ball gap and space between the plates'],
    [/\bthe play grows by that\b/g, 'the plates come nearer by twice that'],
    [/\bthe play\b/g, 'the space between the plates'],
    [/\bacross the groove bottoms\b/g, "across the groove's circle"],
    [/\bno inner ring goes inside them\b/g, 'the plates have no room for them'],
    [
      /\bKeep the balls, the gauges, and an inner ring that is not cut yet: only the outer ring is lost\b/g,
      'Keep the balls, the gauges, and the other plate if it is not cut yet: only this one is lost',
    ],
    [/\binner ring's groove\b/g, 'groove'],
    [/\b(?:outer|inner) groove\b/g, 'groove'],
    [/\ban inner ring\b/g, 'a plate'],
    [/\bland of each plate\b/g, 'face of each plate'],
    [/\bwood of the rings\b/g, 'wood of the plates'],
    [/\bsofter wood than the rings\b/g, 'softer wood than the plates'],
    [/\bstrength of the ring\b/g, 'strength of a plate'],
    [/\bA ring with a groove\b/g, 'A plate with a groove'],
    [/^pitch diameter$/, "the groove's circle, across: the pitch diameter"],
  ],
  roller: [
    [/\ba land gap\b/g, 'a space between the tracks'],
    [/\bgroove bottoms?\b/g, 'track'],
    [/\bacross the bottoms\b/g, 'across the track'],
    [/\bDepth\b/g, 'Size'],
    [/\binner groove shallower\b/g, 'inner track larger'],
    [/\bdeeper\b/g, 'wider'],
    [/\bshallower\b/g, 'narrower'],
    [/\btoo deep\b/g, 'too wide'],
    [/ of depth\b/g, ' all round'],
    [/\bdepth\b/g, 'size'],
    [/\bgroove(s?)\b/g, 'track$1'],
    [/\bball(s?)\b(?!")/g, 'roller$1'],
    [/\bBall(s?)\b/g, 'Roller$1'],
  ],
  caged: [
    [/^The plugs and the play again\b/g, 'The play again'],
    [/^Depth: the gap opens again\.$/g, 'Depth: the play grows again.'],
    [
      /^A groove off the middle: one half closes, the other does not\.$/g,
      'A groove off the middle: the rings do not stand flush, and the cage rubs at one side.',
    ],
    [/^The pair\. Score\b/g, 'The ring. Score'],
  ],
}

/** Where an answer has its sentences: all else is names and numbers. */
const SENTENCES: ReadonlySet<string> = new Set(['message', 'summary', 'advice', 'verdict', 'note', 'notes', 'name'])

/**
 * The same answer, its sentences in the words of the arrangement that it speaks of.
 *
 * @param sentences names under which sentences stand
 */
export function wordedFor<T>(
  design: { readonly arrangement?: ArrangementName },
  answer: T,
  sentences: ReadonlySet<string> = SENTENCES,
): T {
  const words = WORDS[nameOf(design)]
  const reworded = (value: unknown, isSentence: boolean): unknown => {
    if (typeof value === 'string') {
      return isSentence ? words.reduce((said, [ours, theirs]) => said.replace(ours, theirs), value) : value
    }
    if (Array.isArray(value)) return value.map((each) => reworded(each, isSentence))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(
      Object.entries(value).map(([name, inner]) => [name, reworded(inner, sentences.has(name))]),
    )
  }
  return words.length === 0 ? answer : (reworded(answer, false) as T)
}
