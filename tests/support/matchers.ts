import { expect } from 'vitest'

declare module 'vitest' {
  interface Matchers<R extends void | Promise<void> = void | Promise<void>, T = unknown> {
    /** A number within `tolerance` of what is expected. NaN is within nothing. */
    toBeWithin(tolerance: number, expected: number): R
  }
}

expect.extend({
  toBeWithin(received: number, tolerance: number, expected: number) {
    const off = Math.abs(received - expected)
    return {
      pass: off <= tolerance,
      message: () =>
        `${received} is ${off} off ${expected}, ${this.isNot ? 'within' : 'which is more than'} ${tolerance}`,
    }
  },
})
