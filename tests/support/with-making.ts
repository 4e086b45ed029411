import type { Design } from '#shared/bearing/arrangements.ts'
import type { MakingInput } from '#shared/bearing/making-input.ts'

/** The same design, made in another way: nothing of it follows from how it is made. */
export const withMaking = <Of extends Design>({ bearing, ...design }: Of, making: MakingInput): Of =>
  ({
    ...design,
    bearing: {
      ...bearing,
      resolved: { ...bearing.resolved, input: { ...bearing.resolved.input, making } },
    },
  }) as Of
