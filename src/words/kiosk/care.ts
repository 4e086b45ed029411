/** Words of the last step. */
export const CARE = {
  air: 'The air in which it runs',
  noAir: 'State at “Wood and place” where it will live: then this says in which humidity it runs.',
  /** What to wait for when it goes stiff, by the ends of the humidity at which something stops it. */
  stiff: (isStoppedDry: boolean, isStoppedDamp: boolean) => {
    const dry = 'damper air if it goes stiff in the dry season'
    const damp = 'drier air if it goes stiff in the damp season'
    const waits = [...(isStoppedDry ? [dry] : []), ...(isStoppedDamp ? [damp] : [])]
    return waits.length === 0 ? undefined : `Wait for ${waits.join(', and for ')}.`
  },
  load: 'What it carries',
  noLoad: 'Enter a load at “Will it run?”: then this says whether the bearing carries it, and how much it may carry.',
  rest: 'Look after it',
  standing: 'Common practice, no source.',
} as const
