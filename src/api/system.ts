import { choiceOf } from './schema.ts'

/** Whether boards, screws and drills are sold by inches or by millimetres, whatever the units of the answer. */
export const system = (description: string) => choiceOf(description, ['inch', 'metric'])
