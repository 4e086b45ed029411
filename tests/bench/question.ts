/** What a caller asks. */
export type Question = { readonly method: 'GET' | 'POST'; readonly path: string; readonly body?: string }

export const posted = (path: string, input: unknown): Question => ({
  method: 'POST',
  path,
  body: JSON.stringify(input),
})

/** The service tells callers apart by the address that a proxy names, where `TRUST_PROXY` says so. */
export const headersOf = (caller: string) => ({ 'content-type': 'application/json', 'x-forwarded-for': caller })
