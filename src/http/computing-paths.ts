/**
 * Whether a route, by its template, computes for callers: what a rate limit counts, and what is refused under load. What the
 * service says about itself is neither.
 */
export const computes = (route: string): boolean => /^\/(v1\/|mcp$|embed\/:)/.test(route)
