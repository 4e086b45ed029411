import { type Check, isOfPlates } from './checked.ts'
import { plateWays } from './plate-ways.ts'
import { ringWays } from './ring-ways.ts'
import type { Ways } from './ways.ts'

export const waysOf = (check: Check): Ways => (isOfPlates(check) ? plateWays(check) : ringWays(check))
