/** The little of a service worker that is used here. The page's own types have no worker. */
interface WorkerScope {
  readonly location: Location
  readonly clients: { claim(): Promise<void> }
  skipWaiting(): Promise<void>
  addEventListener(name: 'install' | 'activate', listener: (event: WaitingEvent) => void): void
  addEventListener(name: 'fetch', listener: (event: FetchEvent) => void): void
}

interface WaitingEvent extends Event {
  waitUntil(done: Promise<unknown>): void
}

export interface FetchEvent extends WaitingEvent {
  readonly request: Request
  respondWith(response: Response | Promise<Response>): void
}

export const SCOPE = globalThis as unknown as WorkerScope
