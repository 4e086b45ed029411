import { ARRANGEMENT_CHOICES } from './bearing.ts'

/** A part of a link that could not be read: a name with its text, or a text alone. */
export interface Lost {
  readonly name?: string
  readonly text: string
}

/** More of a text is no help to find it in the link. */
const LONGEST = 40

const quoted = (text: string): string => `“${text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text}”`

/** What of a link could not be read, each in a line, and what stands in its place. */
export const lostLines = (lost: readonly Lost[]): readonly string[] => [
  ...new Set(
    lost.map(({ name, text }) => {
      if (name === 'arrangement')
        return `This link names a kind of bearing, ${quoted(text)}, that this page does not know. It is shown as one of ${ARRANGEMENT_CHOICES.radial}: do not cut it before you have asked whoever sent the link.`
      if (name === 'units')
        return `This link names units, ${quoted(text)}, that this page does not know. Its figures are shown in millimetres: check each.`
      return `A part of this link could not be read, ${quoted(name === undefined ? text : `${name}=${text}`)}: the rest is shown.`
    }),
  ),
]
