/* Assumptions about makers, tools and grooves before any reading. All common practice, no source. */

/** A half-cut groove is looked for short of its design by this share of its depth, give or take that share. */
export const STARTS_SHORT_BY = 0.35
export const STARTS_WITHIN = 0.4

/** How much more or less than the nominal cut this maker's tools take, over the nominal cut. */
export const TOOL_BIAS = 0.15
/** By how much this maker's hand reads a rule too long or too short, always the same way [mm]. */
export const HAND_BIAS = 0.15

/** A ring that only just binds is felt to bind or to run: so much play either way [mm]. */
export const BINDING_DEVIATION = 0.05

export const OVERSHOOT_RISK = 0.05

/** Deeper than this at once nobody sands: some two hundred strokes [mm]. */
export const MOST_SANDED = 0.4

/** After so many readings in all, no more are suggested for a ring. */
export const MOST_CHECKS = 12
/** The same for the readings at one state. */
export const MOST_READINGS_HERE = 6

/** Thinner than this nobody cuts a spacer or builds up a groove [mm]. */
export const THINNEST = 0.1
