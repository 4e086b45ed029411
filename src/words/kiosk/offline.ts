/** Sentences of a browser that cannot reach the service and has no answer by itself. */
export const OFFLINE = {
  notHere:
    'The service cannot be reached, and this sheet only it can make. Go back, and open the sheet on the screen instead.',
} as const
