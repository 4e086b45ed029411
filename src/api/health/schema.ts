import type { Static } from 'typebox'
import { choiceOf, named } from '#src/api/schema.ts'

export const Health = named('Health', 'How the service is.', {
  status: choiceOf('`up`: it runs. `ready`: it takes requests.', ['up', 'ready']),
})
export type Health = Static<typeof Health>
