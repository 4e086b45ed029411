/** The sentences of a text: each ends with a full stop, and the next begins with a capital or a figure. `No. 8` is no end. */
export const sentencesOf = (text: string): readonly string[] =>
  text.split(/(?<=(?<!\b[Nn]o)[.!?]) (?=[“"]?[\p{Lu}\d])/u)
