import { type Static, Type } from 'typebox'

export const Health = Type.Object(
  { status: Type.Enum(['up', 'ready'], { type: 'string', description: '`up`: it runs. `ready`: it takes requests.' }) },
  { $id: 'Health', description: 'How the service is.' },
)
export type Health = Static<typeof Health>
