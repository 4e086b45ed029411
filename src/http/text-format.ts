/** A kind of text that the service reads itself, such as a length written as a fraction. */
export interface TextFormat {
  /** Its noun, with the article: `a length`. Numbers of this kind are called the same. */
  readonly noun: string
  /** Examples of values: `16 or "5/8"`. */
  readonly examples: string
  /** The fault of a text of an input, to follow the quoted text; undefined if there is none. */
  readonly faultOf: (text: string, input: unknown) => string | undefined
}

/** The formats that schemas may name, by name. */
export type TextFormats = Readonly<Record<string, TextFormat>>

declare module 'fastify' {
  interface FastifyInstance {
    textFormats: TextFormats
  }
}
