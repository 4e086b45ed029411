import type { Later } from './later.ts'

/** The page's second script brings it, before a hand can be at any field; undefined until then. */
export const later = (): Later | undefined => (globalThis as { readonly later?: Later }).later
