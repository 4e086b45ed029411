/*
 * What stands in the place of `src/http/computing-route.ts` in a browser: the same routes register here, with the handlers
 * that answer them, and nothing of HTTP.
 */

/** A route as it registers itself, as far as a browser asks it. */
export interface BrowserRoute {
  readonly path: string
  readonly choices?: Readonly<Record<string, { readonly names: readonly string[] }>>
  readonly mediaTypes?: MediaTypes | ((request: object) => MediaTypes)
  readonly handler: (body: unknown, request: object, mediaType: string) => unknown
}
type MediaTypes = readonly [string, ...string[]]

interface Registering {
  readonly routes: BrowserRoute[]
}

export function computingRoute(app: Registering, route: BrowserRoute): void {
  app.routes.push(route)
}

export function referenceRoute(app: Registering, route: BrowserRoute): void {
  app.routes.push(route)
}
