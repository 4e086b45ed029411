/** A band-saw blade [in]: its width, and the least radius that it turns, by the most cautious of the published tables. */
export interface SawBlade {
  readonly width: string
  readonly leastRadius: number
}

/** The narrowest first. */
export const SAW_BLADES: readonly SawBlade[] = [
  { width: '1/8', leastRadius: 0.1875 },
  { width: '3/16', leastRadius: 0.375 },
  { width: '1/4', leastRadius: 0.625 },
  { width: '3/8', leastRadius: 1.5 },
  { width: '1/2', leastRadius: 2.5 },
  { width: '5/8', leastRadius: 4 },
  { width: '3/4', leastRadius: 5.5 },
  { width: '1', leastRadius: 7.625 },
  { width: '1 1/4', leastRadius: 9.875 },
]
