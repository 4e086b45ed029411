/** An answer as plain JSON, read with care: the service may be newer than the page. */
export type Json = { readonly [name: string]: unknown }

export const isJson = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const part = (value: unknown): Json => (isJson(value) ? value : {})
export const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
export const textOf = (value: unknown): string => (typeof value === 'string' ? value : '')
export const numberOf = (value: unknown): number => (typeof value === 'number' ? value : Number.NaN)

/** The sentences of a list of faults, warnings, cautions or options. */
export const messagesOf = (rows: unknown): readonly string[] =>
  listOf(rows)
    .map((row) => textOf(part(row)['message']))
    .filter((message) => message !== '')
